import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ambientStops,
  apertureValue,
  brightnessValue,
  ev100FromIlluminance,
  ev100Of,
  flashStops,
  illuminanceFromEv100,
  luminanceFromEv100,
  speedValue,
  sumStops,
  timeValue,
} from '../../../core/light/exposure.ts';
import { solvePower } from '../../../core/light/power.ts';

const stops = fc.double({ min: -12, max: 12, noNaN: true });
const exposure = fc.record({
  iso: fc.double({ min: 50, max: 25600, noNaN: true }),
  fNumber: fc.double({ min: 1, max: 22, noNaN: true }),
  shutterS: fc.double({ min: 1 / 4000, max: 1, noNaN: true }),
});

describe('exposure', () => {
  it('twice the ISO is a stop more of both; twice the time only of the ambient; √2 in f-number a stop less', () => {
    fc.assert(
      fc.property(
        exposure,
        fc.double({ min: 0.1, max: 1e4, noNaN: true }),
        stops,
        (set, luxSeconds, ev100) => {
          const flash = flashStops(luxSeconds, set) ?? Number.NaN;
          const ambient = ambientStops(ev100, set) ?? Number.NaN;
          const faster = { ...set, iso: set.iso * 2 };
          const longer = { ...set, shutterS: set.shutterS * 2 };
          const closed = { ...set, fNumber: set.fNumber * Math.SQRT2 };
          expect(flashStops(luxSeconds, faster)).toBeCloseTo(flash + 1, 9);
          expect(ambientStops(ev100, faster)).toBeCloseTo(ambient + 1, 9);
          expect(flashStops(luxSeconds, longer)).toBe(flash);
          expect(ambientStops(ev100, longer)).toBeCloseTo(ambient + 1, 9);
          expect(flashStops(luxSeconds, closed)).toBeCloseTo(flash - 1, 9);
          expect(ambientStops(ev100, closed)).toBeCloseTo(ambient - 1, 9);
          expect(flashStops(luxSeconds, set, 500)).toBeCloseTo(flash - 1, 9);
        },
      ),
    );
  });

  it('APEX closes: Av + Tv = Bv + Sv, and EV100 = Av + Tv + 5 − Sv', () => {
    fc.assert(
      fc.property(exposure, (set) => {
        const [av, tv, sv] = [apertureValue(set.fNumber), timeValue(set.shutterS), speedValue(set.iso)];
        const ev100 = ev100Of(set) ?? Number.NaN;
        const bv = brightnessValue(luminanceFromEv100(ev100));
        if (av === null || tv === null || sv === null || bv === null) throw new Error('no value');
        expect(av + tv).toBeCloseTo(bv + sv, 9);
        expect(av + tv + 5 - sv).toBeCloseTo(ev100, 9);
      }),
    );
  });

  it('EV and illuminance lead back to each other', () => {
    fc.assert(
      fc.property(stops, fc.double({ min: 200, max: 600, noNaN: true }), (ev100, c) => {
        expect(ev100FromIlluminance(illuminanceFromEv100(ev100, c), c)).toBeCloseTo(ev100, 9);
      }),
    );
  });

  it('light adds: in any order, nothing adds nothing, and it never gets darker', () => {
    fc.assert(
      fc.property(fc.array(stops, { minLength: 1, maxLength: 5 }), (list) => {
        const sum = sumStops(list) ?? Number.NaN;
        expect(sumStops([...list].reverse())).toBeCloseTo(sum, 9);
        expect(sumStops([null, ...list])).toBe(sum);
        expect(sum).toBeGreaterThanOrEqual(Math.max(...list) - 1e-9);
        expect(2 ** sum).toBeCloseTo(
          list.reduce((light, one) => light + 2 ** one, 0),
          6,
        );
      }),
    );
    expect(sumStops([])).toBeNull();
    expect(sumStops([null])).toBeNull();
  });

  it('no light and settings of nothing have no stops', () => {
    const set = { iso: 100, fNumber: 8, shutterS: 1 };
    expect(flashStops(0, set)).toBeNull();
    expect(flashStops(1, { ...set, iso: 0 })).toBeNull();
    expect(ambientStops(5, { ...set, shutterS: -1 })).toBeNull();
    expect(ev100FromIlluminance(0)).toBeNull();
  });
});

describe('power', () => {
  const question = fc.record({
    stopsAtFull: stops,
    ambientStops: fc.option(stops),
    targetStops: fc.double({ min: -3, max: 3, noNaN: true }),
    leastPowerStops: fc.integer({ min: -9, max: 0 }),
  });

  /** The plain way: try every step of the dial. */
  function tryAll(q: {
    stopsAtFull: number;
    ambientStops: number | null;
    targetStops: number;
    leastPowerStops: number;
  }) {
    const steps = Array.from({ length: -q.leastPowerStops * 3 + 1 }, (_, third) => 0 - third / 3);
    const tried = steps.map((powerStops) => {
      const resultStops = sumStops([q.ambientStops, q.stopsAtFull + powerStops]) ?? Number.NaN;
      return { powerStops, resultStops, offStops: Math.abs(resultStops - q.targetStops) };
    });
    return tried.sort((a, b) => a.offStops - b.offStops)[0];
  }

  it('answers as trying every step of the dial does', () => {
    fc.assert(
      fc.property(question, (q) => {
        const answer = solvePower(q);
        const best = tryAll(q);
        if (!best) throw new Error('nothing tried');
        if (answer.kind === 'ambient-alone') {
          expect(q.ambientStops ?? Number.NaN).toBeGreaterThanOrEqual(q.targetStops);
          return;
        }
        if (answer.kind === 'power') {
          expect(answer.powerStops).toBeLessThanOrEqual(0);
          expect(answer.powerStops).toBeGreaterThanOrEqual(q.leastPowerStops);
          expect(Math.abs(answer.powerStops * 3 - Math.round(answer.powerStops * 3))).toBeLessThan(1e-9);
          const sum = sumStops([q.ambientStops, q.stopsAtFull + answer.powerStops]);
          expect(answer.resultStops).toBeCloseTo(sum ?? Number.NaN, 9);
          expect(Math.abs(answer.resultStops - q.targetStops)).toBeLessThanOrEqual(1 / 6 + 1e-6);
          return;
        }
        const brightest = sumStops([q.ambientStops, q.stopsAtFull]) ?? Number.NaN;
        const darkest = sumStops([q.ambientStops, q.stopsAtFull + q.leastPowerStops]) ?? Number.NaN;
        if (answer.kind === 'too-weak') {
          expect(answer.shortByStops).toBeCloseTo(q.targetStops - brightest, 6);
          expect(best.powerStops).toBe(0);
        } else {
          expect(answer.overByStops).toBeCloseTo(darkest - q.targetStops, 6);
          expect(answer.overByStops).toBeGreaterThan(1 / 6);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('without ambient, four stops too much at full is 1/16', () => {
    const q = { stopsAtFull: 4, ambientStops: null, targetStops: 0, leastPowerStops: -7 };
    expect(solvePower(q)).toEqual({ kind: 'power', powerStops: -4, resultStops: 0 });
    expect(solvePower({ ...q, stopsAtFull: -2 })).toEqual({ kind: 'too-weak', shortByStops: 2 });
    expect(solvePower({ ...q, stopsAtFull: 9 })).toEqual({ kind: 'too-strong', overByStops: 2 });
    expect(solvePower({ ...q, ambientStops: 0.5 })).toEqual({ kind: 'ambient-alone', ambientStops: 0.5 });
  });

  it('an ambient one stop under leaves half of the light to the flash', () => {
    const q = { stopsAtFull: 3, ambientStops: -1, targetStops: 0, leastPowerStops: -7 };
    expect(solvePower(q)).toMatchObject({ kind: 'power', powerStops: -4 });
  });
});
