import { nearestOnOutline } from '../geometry/polygon.ts';
import { add, distance, rotate, type Spot, scale, subtract, unit } from '../geometry/spot.ts';
import { isFreeFloor, type WalkFloor } from './walk-floor.ts';

/**
 * An end of a way. A stand may stand closer to things than its carrier can walk (in their rims); then the
 * carrier walks to the door, the nearest free floor, and reaches in from there.
 */
export type WalkEnd = {
  readonly spot: Spot;
  /** So far a leg stays from everything where it starts or ends here [m] */
  readonly clearM: number;
  /** Nearest free floor; null when the spot is free itself, or there is none to be had */
  readonly door: Spot | null;
  readonly isFree: boolean;
};

/** A hair, so that what was put exactly on a limit keeps to it [m]. */
const HAIR_M = 1e-6;
/** A door is looked for this far around [m], in rings this far apart [m], at this many bearings. */
const DOOR_WITHIN_M = 2;
const RING_M = 0.05;
const BEARINGS = 24;

/** The point of all outlines nearest to a spot. */
function nearestEdge(floor: WalkFloor, spot: Spot): Spot | null {
  let best: Spot | null = null;
  for (const outline of [floor.outline, ...floor.obstacles.map((thing) => thing.outline)]) {
    const near = nearestOnOutline(outline, spot);
    if (near && (!best || distance(near, spot) < distance(best, spot))) best = near;
  }
  return best;
}

/** The nearest free floor to which a straight leg leads that comes no nearer to anything than its start. */
function doorOf(floor: WalkFloor, spot: Spot, clearM: number, startM: number): Spot | null {
  const edge = nearestEdge(floor, spot);
  const away = edge && unit(subtract(spot, edge));
  if (!edge || !away) return null;
  const isDoor = (door: Spot) =>
    isFreeFloor(floor, door, clearM - HAIR_M) && floor.keepsClear(spot, door, startM);
  // Straight away from the one thing that is too near is the shortest; where more are near, rings find it.
  const straight = add(edge, scale(away, clearM));
  if (isDoor(straight)) return straight;
  for (let ring = 1; ring * RING_M <= DOOR_WITHIN_M; ring += 1) {
    for (let bearing = 0; bearing < BEARINGS; bearing += 1) {
      // 0, +15°, −15°, +30° …: the bearings nearest to straight away come first.
      const turnDeg = Math.ceil(bearing / 2) * (bearing % 2 === 0 ? -1 : 1) * (360 / BEARINGS);
      const door = add(spot, rotate(scale(away, ring * RING_M), turnDeg));
      if (isDoor(door)) return door;
    }
  }
  return null;
}

/**
 * One end of a way, and where one walks freely from.
 *
 * @param spot on open floor [m]
 * @param clearM how far a walker stays from everything [m]
 * @source own-rule
 */
export function walkEnd(floor: WalkFloor, spot: Spot, clearM: number): WalkEnd {
  const gapM = floor.gapM(spot);
  if (gapM >= clearM - HAIR_M) return { spot, clearM: clearM - HAIR_M, door: null, isFree: true };
  const startM = Math.max(0, gapM - HAIR_M);
  return { spot, clearM: startM, door: doorOf(floor, spot, clearM, startM), isFree: false };
}

/**
 * Can one walk straight from an end to a spot? In the first `rimM` of a leg that starts in a rim nothing
 * may come nearer than it was at the start; from there on everything stays clear.
 *
 * @param clearM how far a walker stays from everything [m]
 * @param rimM how much of the leg may lie in the rim [m]
 * @source own-rule
 */
export function leadsStraight(
  floor: WalkFloor,
  end: WalkEnd,
  toward: Spot,
  clearM: number,
  rimM: number,
): boolean {
  if (end.isFree) return floor.keepsClear(end.spot, toward, clearM - HAIR_M);
  const way = subtract(toward, end.spot);
  const lengthM = distance(end.spot, toward);
  const out = lengthM > rimM ? add(end.spot, scale(way, rimM / lengthM)) : toward;
  return floor.keepsClear(end.spot, out, end.clearM) && floor.keepsClear(out, toward, clearM - HAIR_M);
}
