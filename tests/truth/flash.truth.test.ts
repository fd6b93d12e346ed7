import { describe, expect, it } from 'vitest';
import { outlineOf } from '../../core/geometry/shape.ts';
import { discFactor, facingDiscFactor, squareDiscFactor } from '../../core/light/disc.ts';
import { flashStops } from '../../core/light/exposure.ts';
import { fieldOfView } from '../../core/light/field-of-view.ts';
import type { FlashHead } from '../../core/light/flash-head.ts';
import {
  candelaSeconds,
  combinedGuideNumberM,
  distanceFor,
  fNumberFor,
  guideNumberFromCandelaSeconds,
  scaledGuideNumberM,
} from '../../core/light/guide-number.ts';
import { openGuideNumberM } from '../../core/light/lamps/guide-number-meaning.ts';
import { patternName } from '../../core/light/pattern.ts';
import { solvePower } from '../../core/light/power.ts';
import { DEFAULT_FORWARD_FRACTION, type KeySource, luxSecondsAt } from '../../core/light/umbrella.ts';
import { feetFromMetres } from '../../core/units/length.ts';
import { stopsFromRatio } from '../../core/units/stops.ts';
import { expectClose } from './expect-close.ts';
import adding from './fixtures/adding-light.json' with { type: 'json' };
import angles from './fixtures/angle-of-view.json' with { type: 'json' };
import candelas from './fixtures/candela-seconds.json' with { type: 'json' };
import practice from './fixtures/common-practice.json' with { type: 'json' };
import disc from './fixtures/disc.json' with { type: 'json' };
import examples from './fixtures/guide-number-examples.json' with { type: 'json' };
import portrait from './fixtures/portrait.json' with { type: 'json' };

const HEAD: FlashHead = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
const BARE: KeySource = { head: HEAD, umbrella: null };

function onAxis(source: KeySource, distanceM: number): number {
  return luxSecondsAt(source, { distanceM, offAxisDeg: 0, powerStops: 0 });
}

describe('guide numbers against published examples', () => {
  it.each(examples.fNumbers)('$what', ({ guideNumber, distance, iso, expected, tolerance, what }) => {
    const use = { guideNumberM: guideNumber, iso, powerStops: 0, distanceM: distance };
    expectClose(fNumberFor(use), expected, tolerance, what);
  });

  it.each(examples.distances)('$what', ({ guideNumber, fNumber, iso, expected, tolerance, what }) => {
    const use = { guideNumberM: guideNumber, iso, powerStops: 0, fNumber };
    expectClose(distanceFor(use), expected, tolerance, what);
  });

  it.each(examples.speeds)('GN $guideNumber at ISO $iso', ({ guideNumber, iso, expected, tolerance }) => {
    const scaled = scaledGuideNumberM({ guideNumberM: guideNumber, iso, powerStops: 0 });
    expectClose(scaled, expected, tolerance, 'guide number');
  });

  it.each(examples.powers)('power $powerStops stops: GN × $factor', ({ powerStops, factor, tolerance }) => {
    expectClose(scaledGuideNumberM({ guideNumberM: 1, iso: 100, powerStops }), factor, tolerance, 'factor');
  });

  it.each(examples.together)('$what', ({ guideNumbers, expected, tolerance, what }) => {
    expectClose(combinedGuideNumberM(guideNumbers), expected, tolerance, what);
  });

  it.each(candelas.rows)('GN $guideNumberM m is $candelaSeconds cd·s', (row) => {
    expectClose(candelaSeconds(row.guideNumberM), row.candelaSeconds, row.tolerance, 'cd·s');
    expectClose(
      onAxis({ head: { ...HEAD, guideNumberM: row.guideNumberM }, umbrella: null }, 1),
      row.candelaSeconds,
      row.tolerance,
      'lx·s at 1 m',
    );
  });

  it.each(candelas.feetAtC250)('$bcps cd·s is GN $guideNumberFeet ft', (row) => {
    const metres = guideNumberFromCandelaSeconds(row.bcps);
    expectClose(feetFromMetres(metres ?? Number.NaN), row.guideNumberFeet, row.tolerance, 'GN');
  });

  it('an older constant gives the older, larger guide number', () => {
    const { bcps, c, guideNumberFeet, tolerance } = candelas.olderConstant;
    const metres = guideNumberFromCandelaSeconds(bcps, c);
    expectClose(feetFromMetres(metres ?? Number.NaN), guideNumberFeet, tolerance, 'GN');
  });

  it.each(examples.fNumbers)(
    'a guide number and its light agree: $what',
    ({ guideNumber, distance, iso, expected }) => {
      const head = { ...HEAD, guideNumberM: guideNumber };
      const stops = flashStops(onAxis({ head, umbrella: null }, distance), {
        iso,
        fNumber: expected,
        shutterS: 1,
      });
      expect(Math.abs(stops ?? Number.NaN)).toBeLessThan(0.001);
    },
  );
});

describe('falloff against published values', () => {
  it.each(adding.falloff)('bare, $nearM m to $farM m: $stops stops', ({ nearM, farM, stops, tolerance }) => {
    expectClose(stopsFromRatio(onAxis(BARE, nearM) / onAxis(BARE, farM)), stops, tolerance, 'falloff');
  });

  it.each(adding.percent)('$metres m gets $share of 1 m', ({ metres, share, tolerance }) => {
    expectClose(onAxis(BARE, metres) / onAxis(BARE, 1), share, tolerance, 'share');
  });

  it.each(disc.factors)('disc of $radiusM m, $offsetM m aside, $heightM m off', (row) => {
    expectClose(discFactor(row), row.factor, row.tolerance, 'factor');
  });

  it.each(disc.onAxis)('umbrella on its axis at $diameters diameters', (row) => {
    const umbrella = { diameterM: 1, forwardFraction: DEFAULT_FORWARD_FRACTION };
    const far = 1000;
    const point = onAxis({ head: HEAD, umbrella }, far) * far * far;
    const ratio = (onAxis({ head: HEAD, umbrella }, row.diameters) * row.diameters ** 2) / point;
    expectClose(ratio, row.ratio, row.tolerance, 'ratio');
    expectClose(stopsFromRatio(ratio), row.stops, row.stopsTolerance, 'stops');
  });

  it('from five times its size on, the umbrella keeps the inverse square within 1 %', () => {
    const { diameters, within } = disc.fiveTimes;
    const ratio =
      facingDiscFactor({ distanceM: diameters, emissionDeg: 0, radiusM: 0.5 }) * diameters ** 2 * 4;
    expect(1 - ratio).toBeLessThanOrEqual(within);
    const nearer = facingDiscFactor({ distanceM: diameters * 0.95, emissionDeg: 0, radiusM: 0.5 });
    expect(1 - nearer * (diameters * 0.95) ** 2 * 4).toBeGreaterThan(within);
  });

  it('an umbrella of 1 m at 1.5 m departs from the point law as published', () => {
    const { radiusM, distanceM, stops, tolerance } = disc.nearUmbrella;
    const factor = facingDiscFactor({ distanceM, emissionDeg: 0, radiusM });
    expectClose(stopsFromRatio((radiusM / distanceM) ** 2 / factor), stops, tolerance, 'stops');
  });

  it('factors aside agree with adding up the disc piece by piece', () => {
    for (const [distanceM, emissionDeg] of [
      [1, 30],
      [1.5, 45],
      [2, 60],
      [3, 15],
      [1, 80],
    ] as const) {
      const slow = pieceByPiece(distanceM, emissionDeg, 0.5);
      const place = { distanceM, emissionDeg, radiusM: 0.5 };
      expect(facingDiscFactor(place) / slow.facing).toBeCloseTo(1, 4);
      const emission = (emissionDeg * Math.PI) / 180;
      const beside = {
        offsetM: distanceM * Math.sin(emission),
        heightM: distanceM * Math.cos(emission),
        radiusM: 0.5,
      };
      expect(squareDiscFactor(beside) / slow.square).toBeCloseTo(1, 4);
    }
  });
});

/** View factors of a disc by the plain double sum over its area: slow, and independent of the closed forms. */
function pieceByPiece(distanceM: number, emissionDeg: number, radiusM: number) {
  const emission = (emissionDeg * Math.PI) / 180;
  const at = { x: distanceM * Math.sin(emission), z: distanceM * Math.cos(emission) };
  const rings = 200;
  const sum = { facing: 0, square: 0 };
  for (let i = 0; i < rings; i += 1) {
    for (let j = 0; j < rings; j += 1) {
      const r = (radiusM * (i + 0.5)) / rings;
      const turn = (2 * Math.PI * (j + 0.5)) / rings;
      const way = { x: r * Math.cos(turn) - at.x, y: r * Math.sin(turn), z: -at.z };
      const square = way.x ** 2 + way.y ** 2 + way.z ** 2;
      const area = r * (radiusM / rings) * ((2 * Math.PI) / rings);
      const share = ((at.z / Math.sqrt(square)) * area) / (Math.PI * square * Math.sqrt(square));
      sum.facing += (share * (-way.x * at.x - way.z * at.z)) / distanceM;
      sum.square += share * -way.x;
    }
  }
  return sum;
}

describe('angles and names against published values', () => {
  it.each(angles.rows)('$focalMm mm', ({ focalMm, ...published }) => {
    const frame = { focalMm, sensorWidthMm: 36, sensorHeightMm: 24, upright: false };
    const field = fieldOfView(frame);
    expectClose(field.horizontalDeg, published.horizontalDeg, angles.tolerance, 'horizontal');
    expectClose(field.verticalDeg, published.verticalDeg, angles.tolerance, 'vertical');
    expectClose(field.diagonalDeg, published.diagonalDeg, angles.tolerance, 'diagonal');
    expect(fieldOfView({ ...frame, upright: true }).verticalDeg).toBe(field.horizontalDeg);
  });

  it.each(portrait.patterns)('%i° aside and %i° up is %s light', (azimuthDeg, elevationDeg, name) => {
    expect(patternName(Number(azimuthDeg), Number(elevationDeg))).toBe(name);
  });
});

describe('common practice', () => {
  const first = practice.firstTry;
  it.each(first.distancesM)('the key through an umbrella is first tried at 1/64 (%d m)', (distanceM) => {
    // The rule speaks of heads by what their leaflets print, and a printed guide number holds a room.
    const guideNumberM = openGuideNumberM(first.guideNumberM, 'printed');
    const head = { guideNumberM, zoomMm: first.zoomMm, leastPowerStops: -8 };
    const umbrella = { diameterM: first.umbrellaM, forwardFraction: DEFAULT_FORWARD_FRACTION };
    const stopsAtFull = flashStops(onAxis({ head, umbrella }, distanceM), first) ?? Number.NaN;
    const answer = solvePower({ stopsAtFull, ambientStops: null, targetStops: 0, leastPowerStops: -8 });
    expectClose(
      answer.kind === 'power' ? answer.powerStops : null,
      first.powerStops,
      first.tolerance,
      'power',
    );
  });

  it('light from a stand keeps its exposure when the lead walks back; light on the camera loses 2 stops', () => {
    const atCamera = stopsFromRatio(onAxis(BARE, 3) / onAxis(BARE, 6));
    expectClose(atCamera, 2, 'exact', 'doubling');
  });

  it('a round table of the plan is a 24-gon inside its circle', () => {
    const outline = outlineOf({ at: { x: 0, y: 0 }, turnDeg: 0, shape: { kind: 'round', radiusM: 0.9 } });
    expect(outline).toHaveLength(24);
    for (const { x, y } of outline) expect(Math.hypot(x, y)).toBeCloseTo(0.9, 9);
  });
});
