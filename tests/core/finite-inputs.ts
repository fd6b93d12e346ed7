import fc from 'fast-check';

/** Any finite number, tame ones more often: absurd sizes must not leave core as NaN or ±∞ either. */
export const number = fc.oneof(
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.integer({ min: -3, max: 3 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
export const spot = fc.record({ x: number, y: number });
export const spots = fc.array(spot, { maxLength: 6 });
export const units = fc.constantFrom('metric', 'imperial');
export const exposure = fc.record({ iso: number, fNumber: number, shutterS: number });
export const head = fc.record({ guideNumberM: number, zoomMm: number, leastPowerStops: number });
export const umbrella = fc.record({
  diameterM: number,
  forwardFraction: number,
  backFraction: fc.option(number, { nil: undefined }),
  lossStops: fc.option(number, { nil: undefined }),
});
export const source = fc.record({ head, umbrella: fc.option(umbrella) });
export const mark = fc.record({
  spot,
  heightM: number,
  facingDeg: number,
  tiltDeg: number,
  powerStops: number,
});
export const frame = fc.record({
  focalMm: number,
  sensorWidthMm: number,
  sensorHeightMm: number,
  upright: fc.boolean(),
});
export const sail = fc.option(fc.record({ diameterM: number, heightM: number }));
export const build = fc.record({
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
export const thing = fc.record({
  id: fc.constantFrom('a', 'b', 'c'),
  name: fc.constantFrom('Bar', 'Table 4'),
  outline: spots,
  chairs: fc.boolean(),
  heightM: number,
  tall: fc.boolean(),
});
export const things = fc.array(thing, { maxLength: 4 });
export const list = fc.array(number, { maxLength: 5 });
const named = fc.record({ id: fc.constantFrom('a', 'b', 'c'), name: fc.constant('Bar') });
export const direction = fc.oneof(
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
export const sheetInput = fc.record({
  source,
  mark,
  subject: fc.record({ spot, eyeM: number }),
  camera: fc.record({ spot, heightM: number }),
  frame,
  exposure,
  ambientEv100: fc.option(number),
  returnedLuxSeconds: number,
  othersLuxSeconds: number,
  targetStops: number,
});
export const width = fc.option(
  fc.record({ leftM: number, gapM: number, between: fc.constant(['the wall', 'Bar']) }),
);
export const disc = fc.record({ offsetM: number, heightM: number, radiusM: number });
export const use = { guideNumberM: number, iso: number, powerStops: number };
