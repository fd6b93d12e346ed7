import { edgesOf, nearestOnSegment } from '../geometry/polygon.ts';
import { add, distance, type Spot, scale, subtract, unit } from '../geometry/spot.ts';
import { type CornerWalks, cornerWalks, NO_WALK_M, type WalkRoom } from './shortest-way.ts';
import { leadsStraight, type WalkEnd, walkEnd } from './walk-end.ts';
import { isFreeFloor, type WalkFloor } from './walk-floor.ts';

/** So many spots are tried, nearest first, before one on the known legs will do. */
const MOST_TRIED = 12;
const HAIR_M = 1e-6;

/** Numbers of the parts of the graph that an end leads to. */
function partsFrom({ graph }: WalkRoom, { walksM }: CornerWalks): Set<number> {
  const parts = new Set<number>();
  for (const [at, walkM] of walksM.entries()) {
    if (walkM < NO_WALK_M) parts.add(graph.partOf[at] ?? -1);
  }
  return parts;
}

/** The spot on any leg that can be walked to, nearest to a goal. */
function nearestOnLegs(room: WalkRoom, from: WalkEnd, parts: ReadonlySet<number>, goal: Spot): Spot {
  const { corners, legStart, legTo, partOf } = room.graph;
  let best = from.door ?? from.spot;
  for (const [at, { spot }] of corners.entries()) {
    if (!parts.has(partOf[at] ?? -1)) continue;
    for (let leg = legStart[at] ?? 0; leg < (legStart[at + 1] ?? 0); leg += 1) {
      const other = corners[legTo[leg] ?? 0]?.spot ?? spot;
      const near = nearestOnSegment(spot, other, goal);
      if (distance(near, goal) < distance(best, goal)) best = near;
    }
  }
  return best;
}

type Beside = { readonly spot: Spot; readonly awayM: number };

/** Spots beside every wall and thing, each the nearest there to a goal; the nearest first, none farther. */
function besideEverything(floor: WalkFloor, goal: Spot, clearM: number, withinM: number): Beside[] {
  const found: Beside[] = [];
  for (const outline of [floor.outline, ...floor.obstacles.map((thing) => thing.outline)]) {
    for (const [a, b] of edgesOf(outline)) {
      const near = nearestOnSegment(a, b, goal);
      const along = distance(near, goal) < withinM + clearM ? unit(subtract(b, a)) : null;
      if (!along) continue;
      for (const side of [clearM, -clearM]) {
        const spot = add(near, scale({ x: -along.y, y: along.x }, side));
        const awayM = distance(spot, goal);
        if (awayM < withinM) found.push({ spot, awayM });
      }
    }
  }
  return found.sort((a, b) => a.awayM - b.awayM);
}

/**
 * The spot nearest to a goal, as the crow flies, that can be walked to. Looked for beside walls and things
 * and on the legs of ways: within some centimetres of the true one where that lies between two things.
 *
 * @param walks those of `from`
 * @returns free floor [m]; where one starts when nothing is nearer; null when one cannot even start
 * @source own-rule
 */
export function nearestReached(room: WalkRoom, from: WalkEnd, walks: CornerWalks, goal: Spot): Spot | null {
  const { floor, graph, bodyM, clearM } = room;
  if (!from.isFree && !from.door) return null;
  const parts = partsFrom(room, walks);
  const onLegs = nearestOnLegs(room, from, parts, goal);
  const isGoalFree = isFreeFloor(floor, goal, clearM);
  let tried = 0;
  for (const { spot } of besideEverything(floor, goal, clearM, distance(onLegs, goal))) {
    if (!isFreeFloor(floor, spot, clearM - HAIR_M)) continue;
    // What one sees from a goal that nobody gets to, nobody gets to either.
    if (isGoalFree && floor.keepsClear(goal, spot, clearM - HAIR_M)) continue;
    if (leadsStraight(floor, from, spot, clearM, bodyM)) return spot;
    tried += 1;
    if (tried > MOST_TRIED) break;
    const back = cornerWalks(room, walkEnd(floor, spot, clearM));
    const isReached = (walkM: number, at: number) => walkM < NO_WALK_M && parts.has(graph.partOf[at] ?? -1);
    if (back.walksM.some(isReached)) return spot;
  }
  return onLegs;
}
