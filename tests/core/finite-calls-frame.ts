import fc from 'fast-check';
import { linkFrame } from '../../core/light/frame/link-frame.ts';
import { cutIntoPatches } from '../../core/light/room/patches.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { exposure, frame, number, spot, spots } from './finite-inputs.ts';
import { box, evenLamp, feature, HALL, raysOf, SCENE } from './frame/frame-scenes.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);
const record = fc.record;

const roof = fc.oneof(
  fc.constant({ kind: 'flat' }),
  record({ kind: fc.constant('ridge'), peakM: number, ridgeDeg: number }),
  record({ kind: fc.constant('pyramid'), peakM: number }),
);
const named = { id: fc.constantFrom('a', 'b'), name: fc.constant('Bar') };
const blocker = record({ ...named, outline: spots, heightM: number, reflectance: number });
const thing = record({
  ...named,
  outline: spots,
  heightM: number,
  background: fc.constant('wanted'),
  blocksLight: fc.boolean(),
  reflectance: number,
});
const room = record({
  outline: fc.oneof(spots, fc.constant(HALL.outline)),
  ceilingM: number,
  roof,
  finishes: record({ ceiling: number, walls: number, floor: number }),
  blockers: fc.array(blocker, { maxLength: 2 }),
});
const stand = record({
  ...named,
  letter: fc.constant('K'),
  spot,
  heightM: number,
  umbrellaRadiusM: fc.option(number),
});
const wild = record({
  room,
  features: fc.array(thing, { maxLength: 2 }),
  camera: record({ spot, heightM: number }),
  subject: record({ spot, eyeM: number, facingDeg: number }),
  frame,
  stands: fc.array(stand, { maxLength: 2 }),
});
/** A proper scene with one thing that is not: most of these give a picture. */
const nearly = fc.oneof(
  record({ camera: record({ spot, heightM: number }) }),
  record({ subject: record({ spot, eyeM: number, facingDeg: number }) }),
  record({ frame }),
  record({ stands: fc.array(stand, { maxLength: 2 }) }),
  record({ features: fc.array(thing, { maxLength: 2 }) }),
  record({ room: record({ roof }).map((change) => ({ ...HALL, ...change })) }),
);
const scene = fc.oneof(
  wild,
  nearly.map((change) => ({ ...SCENE, ...change })),
);

const RAYS = raysOf({ ...SCENE, features: [feature('table', box(8, 8, 2, 1), 0.75)] }, 4, 3);
const SIGHT = createSight(HALL);
const PATCHES = cutIntoPatches(HALL, 4);
const LINKS = linkFrame(RAYS, PATCHES, SIGHT);
const perRay = fc.array(number, { minLength: 10, maxLength: 12 }).map((list) => Float64Array.from(list));
const perPatch = fc
  .array(number, { minLength: PATCHES.count, maxLength: PATCHES.count })
  .map((list) => Float64Array.from(list));
const lamp = fc.tuple(number, number, number, number).map(([light, x, y, z]) => evenLamp(light, x, y, z));
const light = fc.option(record({ direct: perPatch, exitance: perPatch, returned: perPatch }));
const lamps = fc.array(record({ standId: fc.constantFrom('a', 'b'), lamp, powerStops: number }), {
  maxLength: 2,
});
const hit = record({ distanceM: number, kind: number, index: number, nx: number, ny: number, nz: number });
const ray = [number, number, number, number, number, number];
const solid = record({
  ...named,
  background: fc.constant('wanted'),
  blocksLight: fc.boolean(),
  reflectance: number,
  heightM: number,
  outline: spots,
  blocker: fc.constant(null),
  leastX: number,
  mostX: number,
  leastY: number,
  mostY: number,
});
const person = record({
  x: number,
  y: number,
  eyeM: number,
  headRadiusM: number,
  bodyRadiusM: number,
  lowM: number,
  highM: number,
});

/** What the public functions of the frame check are called with. */
export const FRAME_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  solidsOf: args(scene),
  meetSolid: args(solid, ...ray, hit),
  personOf: args(record({ spot, eyeM: number, facingDeg: number })),
  meetHead: args(person, ...ray, hit),
  meetBody: args(person, ...ray, hit),
  shellOf: args(room),
  meetShell: args(
    record({ outline: spots, slopes: fc.array(record({ nx: number, ny: number, nz: number, d: number })) }),
    ...ray,
    hit,
  ),
  frameBasis: args(scene),
  frameProblem: args(scene),
  castFrame: args(scene, fc.constantFrom(2, 3, 0.5), fc.constantFrom(2, 1, -1)),
  viewRows: args(
    fc.array(fc.tuple(number, number, number, number), { maxLength: 2 }),
    fc.constant(PATCHES),
    fc.option(fc.constant(SIGHT)),
  ),
  linkFrame: args(fc.constant(RAYS), fc.constant(PATCHES), fc.constant(SIGHT)),
  shadeStraight: args(fc.constant(LINKS), fc.constant(SIGHT), lamp),
  shadeReturned: args(
    fc.constant(LINKS),
    light.filter((given) => given !== null),
  ),
  shadeLamp: args(fc.constant(LINKS), fc.constant(SIGHT), lamp, light),
  shadeAmbient: args(
    fc.constant(RAYS),
    number.map((lux) => () => lux),
  ),
  combineShades: args(
    fc.array(record({ shade: perRay, powerStops: number }), { maxLength: 2 }),
    fc.option(perRay),
    exposure,
    fc.constantFrom(12, 0, -1, 0.5),
  ),
  shadeFrame: args(
    fc.constant(LINKS),
    fc.constant(SIGHT),
    fc.array(record({ lamp, powerStops: number, light }), { maxLength: 2 }),
    number,
    exposure,
  ),
  frameStats: args(fc.constant(RAYS), perRay),
  darkBehind: args(fc.constant(RAYS), perRay, spot),
  veilStopsOf: args(number, exposure, number, number),
  lightsInFrame: args(scene, lamps, exposure),
  framePicture: args(perRay, fc.constantFrom(4, -1, 0.5), fc.constantFrom(3, 0)),
  silhouette: args(scene),
  litSides: args(scene, lamps, fc.constant(SIGHT), exposure),
};
