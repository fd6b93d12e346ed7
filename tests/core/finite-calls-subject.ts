import fc from 'fast-check';
import { type PowerTarget, readyTarget } from '../../core/light/powers/power-targets.ts';
import { exposure, list, number, spot, spots } from './finite-inputs.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);
const place = fc.record({ x: number, y: number, z: number });
const subjectLight = fc.record({
  id: fc.constantFrom('a', 'b'),
  job: fc.constantFrom('key', 'back', 'camera'),
  powerStops: fc.option(number),
  facingLuxSeconds: number,
  keySideLuxSeconds: number,
  shadowSideLuxSeconds: number,
  returnedKeySideLuxSeconds: number,
  returnedShadowSideLuxSeconds: number,
});
const blocker = fc.record({
  id: fc.constant('p'),
  name: fc.constant('Pillar'),
  outline: spots,
  heightM: number,
  reflectance: number,
});
const room = fc.record({
  outline: fc.oneof(
    spots,
    fc.constant([
      { x: -100, y: -100 },
      { x: 100, y: -100 },
      { x: 100, y: 100 },
      { x: -100, y: 100 },
    ]),
  ),
  ceilingM: number,
  blockers: fc.array(blocker, { maxLength: 2 }),
});
const target: fc.Arbitrary<PowerTarget> = fc.record({
  name: fc.constantFrom('subject', 'background'),
  wantedStops: number,
  weight: number,
  measure: fc.constantFrom('single', 'median'),
  rows: fc.array(fc.record({ perLight: list, base: number }), { maxLength: 4 }),
});
const problem = fc.record({
  lights: fc.array(
    fc.record({ id: fc.constantFrom('a', 'b', 'c'), leastPowerStops: number, isOff: fc.boolean() }),
    { maxLength: 3 },
  ),
  targets: fc.array(target, { maxLength: 3 }),
});
const ready = target.map((one) => readyTarget(one, [0, 1]));
const twoPowers = fc
  .tuple(fc.double({ min: -9, max: 0, noNaN: true }), fc.double({ min: -9, max: 0, noNaN: true }))
  .map((powers) => Float64Array.from(powers));
const twoThirds = fc.tuple(fc.integer({ min: -24, max: 0 }), fc.integer({ min: -24, max: 0 }));
const falloff = fc.option(fc.constantFrom((distanceM: number) => 1 / (distanceM * distanceM + 0.25)));
const fired = fc.array(fc.record({ count: number, powerStops: number }), { maxLength: 3 });

/** What the public functions of subject and powers are called with. */
export const SUBJECT_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  faceNormals: args(fc.record({ camera: spot, subject: spot, light: spot })),
  subjectLevels: args(
    fc.record({ lights: fc.array(subjectLight, { maxLength: 3 }), ambientLux: number, exposure }),
  ),
  penumbraM: args(number, number, number),
  softness: args(fc.record({ diameterM: number, distanceM: number, emissionDeg: number })),
  shadowLanding: args(fc.record({ light: place, diameterM: number, head: place, room })),
  groupSpots: args(fc.record({ camera: spot, subject: spot, widthM: number, count: number })),
  evenness: args(list),
  depthOfField: args(
    fc.record({
      focalMm: number,
      fNumber: number,
      sensorWidthMm: number,
      sensorHeightMm: number,
      focusM: number,
    }),
  ),
  wayThroughCrowdM: args(place, place, number),
  clearFaceChance: args(place, place, fc.record({ personsPerM2: number, topM: number, bodyRadiusM: number })),
  readyTarget: args(target, fc.constantFrom([0], [0, 1], [])),
  targetLevel: args(ready, twoPowers),
  middleRow: args(ready, number),
  costOf: args(fc.array(ready, { maxLength: 3 }), twoPowers, fc.constant(new Float64Array(2))),
  descendPowers: args(fc.array(ready, { maxLength: 3 }), twoPowers, fc.constant(Float64Array.from([-9, -9]))),
  searchSteps: args(
    fc.array(ready, { maxLength: 3 }),
    twoThirds.map((thirds) => Int32Array.from(thirds)),
    fc.constant(Int32Array.from([-24, -24])),
    fc.constantFrom('near', 'far'),
  ),
  solvePowers: args(problem),
  distanceForChangeM: args(number, number, falloff),
  adviseOnPowers: args(
    fc.record({
      problem,
      exposure,
      lights: fc.array(
        fc.record({
          id: fc.constantFrom('a', 'b', 'c'),
          job: fc.constantFrom('key', 'back', 'camera'),
          setStops: fc.option(number),
          distanceM: number,
          falloff,
        }),
        { maxLength: 3 },
      ),
      highestIso: number,
    }),
  ),
  recycleS: args(number, number, number),
  batteryShare: args(number, fired),
  flashesLeft: args(number, fired, number),
};
