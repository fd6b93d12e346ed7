import { rayToOutline } from '../../core/geometry/ray.ts';
import { outlineOf } from '../../core/geometry/shape.ts';
import { distance, type Spot, subtract, unit } from '../../core/geometry/spot.ts';
import type { WalkObstacle } from '../../core/guidance/walk-floor.ts';
import { createWays, type NoWay, type Way as WalkedWay } from '../../core/guidance/way-around.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** A way that is short enough to need no telling: half a step out from beside a thing, or to a mark beside one. */
const STEP_ASIDE_M = 0.35;

interface Known {
  readonly room: Night['room'];
  readonly obstacles: readonly WalkObstacle[];
  readonly find: (from: Spot, to: Spot) => WalkedWay | NoWay;
}

/** Made once for a room and what stands in it; what did not change in a night is the same object as before. */
const known = new WeakMap<Night['features'], Known>();

function waysOf({ room, features }: Night): Known | null {
  if (!room) return null;
  const before = known.get(features);
  if (before?.room === room) return before;
  const obstacles = features
    .filter((feature) => feature.blocksWalking)
    .map((feature) => ({ id: feature.id, name: feature.name, outline: outlineOf(feature) }));
  const fresh = { room, obstacles, find: createWays({ outline: room.outline, obstacles }).find };
  known.set(features, fresh);
  return fresh;
}

const sumOf = (legs: readonly Spot[]) =>
  legs.slice(1).reduce((sumM, spot, index) => sumM + distance(legs[index] ?? spot, spot), 0);

function isOpenBetween({ room, obstacles }: Known, from: Spot, to: Spot): boolean {
  const way = unit(subtract(to, from));
  if (!way) return true;
  const reachM = distance(from, to);
  const outlines = [room?.outline ?? [], ...obstacles.map(({ outline }) => outline)];
  return outlines.every((outline) => (rayToOutline(from, way, outline, 0)?.distanceM ?? reachM) >= reachM);
}

/**
 * A way without the half step out from beside a thing at its start, and without the one to a mark beside a thing
 * at its end, where nothing lies between: an arrow that shows half a step aside sends people the wrong way.
 */
function told(ways: Known, way: WalkedWay): WalkedWay {
  let { legs, bends, wordsFrom } = way;
  if (legs.length > 2 && wordsFrom !== legs.at(-2)) {
    legs = legs.filter((_, index) => index !== legs.length - 2);
    bends = bends.slice(0, -1);
  }
  const [start, aside, next] = legs;
  const isAside = start && aside && next && distance(start, aside) < STEP_ASIDE_M;
  if (isAside && isOpenBetween(ways, start, next)) {
    legs = [start, ...legs.slice(2)];
    bends = bends.slice(1);
    if (wordsFrom === aside) wordsFrom = start;
  }
  return { ...way, legs, bends, wordsFrom, lengthM: sumOf(legs) };
}

/**
 * The way on foot between two spots of a night's room: round what blocks walking, over the dance floor. In a night
 * with no room it is the straight line.
 */
export function wayBetween(night: Night, from: Spot, to: Spot): WalkedWay | NoWay {
  const ways = waysOf(night);
  const straight = { kind: 'way', legs: [from, to], bends: [], wordsFrom: from } as const;
  if (!ways) return { ...straight, lengthM: distance(from, to) };
  const way = ways.find(from, to);
  return way.kind === 'way' ? told(ways, way) : way;
}
