import fc from 'fast-check';
import { rimCorners } from '../../core/guidance/rim-corners.ts';
import { cornerWalks, type WalkRoom } from '../../core/guidance/shortest-way.ts';
import { walkEnd } from '../../core/guidance/walk-end.ts';
import { createWalkFloor, isFreeFloor } from '../../core/guidance/walk-floor.ts';
import { walkGraph } from '../../core/guidance/walk-graph.ts';
import { createWays } from '../../core/guidance/way-around.ts';
import { direction, number, spot, spots, things, units } from './finite-inputs.ts';
import { box, round } from './guidance/way-plans.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);

/** A small hall with a bar and a table in it, made ready. */
const HALL = {
  outline: [
    { x: -10, y: -10 },
    { x: 10, y: -10 },
    { x: 10, y: 10 },
    { x: -10, y: 10 },
  ],
  obstacles: [box('a', 'Bar', { x: 0, y: 0 }, 4, 1), round('b', 'Table 4', { x: 4, y: 4 }, 0.9)],
};
const CLEAR_M = 0.29;
const FLOOR = createWalkFloor(HALL.outline, HALL.obstacles);
const CORNERS = HALL.obstacles.flatMap((thing) =>
  rimCorners(thing.outline, 1, CLEAR_M, (at) => isFreeFloor(FLOOR, at, CLEAR_M - 1e-6), thing),
);
const ROOM: WalkRoom = {
  floor: FLOOR,
  graph: walkGraph(CORNERS, FLOOR, CLEAR_M - 2e-6),
  bodyM: 0.3,
  clearM: CLEAR_M,
};
const WAYS = createWays(HALL);
const inHall = fc.record({ x: fc.double({ min: -9, max: 9, noNaN: true }), y: fc.constant(-3) });

const floor = fc.constant(FLOOR);
const room = fc.constant(ROOM);
const corner = fc.constantFrom(...CORNERS);
const end = fc.oneof(spot, inHall).map((at) => walkEnd(FLOOR, at, CLEAR_M));
const walked = end.map((at) => ({ at, walks: cornerWalks(ROOM, at) }));
const named = fc.record({ id: fc.constant('a'), name: fc.constantFrom('Bar', 'Table 4') });
const way = fc.tuple(inHall, inHall).map(([from, to]) => WAYS.find(from, { x: to.x, y: -to.y }));
const absurdWay = spots.map((legs) => ({ legs, bends: [], wordsFrom: legs.at(-2) ?? { x: 0, y: 0 } }));
const anyWay = fc.oneof(
  way.filter(({ kind }) => kind === 'way'),
  absurdWay,
);

/** What the functions of the way there are called with. */
export const WAY_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  createWalkFloor: args(spots, things),
  isFreeFloor: args(floor, spot, number),
  rimCorners: args(
    spots,
    fc.constantFrom(1, -1),
    number,
    fc.constant(() => true),
    named,
  ),
  isTaut: args(corner, spot),
  walkGraph: args(fc.constant(CORNERS), floor, number),
  createCheapestFirst: args(),
  walkEnd: args(floor, spot, number),
  leadsStraight: args(floor, end, spot, number, number),
  cornerWalks: args(room, end),
  lengthOf: args(spots),
  shortestWay: fc.tuple(walked, walked).map(([from, to]) => [ROOM, from.at, to.at, from.walks, to.walks]),
  nearestReached: fc.tuple(walked, spot).map(([from, goal]) => [ROOM, from.at, from.walks, goal]),
  surroundings: args(floor, fc.oneof(spot, inHall), number),
  shutInWords: args(
    fc.constant('the mark'),
    fc.record({ names: fc.array(named, { maxLength: 5 }), seenM2: number }),
  ),
  tooTightWords: args(fc.constant('the mark'), floor, spot, number),
  createWays: args(fc.record({ outline: spots, obstacles: things, bodyM: number })),
  firstLeg: args(anyWay),
  directionAlong: args(
    anyWay,
    fc.record({
      from: spot,
      to: spot,
      landmarks: things,
      headingDeg: fc.option(number),
      stepM: number,
      units,
    }),
  ),
  sentenceAlong: args(
    fc.record({
      round: fc.array(named, { maxLength: 3 }),
      from: spot,
      headingDeg: fc.option(number),
      direction,
      beside: fc.option(named),
      isStraight: fc.boolean(),
    }),
    units,
    number,
  ),
};
