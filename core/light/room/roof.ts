import { centroidOf, edgesOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import { keepFinite } from '../../units/finite.ts';
import type { RoomModel } from './room-model.ts';

/** A ridge on the plan: it runs through `centre` along `along`; `reachM` is how far the outline goes aside of it. */
export type Ridge = {
  readonly centre: Spot;
  readonly along: Spot;
  readonly aside: Spot;
  readonly reachM: number;
};

/**
 * Where a ridge over an outline runs.
 *
 * @param ridgeDeg its bearing, clockwise from plan-up [°]
 * @source own-rule
 */
export function ridgeOver(outline: readonly Spot[], ridgeDeg: number): Ridge {
  const turn = ((ridgeDeg % 360) * Math.PI) / 180;
  const along = { x: Math.sin(turn), y: -Math.cos(turn) };
  const aside = { x: Math.cos(turn), y: Math.sin(turn) };
  const centre = centroidOf(outline);
  const reaches = outline.map(({ x, y }) => Math.abs((x - centre.x) * aside.x + (y - centre.y) * aside.y));
  return { centre, along, aside, reachM: keepFinite(Math.max(0, ...reaches)) };
}

/** How far a spot is from the centre toward the outline: 0 at the centre, 1 on the walls (convex outline). */
function outwardShare(outline: readonly Spot[], centre: Spot, spot: Spot): number {
  let most = 0;
  for (const [a, b] of edgesOf(outline)) {
    const [nx, ny] = [b.y - a.y, a.x - b.x];
    const whole = nx * (a.x - centre.x) + ny * (a.y - centre.y);
    const part = nx * (spot.x - centre.x) + ny * (spot.y - centre.y);
    if (whole !== 0) most = Math.max(most, part / whole);
  }
  return most;
}

/**
 * A room's height as a function, made ready for many spots: flat, or falling evenly from the ridge to the
 * farthest of the walls, or from the peak over the middle to every wall (for a convex outline). The shapes are
 * this project's reading of the two usual tents.
 *
 * @returns a function of a spot [m] that gives the height of the roof over the floor [m]
 * @source own-rule
 */
export function createRoof({ outline, ceilingM, roof }: RoomModel): (spot: Spot) => number {
  if (roof.kind === 'flat') return () => keepFinite(ceilingM);
  const riseM = roof.peakM - ceilingM;
  if (roof.kind === 'pyramid') {
    const centre = centroidOf(outline);
    return (spot) => keepFinite(roof.peakM - riseM * outwardShare(outline, centre, spot));
  }
  const { centre, aside, reachM } = ridgeOver(outline, roof.ridgeDeg);
  return ({ x, y }) => {
    const awayM = Math.abs((x - centre.x) * aside.x + (y - centre.y) * aside.y);
    return keepFinite(reachM > 0 ? roof.peakM - riseM * (awayM / reachM) : roof.peakM);
  };
}

/**
 * Height of the roof over a spot; see `createRoof` for many spots.
 *
 * @returns height over the floor [m]
 * @source own-rule
 */
export function roofHeightM(room: RoomModel, spot: Spot): number {
  return createRoof(room)(spot);
}
