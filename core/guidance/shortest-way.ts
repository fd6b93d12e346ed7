import { distance, type Spot, subtract } from '../geometry/spot.ts';
import { keepFinite } from '../units/finite.ts';
import { createCheapestFirst } from './cheapest-first.ts';
import { leadsStraight, type WalkEnd } from './walk-end.ts';
import type { WalkFloor } from './walk-floor.ts';
import { isTaut, type WalkGraph } from './walk-graph.ts';

/** The room's floor and graph, and the walker: radius and the distance kept from everything [m]. */
export type WalkRoom = {
  readonly floor: WalkFloor;
  readonly graph: WalkGraph;
  readonly bodyM: number;
  readonly clearM: number;
};

/** Stands for "no straight leg leads there" [m]. */
export const NO_WALK_M = Number.MAX_VALUE;

/** Walk from an end to each corner [m], NO_WALK_M where none leads; and through the door or not. */
export type CornerWalks = { readonly walksM: Float64Array; readonly throughDoor: Uint8Array };

/**
 * Corners to which one can walk straight from an end, or straight from its door.
 *
 * @source visibility-graph
 */
export function cornerWalks({ floor, graph, bodyM, clearM }: WalkRoom, end: WalkEnd): CornerWalks {
  const walksM = new Float64Array(graph.corners.length).fill(NO_WALK_M);
  const throughDoor = new Uint8Array(graph.corners.length);
  const door: WalkEnd | null = end.door && { spot: end.door, clearM, door: null, isFree: true };
  const toDoorM = end.door ? distance(end.spot, end.door) : 0;
  for (const [at, corner] of graph.corners.entries()) {
    if (isTaut(corner, end.spot) && leadsStraight(floor, end, corner.spot, clearM, bodyM)) {
      walksM[at] = distance(end.spot, corner.spot);
    } else if (door && isTaut(corner, door.spot) && leadsStraight(floor, door, corner.spot, clearM, bodyM)) {
      walksM[at] = toDoorM + distance(door.spot, corner.spot);
      throughDoor[at] = 1;
    }
  }
  return { walksM, throughDoor };
}

/** Both ends in rims: each half of a straight leg is judged from its own end. */
function leadsAcross({ floor, bodyM, clearM }: WalkRoom, from: WalkEnd, to: WalkEnd): boolean {
  const lengthM = distance(from.spot, to.spot);
  if (lengthM < 2 * bodyM) return floor.keepsClear(from.spot, to.spot, Math.min(from.clearM, to.clearM));
  const way = subtract(to.spot, from.spot);
  const middle = { x: from.spot.x + way.x / 2, y: from.spot.y + way.y / 2 };
  return leadsStraight(floor, from, middle, clearM, bodyM) && leadsStraight(floor, to, middle, clearM, bodyM);
}

/** The shortest way that bends nowhere but at doors; null when there is none. */
function withoutCorners(room: WalkRoom, from: WalkEnd, to: WalkEnd): Spot[] | null {
  if (leadsAcross(room, from, to)) return [from.spot, to.spot];
  const asEnd = (spot: Spot): WalkEnd => ({ spot, clearM: room.clearM, door: null, isFree: true });
  const ways: Spot[][] = [];
  if (from.door && leadsAcross(room, asEnd(from.door), to)) ways.push([from.spot, from.door, to.spot]);
  if (to.door && leadsAcross(room, from, asEnd(to.door))) ways.push([from.spot, to.door, to.spot]);
  if (ways.length === 0 && from.door && to.door && leadsAcross(room, asEnd(from.door), asEnd(to.door))) {
    ways.push([from.spot, from.door, to.door, to.spot]);
  }
  return ways.sort((a, b) => lengthOf(a) - lengthOf(b))[0] ?? null;
}

/**
 * Length of a way.
 *
 * @returns sum of its legs [m]
 * @source own-rule
 */
export function lengthOf(legs: readonly Spot[]): number {
  return legs.slice(1).reduce((sum, spot, index) => keepFinite(sum + distance(legs[index] ?? spot, spot)), 0);
}

/** A* from corner to corner; the last corner before the goal and the corner before each, or null. */
function searchCorners(
  { graph }: WalkRoom,
  from: CornerWalks,
  to: CornerWalks,
  goal: Spot,
  underM: number,
): { readonly last: number; readonly cameFrom: Int32Array } | null {
  const { corners, legStart, legTo, legsM } = graph;
  const soFarM = from.walksM.slice();
  const cameFrom = new Int32Array(corners.length).fill(-1);
  const queue = createCheapestFirst();
  const leastM = (at: number) =>
    (soFarM[at] as number) + distance((corners[at] as { spot: Spot }).spot, goal);
  for (let at = 0; at < corners.length; at += 1) {
    if ((soFarM[at] as number) < NO_WALK_M) queue.put(at, leastM(at));
  }
  let last = -1;
  let bestM = underM;
  for (let next = queue.take(); next !== null && next.costM < bestM; next = queue.take()) {
    const at = next.entry;
    // An entry that was bettered since it was put in is stale.
    if (next.costM > leastM(at)) continue;
    const hereM = soFarM[at] as number;
    const wholeM = hereM + (to.walksM[at] as number);
    if (wholeM < bestM) {
      bestM = wholeM;
      last = at;
    }
    for (let leg = legStart[at] as number; leg < (legStart[at + 1] as number); leg += 1) {
      const neighbour = legTo[leg] as number;
      const thereM = hereM + (legsM[leg] as number);
      if (thereM >= (soFarM[neighbour] as number)) continue;
      soFarM[neighbour] = thereM;
      cameFrom[neighbour] = at;
      queue.put(neighbour, leastM(neighbour));
    }
  }
  return last === -1 ? null : { last, cameFrom };
}

/** A place where a way bends, and the corner there; null at a door. */
export type WayPoint = { readonly spot: Spot; readonly corner: number | null };

/**
 * The shortest way between two ends.
 *
 * @returns its points, the first and last at the ends themselves; null when there is no way
 * @source visibility-graph
 * @source a-star
 */
export function shortestWay(
  room: WalkRoom,
  from: WalkEnd,
  to: WalkEnd,
  fromWalks: CornerWalks,
  toWalks: CornerWalks,
): WayPoint[] | null {
  const plain = withoutCorners(room, from, to);
  const found = searchCorners(room, fromWalks, toWalks, to.spot, plain ? lengthOf(plain) : NO_WALK_M);
  if (!found) return plain?.map((spot) => ({ spot, corner: null })) ?? null;
  const points: WayPoint[] = [];
  for (let at = found.last; at !== -1; at = found.cameFrom[at] as number) {
    points.unshift({ spot: (room.graph.corners[at] as { spot: Spot }).spot, corner: at });
  }
  const first = points[0]?.corner ?? 0;
  if (from.door && fromWalks.throughDoor[first]) points.unshift({ spot: from.door, corner: null });
  if (to.door && toWalks.throughDoor[found.last]) points.push({ spot: to.door, corner: null });
  return [{ spot: from.spot, corner: null }, ...points, { spot: to.spot, corner: null }];
}
