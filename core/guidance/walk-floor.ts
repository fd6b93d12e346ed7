import { centroidOf, contains, edgesOf, nearestOnSegment } from '../geometry/polygon.ts';
import { distance, type Spot } from '../geometry/spot.ts';
import { keepFinite } from '../units/finite.ts';
import type { LandmarkName } from './landmark.ts';

/** Something that nobody walks through; corners of its outline in metres. */
export type WalkObstacle = { readonly id: string; readonly name: string; readonly outline: readonly Spot[] };

/** The floor of a room with what stands on it, asked again and again. */
export type WalkFloor = {
  readonly outline: readonly Spot[];
  readonly obstacles: readonly WalkObstacle[];
  /** The thing whose outline holds a spot; null when it stands on open floor or outside the room */
  readonly thingOver: (spot: Spot) => LandmarkName | null;
  /** From a spot to the nearest edge of anything, walls among them [m] */
  readonly gapM: (spot: Spot) => number;
  /** Does a straight leg stay at least so far from every edge of everything? Touching is crossing. */
  readonly keepsClear: (from: Spot, to: Spot, clearM: number) => boolean;
};

/**
 * An outline as a group of edges in one long array, inside one circle and around another. A leg that passes
 * the outer circle by, or cuts the inner one, needs no look at the edges. All groups lie in one array of
 * numbers, six each: centre x and y, outer and inner radius [m], first edge, end of edges.
 */
const GROUP_LONG = 6;

/** Plans are drawn within this [m]; beyond it lie mistakes, and squares would overflow. */
const FARTHEST_M = 1e6;

function drawable(outline: readonly Spot[]): Spot[] {
  const clamp = (value: number) => Math.max(-FARTHEST_M, Math.min(FARTHEST_M, keepFinite(value)));
  return outline.map(({ x, y }) => ({ x: clamp(x), y: clamp(y) }));
}

/** Square of the distance between a point and a segment [m²]. */
function toSegment2(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((px - ax) * dx + (py - ay) * dy) / square : 0;
  const part = Math.max(0, Math.min(1, along));
  const x = px - ax - part * dx;
  const y = py - ay - part * dy;
  return x * x + y * y;
}

function putGroup(groups: number[], outline: readonly Spot[], edges: number[]): void {
  const centre = centroidOf(outline);
  const first = edges.length / 4;
  let outerM = 0;
  let innerM = Number.POSITIVE_INFINITY;
  for (const [a, b] of edgesOf(outline)) {
    edges.push(a.x, a.y, b.x, b.y);
    outerM = Math.max(outerM, distance(a, centre));
    innerM = Math.min(innerM, distance(nearestOnSegment(a, b, centre), centre));
  }
  const inner = contains(outline, centre) ? innerM : Number.NEGATIVE_INFINITY;
  groups.push(centre.x, centre.y, outerM, inner, first, edges.length / 4);
}

/** Do the segments from p and from a cross, each properly? Ends that touch are caught by their distance. */
function crosses(edges: Float64Array, at: number, from: Spot, to: Spot): boolean {
  const ax = edges[at] as number;
  const ay = edges[at + 1] as number;
  const bx = edges[at + 2] as number;
  const by = edges[at + 3] as number;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const sideA = dx * (ay - from.y) - dy * (ax - from.x);
  const sideB = dx * (by - from.y) - dy * (bx - from.x);
  if (sideA > 0 === sideB > 0) return false;
  const sideFrom = (bx - ax) * (from.y - ay) - (by - ay) * (from.x - ax);
  const sideTo = (bx - ax) * (to.y - ay) - (by - ay) * (to.x - ax);
  return sideFrom > 0 !== sideTo > 0;
}

function nearEdge(edges: Float64Array, at: number, from: Spot, to: Spot, clear2: number): boolean {
  const ax = edges[at] as number;
  const ay = edges[at + 1] as number;
  const bx = edges[at + 2] as number;
  const by = edges[at + 3] as number;
  return (
    toSegment2(ax, ay, from.x, from.y, to.x, to.y) < clear2 ||
    toSegment2(bx, by, from.x, from.y, to.x, to.y) < clear2 ||
    toSegment2(from.x, from.y, ax, ay, bx, by) < clear2 ||
    toSegment2(to.x, to.y, ax, ay, bx, by) < clear2 ||
    crosses(edges, at, from, to)
  );
}

/** Does a leg pass every group by, by so much? */
function passesAll(groups: Float64Array, edges: Float64Array, from: Spot, to: Spot, clearM: number): boolean {
  const clear2 = clearM * clearM;
  for (let at = 0; at < groups.length; at += GROUP_LONG) {
    const away2 = toSegment2(groups[at] as number, groups[at + 1] as number, from.x, from.y, to.x, to.y);
    const outer = (groups[at + 2] as number) + clearM;
    if (away2 > outer * outer) continue;
    const inner = (groups[at + 3] as number) + clearM;
    if (inner > 0 && away2 < inner * inner) return false;
    const end = groups[at + 5] as number;
    for (let edge = groups[at + 4] as number; edge < end; edge += 1) {
      if (nearEdge(edges, edge * 4, from, to, clear2)) return false;
    }
  }
  return true;
}

function nearestEdgeM(edges: Float64Array, { x, y }: Spot): number {
  let least2 = Number.MAX_VALUE;
  for (let at = 0; at < edges.length; at += 4) {
    const [ax, ay] = [edges[at] as number, edges[at + 1] as number];
    const away2 = toSegment2(x, y, ax, ay, edges[at + 2] as number, edges[at + 3] as number);
    if (away2 < least2) least2 = away2;
  }
  return Math.sqrt(least2);
}

/**
 * A room's floor, made ready for many questions about straight legs.
 *
 * @param outline corners of the room [m]; coordinates beyond 1000 km are drawn in to there
 * @param obstacles those with a corner at least
 * @source own-rule
 */
export function createWalkFloor(outline: readonly Spot[], obstacles: readonly WalkObstacle[]): WalkFloor {
  const room = drawable(outline);
  const things = obstacles
    .filter((thing) => thing.outline.length > 0)
    .map(({ id, name, outline: corners }) => ({ id, name, outline: drawable(corners) }));
  const edgeList: number[] = [];
  const groupList: number[] = [];
  for (const thing of things) putGroup(groupList, thing.outline, edgeList);
  // The walls lie around everything: no circle spares a look at their edges.
  const firstWall = edgeList.length / 4;
  for (const [a, b] of edgesOf(room)) edgeList.push(a.x, a.y, b.x, b.y);
  groupList.push(0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, firstWall, edgeList.length / 4);
  const edges = Float64Array.from(edgeList);
  const groups = Float64Array.from(groupList);
  return {
    outline: room,
    obstacles: things,
    thingOver: ({ x, y }) => {
      const over = things.find((thing, index) => {
        const at = index * GROUP_LONG;
        const outer = groups[at + 2] as number;
        if (Math.hypot(x - (groups[at] as number), y - (groups[at + 1] as number)) > outer) return false;
        return contains(thing.outline, { x, y });
      });
      return over ? { id: over.id, name: over.name } : null;
    },
    gapM: (spot) => nearestEdgeM(edges, spot),
    keepsClear: (from, to, clearM) => passesAll(groups, edges, from, to, clearM),
  };
}

/**
 * Can a person stand there: inside the room, on no obstacle, and so far from every edge?
 *
 * @param clearM [m]
 * @source own-rule
 */
export function isFreeFloor(floor: WalkFloor, spot: Spot, clearM: number): boolean {
  return (
    floor.keepsClear(spot, spot, clearM) && floor.thingOver(spot) === null && contains(floor.outline, spot)
  );
}
