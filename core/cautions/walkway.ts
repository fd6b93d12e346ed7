import { radFromDeg } from '../geometry/angle.ts';
import {
  areaOf,
  centroidOf,
  contains,
  distanceToOutline,
  edgesOf,
  nearestOnOutline,
  nearestOnSegment,
} from '../geometry/polygon.ts';
import { type RayHit, rayToOutline } from '../geometry/ray.ts';
import { add, distance, dot, type Spot, scale, subtract, unit } from '../geometry/spot.ts';

/** Something that people cannot walk through; chairs stand around it when `chairs` is true. */
export type Obstacle = {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly Spot[];
  readonly chairs: boolean;
};

/** What a stand leaves of the narrowest way past it. */
export type WidthLeft = {
  /** Free width on the wider side of the stand, its footprint taken off [m] */
  readonly leftM: number;
  /** Width of the way without the stand [m] */
  readonly gapM: number;
  /** What bounds the way on either side */
  readonly between: readonly [string, string];
};

/** Chairs take this much floor out from a table's edge, 19 in [m]. @source ibc-table-aisle */
const CHAIR_ZONE_M = 0.483;
/** Step of the search around the stand [°]; the nearest points of things are tried besides. */
const SEARCH_STEP_DEG = 3;
/** A corner cut off by the line across has this little floor [m²]: nobody needs to walk into it. */
const DEAD_CORNER_M2 = 4;

const WALL = 'the wall';

type Side = { readonly distanceM: number; readonly name: string; readonly wall: RayHit | null };

type Scene = {
  readonly stand: Spot;
  readonly room: readonly Spot[];
  readonly obstacles: readonly (Obstacle & {
    readonly inflateM: number;
    readonly awayM: number;
    /** A circle that holds the grown outline: what it misses need not be looked at edge by edge. */
    readonly middle: Spot;
    readonly reachM: number;
  })[];
};

/** Obstacles with their chair zones; one that the stand is on is left out (it is no side of a way). */
function sceneOf(stand: Spot, obstacles: readonly Obstacle[], room: readonly Spot[]): Scene {
  return {
    stand,
    room,
    obstacles: obstacles.flatMap((obstacle) => {
      const awayM = distanceToOutline(obstacle.outline, stand);
      if (awayM === null || awayM === 0) return [];
      const inflateM = obstacle.chairs ? CHAIR_ZONE_M : 0;
      const middle = centroidOf(obstacle.outline);
      const reachM = Math.max(...obstacle.outline.map((corner) => distance(corner, middle))) + inflateM;
      return [{ ...obstacle, awayM, inflateM, middle, reachM }];
    }),
  };
}

/** Whether a ray (unit direction) passes a circle by, with a hair to spare for rounding. */
function misses(from: Spot, direction: Spot, middle: Spot, radiusM: number): boolean {
  const way = subtract(middle, from);
  const along = dot(way, direction);
  const reachM = radiusM * (1 + 1e-9) + 1e-9;
  return along < -reachM || Math.abs(direction.x * way.y - direction.y * way.x) > reachM;
}

/** The first thing met in one direction; a stand inside a chair zone meets the table at once. */
function sideToward({ stand, room, obstacles }: Scene, direction: Spot): Side | null {
  const wall = rayToOutline(stand, direction, room, 0);
  if (!wall) return null;
  let side: Side = { distanceM: wall.distanceM, name: WALL, wall };
  for (const { outline, inflateM, awayM, name, middle, reachM } of obstacles) {
    if (awayM - inflateM >= side.distanceM) continue;
    if (awayM < inflateM) {
      const nearest = nearestOnOutline(outline, stand);
      if (nearest && dot(subtract(nearest, stand), direction) > 0) side = { distanceM: 0, name, wall: null };
      continue;
    }
    if (misses(stand, direction, middle, reachM)) continue;
    const hit = rayToOutline(stand, direction, outline, inflateM);
    if (hit && hit.distanceM < side.distanceM) side = { distanceM: hit.distanceM, name, wall: null };
  }
  return side;
}

/** Floor on the smaller side of a straight line from wall to wall [m²]. */
function smallerPartM2(
  room: readonly Spot[],
  from: Spot,
  fromEdge: number,
  to: Spot,
  toEdge: number,
): number {
  const corners: Spot[] = [];
  for (let edge = fromEdge; edge !== toEdge; edge = (edge + 1) % room.length) {
    const corner = room[(edge + 1) % room.length];
    if (corner) corners.push(corner);
  }
  const part = areaOf([from, ...corners, to]);
  return Math.min(part, areaOf(room) - part);
}

/** Directions to try, as unit vectors over half a turn; the other half is the opposite side. */
function directionsOf({ stand, room, obstacles }: Scene): Spot[] {
  const around = Array.from({ length: 180 / SEARCH_STEP_DEG }, (_, index) => {
    const turn = radFromDeg(index * SEARCH_STEP_DEG);
    return { x: Math.cos(turn), y: Math.sin(turn) };
  });
  const toWalls = edgesOf(room).map(([a, b]) => nearestOnSegment(a, b, stand));
  const toThings = obstacles.map((obstacle) => nearestOnOutline(obstacle.outline, stand));
  const straight = [...toWalls, ...toThings].flatMap((spot) => {
    const direction = spot ? unit(subtract(spot, stand)) : null;
    return direction ? [direction] : [];
  });
  return [...around, ...straight];
}

function cutsDeadCorner({ stand, room }: Scene, direction: Spot, one: Side, other: Side): boolean {
  if (!one.wall || !other.wall) return false;
  const from = add(stand, scale(direction, one.distanceM));
  const to = add(stand, scale(direction, -other.distanceM));
  return smallerPartM2(room, from, one.wall.edge, to, other.wall.edge) < DEAD_CORNER_M2;
}

/**
 * Width left for walking past a stand. In every direction through the stand the way is as wide as the two
 * distances to the nearest table, other obstacle or wall; people cross the narrowest and pass on its wider
 * side. Tables with chairs are grown by 0.483 m first. A line that only cuts a corner of the room off
 * (under 4 m² of floor) is no way. Searched in 3° steps and square to everything near.
 *
 * @param footprintRadiusM legs, ballast and low umbrella around the column [m]
 * @returns widths [m]; null when the stand is outside the room or stands in no way
 * @source ibc-table-aisle
 * @source ada-clear-width
 */
export function widthLeft({
  stand,
  footprintRadiusM,
  obstacles,
  room,
}: {
  readonly stand: Spot;
  readonly footprintRadiusM: number;
  readonly obstacles: readonly Obstacle[];
  readonly room: readonly Spot[];
}): WidthLeft | null {
  if (!contains(room, stand)) return null;
  const scene = sceneOf(stand, obstacles, room);
  let narrowest: WidthLeft | null = null;
  for (const direction of directionsOf(scene)) {
    const one = sideToward(scene, direction);
    const other = sideToward(scene, scale(direction, -1));
    if (!one || !other) continue;
    const gapM = one.distanceM + other.distanceM;
    if (narrowest && gapM >= narrowest.gapM) continue;
    if (cutsDeadCorner(scene, direction, one, other)) continue;
    const leftM = Math.max(0, Math.max(one.distanceM, other.distanceM) - footprintRadiusM);
    narrowest = { leftM, gapM, between: [one.name, other.name] };
  }
  return narrowest;
}

/**
 * The obstacle that a stand is on, if any.
 *
 * @source own-rule
 */
export function obstacleUnder(stand: Spot, obstacles: readonly Obstacle[]): Obstacle | null {
  return obstacles.find((obstacle) => contains(obstacle.outline, stand)) ?? null;
}
