import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ballastForPushKg,
  criticalWind,
  restoringMoments,
  type StandBuild,
  tipForce,
  tipForceToward,
  tipTiltDeg,
} from '../../../core/cautions/tipping.ts';
import { tippingCaution } from '../../../core/cautions/tipping-caution.ts';
import { windForceN, windForForceMs } from '../../../core/cautions/wind.ts';

const positive = (most: number) => fc.double({ min: 0.05, max: most, noNaN: true });
const build: fc.Arbitrary<StandBuild> = fc.record({
  legs: fc.integer({ min: 3, max: 5 }),
  legRadiusM: positive(1),
  standKg: positive(8),
  standCgM: positive(1.5),
  headKg: positive(4),
  ballastKg: fc.double({ min: 0, max: 20, noNaN: true }),
  ballastAt: fc.record({
    x: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
    y: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
  }),
  ballastCgM: positive(0.5),
});

const BUILD: StandBuild = {
  legs: 3,
  legRadiusM: 0.5,
  standKg: 1.5,
  standCgM: 0.7,
  headKg: 1,
  ballastKg: 7,
  ballastAt: { x: 0, y: 0 },
  ballastCgM: 0.15,
};

describe('tipping', () => {
  it('no direction tips it more easily than the worst, and some direction tips it as easily', () => {
    fc.assert(
      fc.property(build, positive(2.5), (stand, pushHeightM) => {
        const worst = tipForce(stand, pushHeightM) ?? Number.NaN;
        const all = Array.from(
          { length: 360 },
          (_, towardDeg) => tipForceToward(stand, pushHeightM, towardDeg) ?? 0,
        );
        expect(Math.min(...all)).toBeGreaterThanOrEqual(worst - 1e-9);
        expect(Math.min(...all)).toBeLessThanOrEqual(worst * 1.001 + 1e-9);
      }),
    );
  });

  it('three legs with a central load: twice as much along a leg as between two', () => {
    expect(tipForceToward(BUILD, 2, 120)).toBeCloseTo(2 * (tipForce(BUILD, 2) ?? 0), 9);
    expect(tipForceToward(BUILD, 2, 180)).toBeCloseTo(tipForce(BUILD, 2) ?? 0, 9);
    expect(tipForceToward(BUILD, 2, 180 + 360)).toBeCloseTo(tipForce(BUILD, 2) ?? 0, 9);
  });

  it('moments are those of the feet’s own reactions', () => {
    fc.assert(
      fc.property(build, (stand) => {
        const three = { ...stand, legs: 3 };
        // A foot's reaction times its distance from the opposite edge balances the moment about that edge.
        const total = 9.80665 * (three.standKg + three.headKg + three.ballastKg);
        const sum = restoringMoments(three).reduce(
          (all, moment) => all + moment / (1.5 * three.legRadiusM),
          0,
        );
        expect(sum).toBeCloseTo(total, 6);
      }),
    );
  });

  it('a central bag helps, a bag beyond an edge makes it fall', () => {
    fc.assert(
      fc.property(build, positive(10), (stand, moreKg) => {
        const central = { ...stand, ballastAt: { x: 0, y: 0 } };
        const more = { ...central, ballastKg: central.ballastKg + moreKg };
        expect(tipForce(more, 2) ?? 0).toBeGreaterThan(tipForce(central, 2) ?? 0);
      }),
    );
    const hanging = { ...BUILD, ballastAt: { x: -0.9, y: 0 } };
    expect(tipForce(hanging, 2)).toBe(0);
    expect(tipTiltDeg(hanging, 2)).toBe(0);
  });

  it('the ballast that is asked for is just enough', () => {
    fc.assert(
      fc.property(build, positive(60), positive(2.5), (stand, forceN, heightM) => {
        const addKg = ballastForPushKg(stand, forceN, heightM) ?? Number.NaN;
        fc.pre(addKg > 0);
        // Added centrally, beside what hangs there already: as part of the stand itself.
        const heavier = { ...stand, standKg: stand.standKg + addKg };
        expect(tipForce(heavier, heightM)).toBeCloseTo(forceN, 6);
      }),
    );
  });

  it('a margin of 2 on the force is √2 on the wind; wind and force lead back to each other', () => {
    const wind = criticalWind(BUILD, 2.2, { diameterM: 1 }) ?? Number.NaN;
    expect(criticalWind(BUILD, 2.2, { diameterM: 1 }, 2)).toBeCloseTo(wind / Math.SQRT2, 9);
    fc.assert(
      fc.property(positive(30), positive(2), (windMs, diameterM) => {
        expect(windForForceMs(windForceN(windMs, diameterM), diameterM)).toBeCloseTo(windMs, 9);
      }),
    );
  });

  it('without three legs nothing stands', () => {
    expect(restoringMoments({ ...BUILD, legs: 2 })).toEqual([]);
    expect(tipForce({ ...BUILD, legs: 2 }, 2)).toBe(0);
    expect(tipForceToward({ ...BUILD, legs: 2 }, 2, 0)).toBeNull();
    expect(tipForce(BUILD, 0)).toBeNull();
  });
});

describe('caution on tipping', () => {
  const levelOf = (changed: Partial<StandBuild>, heightM = 2.2) =>
    tippingCaution({ ...BUILD, ...changed }, heightM, { diameterM: 1 });

  it('shows the number, the yardsticks and the weak direction', () => {
    const caution = levelOf({});
    expect(caution).toMatchObject({ level: 'info', unit: 'N' });
    expect(caution.value).toBeCloseTo(10.587, 3);
    expect(caution.detail).toMatch(/a door takes 22\.2 N/);
    expect(caution.detail).toMatch(/10\.6 N.*half as strong between two legs.*10°.*17 %.*13 %.*3\.9 m\/s/);
  });

  it('cautions without ballast, on a steep-tipping stand, and on short legs', () => {
    expect(levelOf({ ballastKg: 0 })).toMatchObject({ level: 'caution' });
    expect(levelOf({ ballastKg: 0 }).detail).toMatch(/No ballast/);
    expect(levelOf({ legRadiusM: 0.38 })).toMatchObject({ level: 'caution', title: 'Tips easily' });
    expect(levelOf({ legRadiusM: 0.4 })).toMatchObject({ level: 'info' });
    expect(levelOf({ headKg: 40, ballastKg: 1 }, 4)).toMatchObject({
      level: 'caution',
      title: 'Tips easily',
    });
  });

  it('stops what falls by itself, and says when it was not checked', () => {
    expect(levelOf({ ballastAt: { x: -0.9, y: 0 } })).toMatchObject({ level: 'stop', value: 0 });
    const missing = tippingCaution(null, 2, null);
    expect(missing).toMatchObject({ level: 'info', value: null });
    expect(missing.detail).toMatch(/^Not checked/);
    expect(tippingCaution({ ...BUILD, standKg: 0, headKg: 0, ballastKg: 0 }, 2, null).detail).toMatch(
      /^Not checked/,
    );
  });
});
