import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** Any finite number, tame ones more often: absurd sizes must not leave core as NaN or ±∞ either. */
const number = fc.oneof(
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.integer({ min: -3, max: 3 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
const spot = fc.record({ x: number, y: number });
const spots = fc.array(spot, { maxLength: 6 });
const units = fc.constantFrom('metric', 'imperial');
const exposure = fc.record({ iso: number, fNumber: number, shutterS: number });
const head = fc.record({ guideNumberM: number, zoomMm: number, leastPowerStops: number });
const umbrella = fc.record({
  diameterM: number,
  forwardFraction: number,
  lossStops: fc.option(number, { nil: undefined }),
});
const source = fc.record({ head, umbrella: fc.option(umbrella) });
const mark = fc.record({ spot, heightM: number, facingDeg: number, tiltDeg: number, powerStops: number });
const frame = fc.record({
  focalMm: number,
  sensorWidthMm: number,
  sensorHeightMm: number,
  upright: fc.boolean(),
});
const sail = fc.option(fc.record({ diameterM: number, heightM: number }));
const build = fc.record({
  legs: number,
  legRadiusM: number,
  standKg: number,
  standCgM: number,
  headKg: number,
  ballastKg: number,
  ballastAt: spot,
  ballastCgM: number,
  headAt: fc.option(spot, { nil: undefined }),
});
const thing = fc.record({
  id: fc.constantFrom('a', 'b', 'c'),
  name: fc.constantFrom('Bar', 'Table 4'),
  outline: spots,
  chairs: fc.boolean(),
  heightM: number,
  tall: fc.boolean(),
});
const things = fc.array(thing, { maxLength: 4 });
const list = fc.array(number, { maxLength: 5 });
const named = fc.record({ id: fc.constantFrom('a', 'b', 'c'), name: fc.constant('Bar') });
const direction = fc.oneof(
  fc.record({ form: fc.constant('toward-stop-short'), toward: named, stopAt: named, shortM: number }),
  fc.record({ form: fc.constant('from-toward'), from: named, toward: named, distanceM: number }),
  fc.record({ form: fc.constant('toward-distance'), toward: named, distanceM: number }),
  fc.record({
    form: fc.constant('turn-distance'),
    turnDeg: number,
    headingKnown: fc.boolean(),
    distanceM: number,
  }),
  fc.record({ form: fc.constant('here') }),
);
const sheetInput = fc.record({
  source,
  mark,
  subject: fc.record({ spot, eyeM: number }),
  camera: fc.record({ spot, heightM: number }),
  frame,
  exposure,
  ambientEv100: fc.option(number),
  targetStops: number,
});
const width = fc.option(
  fc.record({ leftM: number, gapM: number, between: fc.constant(['the wall', 'Bar']) }),
);
const disc = fc.record({ offsetM: number, heightM: number, radiusM: number });
const use = { guideNumberM: number, iso: number, powerStops: number };

type Arguments = fc.Arbitrary<unknown[]>;
const args = (...each: fc.Arbitrary<unknown>[]): Arguments => fc.tuple(...each);

/** What each public function of core is called with; every one must be here. */
const CALLS: Readonly<Record<string, Arguments>> = {
  stopsFromRatio: args(number),
  ratioFromStops: args(number),
  roundToThird: args(number),
  powerLabel: args(number),
  feetFromMetres: args(number),
  metresFromFeet: args(number),
  roundedLengthM: args(number, units),
  lengthLabel: args(number, units),
  keepFinite: args(number),
  finiteOrNull: args(number),
  isPositive: args(number),
  distance: args(spot, spot),
  add: args(spot, spot),
  subtract: args(spot, spot),
  scale: args(spot, number),
  midpoint: args(spot, spot),
  rotate: args(spot, number),
  unit: args(spot),
  dot: args(spot, spot),
  wrap360: args(number),
  wrap180: args(number),
  degFromRad: args(number),
  radFromDeg: args(number),
  circularMeanDeg: args(list),
  outlineOf: args(
    fc.record({
      at: spot,
      turnDeg: number,
      shape: fc.oneof(
        fc.record({ kind: fc.constant('box'), widthM: number, depthM: number }),
        fc.record({ kind: fc.constant('round'), radiusM: number }),
        fc.record({ kind: fc.constant('outline'), points: spots }),
      ),
    }),
  ),
  edgesOf: args(spots),
  contains: args(spots, spot),
  signedAreaOf: args(spots),
  areaOf: args(spots),
  centroidOf: args(spots),
  nearestOnSegment: args(spot, spot, spot),
  nearestOnOutline: args(spots, spot),
  distanceToOutline: args(spots, spot),
  isSimple: args(spots),
  rayToOutline: args(spot, fc.constantFrom({ x: 1, y: 0 }, { x: 0.6, y: -0.8 }), spots, number),
  cameraFrame: args(spot, spot),
  createView: args(fc.record({ spot, heightM: number }), fc.record({ spot, heightM: number })),
  flashStops: args(number, exposure),
  ev100Of: args(exposure),
  ambientStops: args(number, exposure),
  illuminanceFromEv100: args(number, number),
  luminanceFromEv100: args(number, number),
  ev100FromIlluminance: args(number, number),
  sumStops: args(fc.array(fc.option(number), { maxLength: 5 })),
  apertureValue: args(number),
  timeValue: args(number),
  speedValue: args(number),
  brightnessValue: args(number, number),
  candelaSeconds: args(number, number),
  guideNumberFromCandelaSeconds: args(number, number),
  scaledGuideNumberM: args(fc.record(use)),
  combinedGuideNumberM: args(list),
  fNumberFor: args(fc.record({ ...use, distanceM: number })),
  distanceFor: args(fc.record({ ...use, fNumber: number })),
  edgeAngleDeg: args(number),
  intensityToward: args(head, number),
  headFlux: args(head),
  discFactor: args(disc),
  squareDiscFactor: args(disc),
  facingDiscFactor: args(fc.record({ distanceM: number, emissionDeg: number, radiusM: number })),
  forwardFlux: args(fc.record({ head, umbrella })),
  luxSecondsAt: args(source, fc.record({ distanceM: number, offAxisDeg: number, powerStops: number })),
  solvePower: args(
    fc.record({
      stopsAtFull: number,
      ambientStops: fc.option(number),
      targetStops: number,
      leastPowerStops: number,
    }),
  ),
  keyAngle: args(
    fc.record({ camera: spot, subject: spot, subjectEyeM: number, light: spot, lightHeightM: number }),
  ),
  patternName: args(number, number),
  fieldOfView: args(frame),
  standInFrame: args(
    fc.record({
      camera: spot,
      cameraHeightM: number,
      aim: spot,
      aimHeightM: number,
      frame,
      stand: spot,
      topM: number,
      umbrella: sail,
    }),
  ),
  unusableReason: args(sheetInput),
  lightSheet: args(sheetInput),
  byWorstFirst: args(
    fc.constantFrom({ level: 'info' }, { level: 'stop' }),
    fc.constant({ level: 'caution' }),
  ),
  notChecked: args(fc.string(), fc.string(), fc.string(), fc.string()),
  metresInWords: args(number),
  windForceN: args(number, number, number),
  windForForceMs: args(number, number, number),
  beaufortOf: args(number),
  edgeDistance: args(number, number),
  weightN: args(build),
  restoringMoments: args(build),
  tipForce: args(build, number),
  tipForceToward: args(build, number, number),
  tipTiltDeg: args(build, number),
  criticalWind: args(build, number, fc.record({ diameterM: number }), number),
  ballastForPushKg: args(build, number, number),
  tippingCaution: args(fc.option(build), number, sail),
  rimLow: args(number, number, number),
  rimCaution: args(
    fc.record({ heightM: number, tiltDeg: number, umbrella: sail, nearWalkway: fc.option(fc.boolean()) }),
  ),
  widthLeft: args(fc.record({ stand: spot, footprintRadiusM: number, obstacles: things, room: spots })),
  obstacleUnder: args(spot, things),
  walkwayCaution: args(fc.record({ stand: spot, room: spots, width })),
  exitCaution: args(fc.record({ stand: spot, footprintRadiusM: number, exits: things })),
  markCautions: args(
    fc.record({
      mark,
      umbrella: sail,
      build: fc.option(build),
      obstacles: things,
      exits: things,
      room: spots,
    }),
  ),
  bearingDeg: args(spot, spot),
  turnDeg: args(number, number),
  clockHour: args(number, fc.integer({ min: 1, max: 12 })),
  turnWords: args(number),
  stepsFor: args(number, number),
  stepFromHeight: args(number, number),
  distanceWords: args(number, number, units),
  nudgeSpot: args(
    fc.record({
      spot,
      camera: spot,
      subject: spot,
      way: fc.constantFrom('camera-left', 'camera-right', 'nearer', 'farther'),
      byM: number,
    }),
  ),
  inOwnSense: args(fc.record({ fromSpot: spot, toSpot: spot, headingDeg: number })),
  middleOf: args(thing),
  spokenName: args(fc.string()),
  followDirection: args(direction, spot, things, fc.option(number)),
  angleBetweenDeg: args(spot, spot, spot),
  isClearOf: args(thing, spot),
  stopShortSpot: args(spot, thing, thing, number),
  outFromSpot: args(thing, thing, number),
  walkTowardSpot: args(spot, thing, number),
  directionTo: args(
    fc.record({
      from: spot,
      to: spot,
      landmarks: things,
      headingDeg: fc.option(number),
      stepM: number,
      units,
    }),
  ),
  sentenceOf: args(direction, units, number),
  facings: args(fc.record({ at: spot, landmarks: things, subject: fc.option(spot) })),
  aimAt: args(spot, number, spot, number),
  clampToRoom: args(spot, spots),
};

/** stepNominal needs one of core's own lists; it is tested beside them. */
const ELSEWHERE = ['stepNominal'];

const CORE = new URL('../../core/', import.meta.url);
const MODULES = readdirSync(CORE, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);

async function functionsOfCore(): Promise<Map<string, (...given: unknown[]) => unknown>> {
  const found = new Map<string, (...given: unknown[]) => unknown>();
  for (const name of MODULES) {
    const module = (await import(new URL(name, CORE).href)) as Record<string, unknown>;
    for (const [key, value] of Object.entries(module)) {
      if (typeof value === 'function') found.set(key, value as (...given: unknown[]) => unknown);
    }
  }
  return found;
}

/** Paths at which a result holds NaN, ±∞ or the words for them. */
function unfinished(value: unknown, path = 'result'): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (typeof value === 'string') return /NaN|Infinity|undefined/.test(value) ? [`${path} = ${value}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => unfinished(inner, `${path}.${key}`));
}

const FUNCTIONS = await functionsOfCore();

describe('no NaN and no ±∞ leaves core for finite input', () => {
  it('every public function is called here', () => {
    const missing = [...FUNCTIONS.keys()].filter((name) => !(name in CALLS) && !ELSEWHERE.includes(name));
    expect(missing).toEqual([]);
    expect(Object.keys(CALLS).filter((name) => !FUNCTIONS.has(name))).toEqual([]);
  });

  it.each(Object.entries(CALLS))('%s', (name, given) => {
    fc.assert(
      fc.property(given, (values) => {
        const made = FUNCTIONS.get(name)?.(...values);
        // createView gives a function: what that gives counts too.
        const result = typeof made === 'function' ? made({ spot: { x: 1, y: 2 }, heightM: 3 }) : made;
        // A string argument may hold such words itself; only the code's own numbers matter.
        const words = values.filter((value) => typeof value === 'string').join(' ');
        if (!/NaN|Infinity|undefined/.test(words)) expect(unfinished(result)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('a sheet or a reason comes out of a light sheet even for NaN', () => {
    fc.assert(
      fc.property(sheetInput, fc.constantFrom('targetStops', 'ambientEv100'), (input, field) => {
        const result = FUNCTIONS.get('lightSheet')?.({ ...input, [field]: Number.NaN });
        expect(result).toMatchObject({ kind: 'cannot' });
      }),
    );
  });
});
