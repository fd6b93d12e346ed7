import fc from 'fast-check';
import type { Spot } from '../../core/geometry/spot.ts';
import { createCover } from '../../core/light/room/cover.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { levelFaces } from '../../core/light/room/level-faces.ts';
import { patchDetail } from '../../core/light/room/patch-detail.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { number, spot, spots } from './finite-inputs.ts';
import { evenLamp, HALL, pillar, roomWithLamp } from './room/rooms.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);

/** A room of absurd numbers, for what must say that it is absurd. */
const blocker = fc.record({
  id: fc.constant('a'),
  name: fc.constant('Screen'),
  outline: spots,
  heightM: number,
  reflectance: number,
});
const roof = fc.oneof(
  fc.constant({ kind: 'flat' }),
  fc.record({ kind: fc.constant('ridge'), peakM: number, ridgeDeg: number }),
  fc.record({ kind: fc.constant('pyramid'), peakM: number }),
);
const anyRoom = fc.record({
  outline: spots,
  ceilingM: number,
  roof,
  finishes: fc.record({ ceiling: number, walls: number, floor: number }),
  blockers: fc.array(blocker, { maxLength: 2 }),
});
const point = fc.record({ x: number, y: number, z: number });

/** What needs a room made ready gets one without a problem, cut coarsely, and absurd numbers beside it. */
const GRAIN = { mostPatches: 40 };
const room = roomWithLamp.map((made) => made.room);
const COARSE = { ...HALL, blockers: [pillar('a', { x: 6, y: 6 }, 1, 3)] };
const READY = factorRoomAtOnce(COARSE, GRAIN);
const { patches } = READY;
const SIGHT = createSight(COARSE);
const DETAIL = patchDetail(COARSE, patches);
const square = () => new Float64Array(patches.count ** 2).fill(1);
const exitance = fc.array(number, { minLength: patches.count, maxLength: patches.count });
const corners = fc.array(number, { minLength: 12, maxLength: 12 });
const normal = fc.constantFrom({ x: 0, y: 0, z: 1 }, { x: 0.6, y: -0.8, z: 0 });
const face = fc.constantFrom(...levelFaces(COARSE));
const sideOfLine = number.map(
  (atM) =>
    ({ x }: Spot) =>
      x - atM,
);

/** What the functions of the room's light are called with. */
export const ROOM_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  positiveOrder: args(spots),
  reflexCorners: args(spots),
  convexPieces: args(spots),
  plainOutline: args(spots),
  clipToSide: args(spots, sideOfLine),
  ridgeOver: args(spots, number),
  createRoof: args(anyRoom),
  roofHeightM: args(anyRoom, spot),
  roomProblem: args(anyRoom),
  lampProblem: args(room, point),
  createSight: args(room),
  createCover: args(room),
  placeOn: args(face, spot),
  normalOf: args(face),
  wallFaces: args(fc.constant(COARSE), fc.constant(createCover(COARSE))),
  sideFaces: args(fc.constant(COARSE), fc.constant(createCover(COARSE))),
  levelFaces: args(room),
  cellsOf: args(face, fc.double({ min: 1, max: 1e9 })),
  cutIntoPatches: args(room, fc.double({ min: 2, max: 1e9 })),
  patchDetail: args(fc.constant(COARSE), fc.constant(patches)),
  quadCount: args(corners),
  spreadOver: args(corners, fc.constant(0), number, number, fc.constant({})),
  gaussPoint: args(number, number),
  pointFactor: args(number, number, number, fc.constant(0), fc.constant(0.6), fc.constant(-0.8), corners),
  meanFactor: args(corners, fc.constant(0), fc.constant(0), fc.constant(1), corners, fc.integer({ max: 3 })),
  polygonViewFactor: args(corners, corners, fc.integer({ max: 3 })),
  sphereFactor: args(number, number, number, corners),
  putExchangeRow: args(
    fc.constant(patches),
    fc.constant(DETAIL),
    fc.constant(SIGHT),
    fc.nat(patches.count - 1),
    fc.constant(square()),
  ),
  balanceExchange: args(fc.constant(square()), fc.constant(patches.areas)),
  responseOf: args(fc.constant(patches), fc.constant(square())),
  factorRoom: args(room, fc.constant(GRAIN)),
  factorRoomAtOnce: args(room, fc.record({ mostPatches: fc.constant(12), patchM: fc.constant(1e9) })),
  lightRoom: args(
    fc.constant(READY),
    fc.constant(SIGHT),
    fc.tuple(point, number).map((given) => evenLamp(...given)),
  ),
  directOn: args(
    fc.constant(READY),
    fc.constant(SIGHT),
    fc.tuple(point, number).map((given) => evenLamp(...given)),
  ),
  gatherWeights: args(
    fc.constant(READY),
    fc.constant(SIGHT),
    fc.array(point, { maxLength: 2 }),
    fc.option(fc.tuple(normal, normal)),
  ),
  returnedAt: args(fc.constant(READY), fc.constant(SIGHT), exitance, point, fc.option(normal)),
};
