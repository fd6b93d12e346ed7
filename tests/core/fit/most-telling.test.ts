import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Candidate, mostTelling } from '../../../core/light/fit/most-telling.ts';
import { OBSERVED_SD_STOPS, stopsFromMeter } from '../../../core/light/fit/observed.ts';
import { predict } from '../../../core/light/fit/predict.ts';
import { reflectanceAfter } from '../../../core/light/fit/reflectance-after.ts';
import { updateBelief } from '../../../core/light/fit/update.ts';
import { AMBIENT_ONLY, BACK_ONLY, KEY_ONLY, NIGHT_PRIOR, SUBJECT } from './fit-scene.ts';

const seen = OBSERVED_SD_STOPS.seen;
const CANDIDATES: readonly Candidate[] = [
  { id: 'everything', ...SUBJECT, sdStops: seen },
  { id: 'ambient', ...AMBIENT_ONLY, sdStops: seen },
  { id: 'key', ...KEY_ONLY, sdStops: seen },
  { id: 'back', ...BACK_ONLY, sdStops: seen },
];

/** The next frame's id and the frame after it, as they would be asked for one after the other. */
function asked(count: number): string[] {
  const ids: string[] = [];
  let belief = NIGHT_PRIOR;
  for (let frame = 0; frame < count; frame += 1) {
    const next = mostTelling(belief, CANDIDATES, [KEY_ONLY, BACK_ONLY]);
    const candidate = CANDIDATES.find(({ id }) => id === next?.id);
    if (!candidate) break;
    ids.push(candidate.id);
    // It comes out as predicted: only the spread changes.
    belief = updateBelief(belief, { ...candidate, observedStops: predict(belief, candidate)?.stops ?? 0 });
  }
  return ids;
}

describe('which test frame to take next', () => {
  it('one head at a time with a stand-in: first the key alone, then the back light alone', () => {
    // Common practice (P16). Nothing of it is put in: it follows from who is least known.
    expect(asked(2)).toEqual(['key', 'back']);
  });

  it('says what the frame would do, and the frame then does it', () => {
    const best = mostTelling(NIGHT_PRIOR, CANDIDATES, [KEY_ONLY]);
    expect(best?.id).toBe('key');
    expect(best?.sdBeforeStops).toBeCloseTo(predict(NIGHT_PRIOR, KEY_ONLY)?.sdStops ?? 0, 9);
    const stops = predict(NIGHT_PRIOR, KEY_ONLY)?.stops ?? 0;
    const after = updateBelief(NIGHT_PRIOR, { ...KEY_ONLY, observedStops: stops, sdStops: seen });
    expect(best?.sdAfterStops).toBeCloseTo(predict(after, KEY_ONLY)?.sdStops ?? 0, 6);
  });

  it('never promises to widen, nor names a frame that tells less than another', () => {
    fc.assert(
      fc.property(
        fc.subarray([...CANDIDATES], { minLength: 1 }),
        fc.subarray([KEY_ONLY, BACK_ONLY, SUBJECT], { minLength: 1 }),
        (candidates, targets) => {
          const best = mostTelling(NIGHT_PRIOR, candidates, targets);
          if (!best) return;
          expect(best.sdAfterStops).toBeLessThan(best.sdBeforeStops);
          for (const candidate of candidates) {
            const alone = mostTelling(NIGHT_PRIOR, [candidate], targets);
            if (alone) expect(best.sdAfterStops).toBeLessThanOrEqual(alone.sdAfterStops + 1e-9);
          }
        },
      ),
    );
  });

  it('names none when there is none, when no light falls, and when nothing is left to learn', () => {
    expect(mostTelling(NIGHT_PRIOR, [], [SUBJECT])).toBeNull();
    expect(mostTelling(NIGHT_PRIOR, CANDIDATES, [])).toBeNull();
    const dark = { ...SUBJECT, contributions: [] };
    expect(mostTelling(NIGHT_PRIOR, CANDIDATES, [dark])).toBeNull();
    expect(mostTelling(NIGHT_PRIOR, [{ id: 'dark', ...dark, sdStops: seen }], [SUBJECT])).toBeNull();
    const known = { ...NIGHT_PRIOR, covariance: NIGHT_PRIOR.covariance.map(() => 0) };
    expect(mostTelling(known, CANDIDATES, [SUBJECT])).toBeNull();
  });
});

describe('a flash meter', () => {
  it('reads in f-numbers: each factor √2 is a stop', () => {
    // ISO 2720: N²/t = E·S/C, so light goes as N².
    expect(stopsFromMeter(4, 2.8)).toBeCloseTo(1.029, 3);
    expect(stopsFromMeter(2, 2)).toBeCloseTo(0, 12);
    expect(stopsFromMeter(2, 4)).toBeCloseTo(-2, 12);
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(stopsFromMeter(bad, 2)).toBeNull();
      expect(stopsFromMeter(2, bad)).toBeNull();
    }
  });
});

describe('the reflectance of a room that returns more or less than thought', () => {
  it('is such that ρ/(1−ρ) changed by just that much, and stays under 1', () => {
    // Integrating sphere: E = Φ/S·ρ/(1−ρ) (from memory).
    expect(reflectanceAfter(0.5, 1)).toBeCloseTo(2 / 3, 12);
    expect(reflectanceAfter(0.5, -1)).toBeCloseTo(1 / 3, 12);
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.95, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (reflectance, stops) => {
          const after = reflectanceAfter(reflectance, stops);
          expect(after).toBeLessThan(1);
          const ratio = after / (1 - after) / (reflectance / (1 - reflectance));
          if (after < 0.99) expect(Math.log2(ratio)).toBeCloseTo(stops, 9);
        },
      ),
    );
    expect(reflectanceAfter(0.9, 1e9)).toBeLessThan(1);
    expect(reflectanceAfter(0.9, -1e9)).toBeCloseTo(0, 12);
    expect(reflectanceAfter(1, 0)).toBeLessThan(1);
    expect(reflectanceAfter(0, 5)).toBe(0);
  });
});
