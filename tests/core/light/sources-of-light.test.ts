import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { discFactor, squareDiscFactor } from '../../../core/light/disc.ts';
import { beamFallStops, edgeAngleDeg, headFlux, intensityToward } from '../../../core/light/flash-head.ts';
import { candelaSeconds, distanceFor, fNumberFor } from '../../../core/light/guide-number.ts';
import {
  backLobe,
  DEFAULT_FORWARD_FRACTION,
  forwardFlux,
  forwardLobe,
  type KeySource,
  luxSecondsAt,
} from '../../../core/light/umbrella.ts';

const head = fc.record({
  guideNumberM: fc.double({ min: 8, max: 80, noNaN: true }),
  zoomMm: fc.double({ min: 14, max: 200, noNaN: true }),
  leastPowerStops: fc.constant(-7),
});
const distance = fc.double({ min: 0.5, max: 20, noNaN: true });
const HEAD = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
const UMBRELLA = { diameterM: 1, forwardFraction: 0.5 };

describe('flash head', () => {
  it('is one stop down at the corner of its coverage, symmetric, and dark behind', () => {
    fc.assert(
      fc.property(head, (one) => {
        const axis = candelaSeconds(one.guideNumberM);
        const edgeDeg = edgeAngleDeg(one.zoomMm);
        expect(intensityToward(one, 0)).toBe(axis);
        expect(intensityToward(one, edgeDeg) / axis).toBeCloseTo(0.5, 9);
        expect(intensityToward(one, -edgeDeg)).toBe(intensityToward(one, edgeDeg));
        expect(intensityToward(one, edgeDeg / 2) / axis).toBeCloseTo(2 ** -0.25, 9);
        expect(intensityToward(one, 120)).toBe(0);
        expect(intensityToward(one, 360)).toBe(axis);
        expect(intensityToward(one, 350)).toBe(intensityToward(one, 10));
        expect(intensityToward(one, 365)).toBe(intensityToward(one, 5));
      }),
    );
  });

  it('the corner of 35 mm coverage lies at half the published 63.4° diagonal', () => {
    expect(edgeAngleDeg(35)).toBeCloseTo(63.4 / 2, 1);
  });

  it('past that corner it cuts off, a stop for each sixteenth of the angle', () => {
    fc.assert(
      fc.property(head, fc.double({ min: 1, max: 1.5, noNaN: true }), (one, out) => {
        const edgeDeg = edgeAngleDeg(one.zoomMm);
        const stops = Math.log2(intensityToward(one, 0) / intensityToward(one, out * edgeDeg));
        if (out * edgeDeg < 90) expect(stops).toBeCloseTo(1 + 16 * (out - 1), 6);
        expect(beamFallStops(out)).toBeGreaterThanOrEqual(out ** 2);
      }),
    );
  });

  it('its light lies between half of the solid angle of its round coverage and all of it', () => {
    fc.assert(
      fc.property(head, (one) => {
        // Solid angle of a cone, closed form: 2π(1 − cos θ).
        const cone = 2 * Math.PI * (1 - Math.cos((edgeAngleDeg(one.zoomMm) * Math.PI) / 180));
        const full = candelaSeconds(one.guideNumberM) * cone;
        expect(headFlux(one)).toBeLessThan(full);
        expect(headFlux(one)).toBeGreaterThan(full / 2);
      }),
    );
  });

  it('the integral agrees with throwing even points at a hemisphere', () => {
    for (const zoomMm of [4, 14, 35, 105, 2000]) {
      const last = Math.min(90, 4 * edgeAngleDeg(zoomMm));
      const rings = 100_000;
      let sum = 0;
      for (let i = 0; i < rings; i += 1) {
        const angleDeg = (last * (i + 0.5)) / rings;
        sum += intensityToward({ ...HEAD, zoomMm }, angleDeg) * Math.sin((angleDeg * Math.PI) / 180);
      }
      const plain = (2 * Math.PI * sum * (last / rings) * Math.PI) / 180;
      expect(headFlux({ ...HEAD, zoomMm }) / plain).toBeCloseTo(1, 5);
    }
  });

  it('zooming out at one guide number gives more light in all', () => {
    expect(headFlux({ ...HEAD, zoomMm: 24 })).toBeGreaterThan(headFlux({ ...HEAD, zoomMm: 35 }));
    expect(headFlux({ ...HEAD, zoomMm: 0 })).toBe(0);
    expect(headFlux({ ...HEAD, guideNumberM: 0 })).toBe(0);
    expect(edgeAngleDeg(0)).toBe(0);
  });
});

describe('light at the subject', () => {
  const source: fc.Arbitrary<KeySource> = fc.record({
    head,
    umbrella: fc.option(
      fc.record({
        diameterM: fc.double({ min: 0.5, max: 2, noNaN: true }),
        forwardFraction: fc.double({ min: 0.1, max: 1, noNaN: true }),
      }),
    ),
  });

  it('falls with distance, never faster than the inverse square, and by one stop per stop of power', () => {
    fc.assert(
      fc.property(
        source,
        distance,
        fc.double({ min: 0, max: 30, noNaN: true }),
        (key, distanceM, offAxisDeg) => {
          const near = luxSecondsAt(key, { distanceM, offAxisDeg, powerStops: 0 });
          const far = luxSecondsAt(key, { distanceM: 2 * distanceM, offAxisDeg, powerStops: 0 });
          expect(far).toBeLessThan(near);
          expect(far * 4).toBeGreaterThanOrEqual(near * (1 - 1e-9));
          expect(luxSecondsAt(key, { distanceM, offAxisDeg, powerStops: -3 })).toBeCloseTo(near / 8, 6);
        },
      ),
    );
  });

  it('a head in an umbrella sends forward the stated share of its light, all of it and no more', () => {
    // Adds up the light that crosses a far hemisphere: E·r²·dω, E facing the centre.
    const far = 1000;
    let total = 0;
    const rings = 2000;
    for (let i = 0; i < rings; i += 1) {
      const angle = (Math.PI / 2) * ((i + 0.5) / rings);
      const lux = luxSecondsAt(
        { head: HEAD, umbrella: UMBRELLA },
        { distanceM: far, offAxisDeg: (angle * 180) / Math.PI, powerStops: 0 },
      );
      total += lux * far * far * 2 * Math.PI * Math.sin(angle) * (Math.PI / 2 / rings);
    }
    expect(total / (headFlux(HEAD) * 0.5)).toBeCloseTo(1, 3);
    expect(forwardFlux({ head: HEAD, umbrella: UMBRELLA })).toBe(headFlux(HEAD) * 0.5);
    expect(DEFAULT_FORWARD_FRACTION).toBe(0.5);
  });

  it('a measured loss is the loss far away on the axis, and makes no light', () => {
    fc.assert(
      fc.property(head, fc.double({ min: -3, max: 6, noNaN: true }), (one, lossStops) => {
        const toward = { distanceM: 500, offAxisDeg: 0, powerStops: 0 };
        const umbrella = { ...UMBRELLA, lossStops };
        const through = luxSecondsAt({ head: one, umbrella }, toward);
        const bare = luxSecondsAt({ head: one, umbrella: null }, toward);
        expect(Math.log2(bare / through)).toBeCloseTo(lossStops, 4);
        const forward = forwardFlux({ head: one, umbrella });
        expect(forward).toBeLessThanOrEqual(headFlux(one) * UMBRELLA.forwardFraction * (1 + 1e-12));
        const { intensity, exponent, flux } = forwardLobe({ head: one, umbrella });
        expect((2 * Math.PI * intensity) / (exponent + 1) / flux).toBeCloseTo(1, 9);
      }),
    );
  });

  it('throws back what is stated, a third if nothing is, and never more than is left', () => {
    const backOf = (change: object) => backLobe({ head: HEAD, umbrella: { ...UMBRELLA, ...change } }).flux;
    expect(backOf({}) / headFlux(HEAD)).toBeCloseTo(0.35, 12);
    expect(backOf({ backFraction: 0.2 }) / headFlux(HEAD)).toBeCloseTo(0.2, 12);
    expect(backOf({ forwardFraction: 0.9 }) / headFlux(HEAD)).toBeCloseTo(0.1, 12);
    expect(backOf({ lossStops: 4 })).toBe(backOf({}));
  });

  it('nearer than 0.1 m counts as 0.1 m', () => {
    const bareAt = (distanceM: number) =>
      luxSecondsAt({ head: HEAD, umbrella: null }, { distanceM, offAxisDeg: 0, powerStops: 0 });
    expect(bareAt(0.01)).toBe(bareAt(0.1));
    expect(bareAt(0.102)).toBeLessThan(bareAt(0.1));
  });

  it('a full turn more is the same direction', () => {
    const at = (offAxisDeg: number) =>
      luxSecondsAt({ head: HEAD, umbrella: UMBRELLA }, { distanceM: 2, offAxisDeg, powerStops: 0 });
    expect(at(390)).toBeCloseTo(at(30), 9);
  });

  it('behind the umbrella there is its back spill, beside it nothing', () => {
    const at = (offAxisDeg: number) =>
      luxSecondsAt({ head: HEAD, umbrella: UMBRELLA }, { distanceM: 2, offAxisDeg, powerStops: 0 });
    expect(at(150) / at(30)).toBeCloseTo(0.35 / 0.5, 9);
    expect(at(-150)).toBeCloseTo(at(150), 9);
    expect(at(90)).toBeCloseTo(0, 9);
    const behind = { offsetM: 1, heightM: -1, radiusM: 0.5 };
    expect([discFactor(behind), squareDiscFactor(behind)]).toEqual([0, 0]);
  });
});

describe('guide numbers', () => {
  it('f-number and distance lead back to each other', () => {
    fc.assert(
      fc.property(
        distance,
        fc.double({ min: 50, max: 6400, noNaN: true }),
        fc.double({ min: -7, max: 0, noNaN: true }),
        (distanceM, iso, powerStops) => {
          const use = { guideNumberM: 36, iso, powerStops };
          const fNumber = fNumberFor({ ...use, distanceM });
          expect(distanceFor({ ...use, fNumber: fNumber ?? Number.NaN })).toBeCloseTo(distanceM, 9);
        },
      ),
    );
  });

  it('nothing comes from nothing', () => {
    expect(fNumberFor({ guideNumberM: 0, iso: 100, powerStops: 0, distanceM: 2 })).toBeNull();
    expect(fNumberFor({ guideNumberM: 36, iso: 100, powerStops: 0, distanceM: 0 })).toBeNull();
    expect(distanceFor({ guideNumberM: 36, iso: 0, powerStops: 0, fNumber: 2 })).toBeNull();
  });
});
