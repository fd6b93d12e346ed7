import fc from 'fast-check';
import { lampOf } from '../../core/light/lamps/lamp-recipe.ts';
import { faceGrid } from '../../core/light/report/face-grid.ts';
import { roomFit } from '../../core/light/report/room-fit.ts';
import { subjectParts } from '../../core/light/report/subject-report.ts';
import { roomLight, seenLight } from '../../core/light/report/unit-light.ts';
import { viewLight } from '../../core/light/report/view-light.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { gatherWeights } from '../../core/light/room/gather.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { exposure, head, mark, number, spot, spots, umbrella } from './finite-inputs.ts';
import { INPUT, ROOM } from './report/report-scene.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);

/** One small room made ready, and what the parts of a report make of it; absurd numbers go in beside it. */
const READY = factorRoomAtOnce(ROOM, { mostPatches: 60 });
const SIGHT = createSight(READY.room);
const GRID = faceGrid(ROOM.outline.map(({ x, y }) => ({ x: x / 4, y: y / 4 })));
const WEIGHTS = gatherWeights(READY, SIGHT, GRID.points, null);
const VIEW = viewLight(READY, SIGHT, INPUT);
if (VIEW.kind === 'cannot') throw new Error(VIEW.reason);
const BELIEF = roomFit(READY, SIGHT, INPUT, (_name, _madeFrom, make) => make());
const ROOMS = INPUT.units.map((one) => roomLight(READY, SIGHT, GRID, WEIGHTS, lampOf(one.recipe, one.mark)));
const LIT = INPUT.units.map((one, at) => {
  const room = ROOMS[at];
  if (!room) throw new Error('a unit without its light');
  return { unit: one, seen: seenLight(VIEW, SIGHT, room) };
});
const LAMPS = INPUT.units.map((one) => ({ unit: one, lamp: lampOf(one.recipe, one.mark) }));

const power = fc.double({ min: -40, max: 10, noNaN: true });
const strange = fc
  .record({ exposure, ambientEv100: fc.option(number), powers: fc.tuple(power, power), wish: number })
  .map(({ powers, wish, ...rest }) => ({
    ...INPUT,
    ...rest,
    wish: { subjectStops: wish, backgroundStops: wish, rimStops: wish, groupWidthM: wish },
    units: INPUT.units.map((one, at) => ({ ...one, mark: { ...one.mark, powerStops: powers[at] ?? 0 } })),
  }));
const parts = fc
  .tuple(number, number)
  .map(([straightLuxSeconds, returnedLuxSeconds]) =>
    INPUT.units.map((one) => ({ unit: one, straightLuxSeconds, returnedLuxSeconds })),
  );
const belief = fc.constant(BELIEF);
const unitArbitrary = fc.constantFrom(...INPUT.units);
const recipe = fc.oneof(
  fc.record({ kind: fc.constant('bare'), head }),
  fc.record({ kind: fc.constant('umbrella'), head, umbrella }),
  fc.record({
    kind: fc.constant('card'),
    head,
    card: fc.record({ widthM: number, lossStops: number, upFraction: number }),
  }),
);
const lit = fc.constant(LIT);
const all = (input: fc.Arbitrary<unknown>) =>
  input.map((one) => ({
    input: one,
    view: VIEW,
    sight: SIGHT,
    lit: LIT,
    lamps: LAMPS,
    rooms: ROOMS,
    belief: BELIEF,
  }));

/** What the functions that put a report together are called with. */
export const REPORT_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  above: args(spot, number),
  from: args(fc.record({ x: number, y: number, z: number }), fc.record({ x: number, y: number, z: number })),
  dot3: args(fc.record({ x: number, y: number, z: number }), fc.record({ x: number, y: number, z: number })),
  length3: args(fc.record({ x: number, y: number, z: number })),
  unit3: args(fc.record({ x: number, y: number, z: number })),
  pointing: args(number, number),
  lampOf: args(recipe, mark),
  faceGrid: args(spots),
  viewLight: args(fc.constant(READY), fc.constant(SIGHT), strange),
  viewKey: args(strange),
  roomLight: args(
    fc.constant(READY),
    fc.constant(SIGHT),
    fc.constant(GRID),
    fc.constant(WEIGHTS),
    fc.constantFrom(...LAMPS.map(({ lamp }) => lamp)),
  ),
  seenLight: args(fc.constant(VIEW), fc.constant(SIGHT), fc.constantFrom(...ROOMS)),
  unitKey: args(unitArbitrary),
  litBy: args(parts, number, exposure),
  roomFit: args(
    fc.constant(READY),
    fc.constant(SIGHT),
    strange,
    fc.constant((_name: string, _madeFrom: string, make: () => unknown) => make()),
  ),
  outputFactor: args(belief, unitArbitrary),
  roomFactor: args(belief),
  ambientFactor: args(belief),
  learntOf: args(belief),
  nextFrame: args(belief, parts, parts, number, exposure),
  subjectParts: args(lit),
  rimParts: args(lit),
  subjectReport: args(all(strange)),
  backgroundRays: args(fc.constant(VIEW)),
  rayParts: args(lit, fc.integer({ min: 0, max: 2000 })),
  wantedPowers: args(
    fc.tuple(strange, parts).map(([input, some]) => ({
      input,
      view: VIEW,
      lit: LIT,
      belief: BELIEF,
      subject: some,
      rim: subjectParts(LIT),
    })),
  ),
  frameReport: args(all(strange)),
  prepareLightDesk: args(fc.constant(READY)),
  levelMap: args(fc.constant(GRID), strange, fc.constant(ROOMS), belief),
};
