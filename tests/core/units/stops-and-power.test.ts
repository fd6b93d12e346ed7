import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerLabel } from '../../../core/units/power.ts';
import { ratioFromStops, roundToThird, stopsFromRatio } from '../../../core/units/stops.ts';

const stops = fc.double({ min: -60, max: 60, noNaN: true });

describe('stops', () => {
  it('a ratio and its stops lead back to each other', () => {
    fc.assert(
      fc.property(stops, (x) => {
        expect(stopsFromRatio(ratioFromStops(x))).toBeCloseTo(x, 9);
      }),
    );
  });

  it('twice the light is one stop, no light has none', () => {
    expect(stopsFromRatio(2)).toBe(1);
    expect(stopsFromRatio(0)).toBeNull();
    expect(stopsFromRatio(-1)).toBeNull();
    expect(stopsFromRatio(Number.NaN)).toBeNull();
  });

  it('the nearest third is a third, and at most a sixth away', () => {
    fc.assert(
      fc.property(stops, (x) => {
        const third = roundToThird(x);
        expect(Math.abs(third * 3 - Math.round(third * 3))).toBeLessThan(1e-9);
        expect(Math.abs(third - x)).toBeLessThanOrEqual(1 / 6 + 1e-9);
      }),
    );
  });

  it('never gives minus zero', () => {
    expect(Object.is(roundToThird(-0.01), 0)).toBe(true);
  });
});

describe('power labels', () => {
  it.each([
    [0, '1/1'],
    [-1, '1/2'],
    [-6, '1/64'],
    [-5.667, '1/64 +⅓'],
    [-5.333, '1/64 +⅔'],
    [-5, '1/32'],
    [-8, '1/256'],
    [-1 / 3, '1/2 +⅔'],
    [0.4, '1/1'],
    [Number.NaN, 'not known'],
  ])('%d stops is %s', (powerStops, label) => {
    expect(powerLabel(powerStops)).toBe(label);
  });

  it('fraction and thirds add up to the power, thirds upward', () => {
    fc.assert(
      fc.property(fc.integer({ min: -24, max: 0 }), (thirds) => {
        const [, denominator = '', sign = ''] = /^1\/(\d+)(?: \+(.))?$/.exec(powerLabel(thirds / 3)) ?? [];
        const above = sign === '⅓' ? 1 : sign === '⅔' ? 2 : 0;
        expect(-3 * Math.log2(Number(denominator)) + above).toBe(thirds);
      }),
    );
  });
});
