import { contains } from '../geometry/polygon.ts';
import { distance, type Spot } from '../geometry/spot.ts';
import { isPositive } from '../units/finite.ts';
import { bearingDeg } from './bearing.ts';
import { type LandmarkName, spokenName } from './landmark.ts';
import { nearestReached } from './nearest-reached.ts';
import { type RimCorner, rimCorners } from './rim-corners.ts';
import {
  type CornerWalks,
  cornerWalks,
  lengthOf,
  shortestWay,
  type WalkRoom,
  type WayPoint,
} from './shortest-way.ts';
import { shutInWords, surroundings, tooTightWords } from './shut-in.ts';
import { type WalkEnd, walkEnd } from './walk-end.ts';
import { createWalkFloor, isFreeFloor, type WalkFloor, type WalkObstacle } from './walk-floor.ts';
import { walkGraph } from './walk-graph.ts';

/** A bend of a way, and what one goes round there; null where one only steps out from beside a thing. */
export type WayBend = { readonly at: Spot; readonly round: LandmarkName | null };

/** A way on foot: the first leg starts where one is, the last ends at the goal; one bend between two legs. */
export type Way = {
  readonly kind: 'way';
  readonly legs: readonly Spot[];
  readonly bends: readonly WayBend[];
  /**
   * Where words for the rest of the way start: the last bend (where one is, when there is none). A mere step
   * aside to a goal right beside a thing is no bend that words need.
   */
  readonly wordsFrom: Spot;
  readonly lengthM: number;
};

/** Why there is no way, and the spot nearest to the goal that one can walk to; null when there is none. */
export type NoWay = { readonly kind: 'none'; readonly reason: string; readonly nearest: Spot | null };

/** A room made ready for questions about ways. */
export type Ways = { readonly find: (from: Spot, to: Spot) => Way | NoWay };

/** Somebody with a stand in hand fills a circle of this radius [m]. @source own-rule */
const DEFAULT_BODY_M = 0.3;
/** Nobody is thinner than this [m]; less counts as this much. */
const THINNEST_M = 0.05;
/** Corners are cut closer than the radius by this much [m]: it makes up for drawing round rims with straight sides. */
const CUT_M = 0.01;
const HAIR_M = 1e-6;
/** A mark is seen past a thing when the line to it misses the thing by this much [m]. */
const SEEN_PAST_M = 0.05;
const WALL_CORNER: LandmarkName = { id: 'wall', name: 'Corner of the wall' };

function cornersOf(floor: WalkFloor, clearM: number): RimCorner[] {
  const isFree = (spot: Spot) => isFreeFloor(floor, spot, clearM - HAIR_M);
  const walls = rimCorners(floor.outline, -1, clearM, isFree, WALL_CORNER);
  const things = floor.obstacles.flatMap(({ id, name, outline }) =>
    rimCorners(outline, 1, clearM, isFree, { id, name }),
  );
  return [...walls, ...things];
}

/** Why one cannot stand at a spot at all; null when one can. */
function offTheFloor(floor: WalkFloor, what: string, spot: Spot): string | null {
  if (!contains(floor.outline, spot)) return `${what} is outside the room`;
  const over = floor.thingOver(spot);
  return over ? `${what} is on ${spokenName(over.name)}` : null;
}

/** Leaves out bends that bend nothing. */
function withoutStraightBends(points: readonly WayPoint[]): WayPoint[] {
  const kept: WayPoint[] = [];
  for (const [index, point] of points.entries()) {
    const [before, after] = [kept.at(-1), points[index + 1]];
    const isBend =
      !before ||
      !after ||
      distance(before.spot, point.spot) + distance(point.spot, after.spot) >
        distance(before.spot, after.spot) + 1e-9;
    if (isBend) kept.push(point);
  }
  return kept;
}

/** The last bend; the place before it when that is the door of the goal and the goal can be seen from there. */
function lastTurn({ floor }: WalkRoom, legs: readonly Spot[], to: WalkEnd): Spot {
  const last = legs.at(-2) ?? to.spot;
  const before = legs.at(-3);
  const isStepAside = before !== undefined && last === to.door;
  const seenM = Math.min(SEEN_PAST_M, to.clearM);
  return isStepAside && floor.keepsClear(before, to.spot, seenM) ? before : last;
}

function wayOf(room: WalkRoom, found: readonly WayPoint[], to: WalkEnd): Way {
  const points = withoutStraightBends(found);
  const legs = points.map(({ spot }) => spot);
  const bends = points.slice(1, -1).map(({ spot, corner }) => ({
    at: spot,
    round: corner === null ? null : (room.graph.corners[corner]?.round ?? null),
  }));
  return { kind: 'way', legs, bends, wordsFrom: lastTurn(room, legs, to), lengthM: lengthOf(legs) };
}

function findWay(room: WalkRoom, from: WalkEnd, to: WalkEnd, fromWalks: CornerWalks): Way | null {
  const found = shortestWay(room, from, to, fromWalks, cornerWalks(room, to));
  return found && wayOf(room, found, to);
}

/** Who shuts whom in: the end that sees less floor around itself is the one that is shut in. */
function shutInReason({ floor, clearM }: WalkRoom, from: WalkEnd, to: WalkEnd): string {
  for (const [what, end] of [['the mark', to] as const, ['the start', from] as const]) {
    if (!end.isFree && !end.door) return tooTightWords(what, floor, end.spot, 2 * clearM);
  }
  const around = [to, from].map((end) => surroundings(floor, end.door ?? end.spot, clearM - 2 * HAIR_M));
  const [goal, start] = around;
  if (!goal || !start) return 'there is no way';
  return goal.seenM2 <= start.seenM2 ? shutInWords('the mark', goal) : shutInWords('the start', start);
}

function answer(room: WalkRoom, from: Spot, to: Spot): Way | NoWay {
  const { floor, clearM } = room;
  const badStart = offTheFloor(floor, 'the start', from);
  if (badStart !== null) return { kind: 'none', reason: badStart, nearest: null };
  const start = walkEnd(floor, from, clearM);
  const walks = cornerWalks(room, start);
  const badGoal = offTheFloor(floor, 'the mark', to);
  const none = (reason: string): NoWay => ({
    kind: 'none',
    reason,
    nearest: nearestReached(room, start, walks, to),
  });
  if (badGoal !== null) return none(badGoal);
  const goal = walkEnd(floor, to, clearM);
  return findWay(room, start, goal, walks) ?? none(shutInReason(room, start, goal));
}

/**
 * Makes a room ready for questions about the shortest way on foot.
 *
 * The walker is a circle. Ways bend at the corners of rims (outlines grown by its radius, walls drawn in by
 * it); A* finds the shortest. A start or goal in a rim, right beside a thing, is left by the nearest free
 * floor. ASSUMPTION: people who stand about make way; only what is on the plan is walked around.
 *
 * @param outline corners of the room [m]
 * @param obstacles what nobody walks through; they may overlap each other and the walls
 * @param bodyM radius of the walker with a stand [m]; corners are cut 1 cm closer; under 0.05 m counts as that
 * @returns find(from, to): the way [m], at most about 2 % longer than the true shortest; or why there is none
 *   (outside the room, on a thing, shut in) with the nearest spot that can be walked to
 * @source visibility-graph
 * @source a-star
 * @source own-rule
 */
export function createWays({
  outline,
  obstacles,
  bodyM = DEFAULT_BODY_M,
}: {
  readonly outline: readonly Spot[];
  readonly obstacles: readonly WalkObstacle[];
  readonly bodyM?: number;
}): Ways {
  const floor = createWalkFloor(outline, obstacles);
  const radiusM = isPositive(bodyM) ? Math.max(THINNEST_M, bodyM) : THINNEST_M;
  const clearM = radiusM - CUT_M;
  const graph = walkGraph(cornersOf(floor, clearM), floor, clearM - HAIR_M);
  const room: WalkRoom = { floor, graph, bodyM: radiusM, clearM };
  return { find: (from, to) => answer(room, from, to) };
}

/**
 * What the arrow shows: the first leg of a way.
 *
 * @returns bearing clockwise from plan-up [°], null when the way has no length; length of the leg [m]
 * @source guidance-convention
 */
export function firstLeg({ legs }: Way): { readonly bearingDeg: number | null; readonly lengthM: number } {
  const [from, to] = legs;
  if (!from || !to) return { bearingDeg: null, lengthM: 0 };
  return { bearingDeg: bearingDeg(from, to), lengthM: distance(from, to) };
}
