import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Belief, offsetOf, PRIOR_SD_STOPS, priorBelief } from '../../../core/light/fit/belief.ts';
import { OBSERVED_SD_STOPS } from '../../../core/light/fit/observed.ts';
import { type Lit, linearised, predict } from '../../../core/light/fit/predict.ts';
import { beliefFrom, type Observation, updateBelief } from '../../../core/light/fit/update.ts';
import {
  AMBIENT_ONLY,
  BACK_ONLY,
  CORRECT,
  EXPOSURE,
  KEY_ONLY,
  litBy,
  NIGHT_PRIOR,
  normals,
  SUBJECT,
} from './fit-scene.ts';

const sdOf = (belief: Belief, id: string): number => {
  const offset = offsetOf(belief, id);
  if (!offset) throw new Error(`no ${id}`);
  return offset.sdStops;
};
const predicted = (belief: Belief, lit: Lit) => {
  const found = predict(belief, lit);
  if (!found) throw new Error('no light falls');
  return found;
};

/** What a frame may come out as: up to a stop beside what was to be expected. */
const observation = (lit: Lit): fc.Arbitrary<Observation> =>
  fc
    .record({
      besideStops: fc.double({ min: -1, max: 1, noNaN: true }),
      sdStops: fc.constantFrom(...Object.values(OBSERVED_SD_STOPS)),
    })
    .map(({ besideStops, sdStops }) => ({
      ...lit,
      observedStops: predicted(NIGHT_PRIOR, lit).stops + besideStops,
      sdStops,
    }));
const frames = fc.array(fc.constantFrom(KEY_ONLY, BACK_ONLY, AMBIENT_ONLY, SUBJECT).chain(observation), {
  minLength: 1,
  maxLength: 5,
});

describe('what is believed before and after a test frame', () => {
  it('one unknown and one frame: the textbook’s normal prior with a normal observation', () => {
    // Source from memory (any textbook of Bayesian statistics): posterior precision = 1/τ² + 1/σ²,
    // posterior mean = (y/σ²)/(1/τ² + 1/σ²) for a prior mean of 0.
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (tau, sigma, observedStops) => {
          const lit = litBy({ luxSeconds: CORRECT, unknownIds: ['head'] });
          const after = updateBelief(priorBelief([{ id: 'head', sdStops: tau }]), {
            ...lit,
            observedStops,
            sdStops: sigma,
          });
          const precision = 1 / tau ** 2 + 1 / sigma ** 2;
          expect(after.means[0]).toBeCloseTo(observedStops / sigma ** 2 / precision, 9);
          expect(after.covariance[0]).toBeCloseTo(1 / precision, 9);
        },
      ),
    );
  });

  it('two unknowns that only ever fire together: they share the surprise by their variances, and stay tied', () => {
    // The same textbook formula for y = a + b: E[a|y] = σa²·y/(σa² + σb² + σ²), cov(a, b|y) = −σa²σb²/(…).
    const prior = priorBelief([
      { id: 'head', sdStops: 0.4 },
      { id: 'umbrella', sdStops: 0.6 },
    ]);
    const lit = litBy({ luxSeconds: CORRECT, unknownIds: ['head', 'umbrella'] });
    const after = updateBelief(prior, { ...lit, observedStops: 1, sdStops: 0.25 });
    const whole = 0.16 + 0.36 + 0.0625;
    expect(after.means[0]).toBeCloseTo(0.16 / whole, 9);
    expect(after.means[1]).toBeCloseTo(0.36 / whole, 9);
    expect(after.covariance[1]).toBeCloseTo((-0.16 * 0.36) / whole, 9);
    expect(after.covariance[2]).toBe(after.covariance[1]);
  });

  it('before any frame the subject’s level is known to a stop, after one of the same light to a third', () => {
    expect(predicted(NIGHT_PRIOR, SUBJECT).sdStops).toBeLessThanOrEqual(1);
    expect(predicted(NIGHT_PRIOR, SUBJECT).sdStops).toBeGreaterThan(1 / 3);
    for (const lit of [KEY_ONLY, SUBJECT])
      for (const sdStops of Object.values(OBSERVED_SD_STOPS)) {
        const after = updateBelief(NIGHT_PRIOR, { ...lit, observedStops: 2 / 3, sdStops });
        expect(predicted(after, lit).sdStops).toBeLessThanOrEqual(1 / 3);
      }
  });

  it('a frame moves the prediction toward what came out, and not beyond it', () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (observedStops) => {
        const before = predicted(NIGHT_PRIOR, KEY_ONLY).stops;
        const after = predicted(
          updateBelief(NIGHT_PRIOR, { ...KEY_ONLY, observedStops, sdStops: 0.1 }),
          KEY_ONLY,
        ).stops;
        expect(Math.abs(observedStops - after)).toBeLessThanOrEqual(Math.abs(observedStops - before) + 1e-9);
        expect((after - before) * (observedStops - before)).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });

  it('no frames, or all of them removed: exactly the prior', () => {
    expect(beliefFrom(NIGHT_PRIOR, [])).toBe(NIGHT_PRIOR);
    const dark = { ...KEY_ONLY, contributions: [], observedStops: 1, sdStops: 0.25 };
    expect(beliefFrom(NIGHT_PRIOR, [dark])).toEqual(NIGHT_PRIOR);
  });

  it('a frame in the middle that is removed leaves what the others alone would have taught', () => {
    fc.assert(
      fc.property(
        frames,
        frames.chain((some) => fc.constantFrom(...some)),
        (kept, removed) => {
          const all = [...kept.slice(0, 1), removed, ...kept.slice(1)];
          expect(
            beliefFrom(
              NIGHT_PRIOR,
              all.filter((one) => one !== removed),
            ),
          ).toEqual(beliefFrom(NIGHT_PRIOR, kept));
        },
      ),
    );
  });

  it('is never wider than before, along any unknown and any prediction, and its matrix is a covariance', () => {
    fc.assert(
      fc.property(frames, (seen) => {
        const after = beliefFrom(NIGHT_PRIOR, seen);
        for (const id of NIGHT_PRIOR.ids)
          expect(sdOf(after, id)).toBeLessThanOrEqual(sdOf(NIGHT_PRIOR, id) + 1e-12);
        const count = after.ids.length;
        for (let row = 0; row < count; row += 1)
          for (let column = 0; column < row; column += 1)
            expect(after.covariance[row * count + column]).toBe(after.covariance[column * count + row]);
        expect(leastEigenvalueAtLeast(after, -1e-12)).toBe(true);
      }),
    );
  });

  it('the order of the frames does not matter, however much they contradict each other', () => {
    fc.assert(
      fc.property(frames, (seen) => {
        const forth = beliefFrom(NIGHT_PRIOR, seen);
        const back = beliefFrom(NIGHT_PRIOR, [...seen].reverse());
        for (const [at, mean] of forth.means.entries()) {
          expect(back.means[at]).toBeCloseTo(mean, 6);
        }
      }),
    );
  });

  it('is sure where it says so: of 2,000 nights 68 ± 5 % lie within one standard deviation', () => {
    const draw = normals(20260516);
    const within = { before: 0, after: 0 };
    const nights = 2000;
    for (let night = 0; night < nights; night += 1) {
      const truth = NIGHT_PRIOR.ids.map((_, at) => draw() * Math.sqrt(NIGHT_PRIOR.covariance[at * 6] ?? 0));
      const levelOf = (lit: Lit) => linearised(NIGHT_PRIOR.ids, truth, lit)?.stops ?? Number.NaN;
      const seen = [KEY_ONLY, BACK_ONLY].map((lit): Observation => {
        const sdStops = OBSERVED_SD_STOPS.seen;
        return { ...lit, observedStops: levelOf(lit) + sdStops * draw(), sdStops };
      });
      const holds = (belief: Belief) => {
        const { stops, sdStops } = predicted(belief, SUBJECT);
        return Math.abs(levelOf(SUBJECT) - stops) <= sdStops ? 1 : 0;
      };
      within.before += holds(NIGHT_PRIOR);
      const after = beliefFrom(NIGHT_PRIOR, seen);
      within.after += holds(after);
      // Linearised on the way instead of at the end: in nights that happen the two are never 0.1 stop apart.
      const singly = seen.reduce(updateBelief, NIGHT_PRIOR);
      for (const [at, mean] of after.means.entries()) {
        expect(Math.abs((singly.means[at] ?? 0) - mean)).toBeLessThan(0.1);
      }
    }
    expect(Math.abs(within.before / nights - 0.6827)).toBeLessThan(0.05);
    expect(Math.abs(within.after / nights - 0.6827)).toBeLessThan(0.05);
  });

  it('a slip of the hand and absurd light leave numbers', () => {
    for (const observedStops of [1e300, -1e300, 40, -40]) {
      const after = updateBelief(NIGHT_PRIOR, { ...SUBJECT, observedStops, sdStops: 0.25 });
      expect([...after.means, ...after.covariance].every(Number.isFinite)).toBe(true);
    }
  });

  it('an unknown is known by name, counts once, and one without a spread never moves', () => {
    const prior = priorBelief([
      { id: 'a', sdStops: 0 },
      { id: 'b', sdStops: 0.5 },
      { id: 'b', sdStops: 9 },
    ]);
    expect(prior.ids).toEqual(['a', 'b']);
    expect(offsetOf(prior, 'b')).toEqual({ meanStops: 0, sdStops: 0.5 });
    expect(offsetOf(prior, 'c')).toBeNull();
    const lit = litBy({ luxSeconds: CORRECT, unknownIds: ['a', 'b'] });
    const after = updateBelief(prior, { ...lit, observedStops: 1, sdStops: 0.25 });
    expect(offsetOf(after, 'a')).toEqual({ meanStops: 0, sdStops: 0 });
    expect(after.means[1]).toBeGreaterThan(0.5);
  });
});

describe('a prediction', () => {
  it('of known light is the meter’s: correct light is 0, twice as much a stop over', () => {
    // ISO 2720: H = C·N²/S. One unknown at +1 stop doubles what hangs on it.
    const none = priorBelief([]);
    for (const [times, stops] of [
      [1, 0],
      [2, 1],
      [0.25, -2],
    ] as const)
      expect(predict(none, litBy({ luxSeconds: times * CORRECT, unknownIds: [] }))).toEqual({
        stops: expect.closeTo(stops, 9),
        sdStops: 0,
      });
    const head: Belief = { ids: ['h'], means: [1], covariance: [0.04] };
    const both = litBy(
      { luxSeconds: CORRECT / 2, unknownIds: ['h'] },
      { luxSeconds: CORRECT, unknownIds: ['nobody'] },
    );
    expect(predicted(head, both).stops).toBeCloseTo(1, 9);
    expect(predicted(head, both).sdStops).toBeCloseTo(0.1, 9);
  });

  it('is none without light or with a setting that is not above zero', () => {
    expect(predict(NIGHT_PRIOR, litBy())).toBeNull();
    expect(predict(NIGHT_PRIOR, litBy({ luxSeconds: 0, unknownIds: ['head-k'] }))).toBeNull();
    expect(predict(NIGHT_PRIOR, { ...SUBJECT, exposure: { ...EXPOSURE, iso: 0 } })).toBeNull();
  });

  it('has slopes that are the true ones', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 5, maxLength: 5 }),
        (at) => {
          const near = linearised(NIGHT_PRIOR.ids, at, SUBJECT);
          if (!near) throw new Error('light falls');
          const step = 1e-5;
          for (const [unknown, slope] of near.slopes.entries()) {
            const moved = (by: number) =>
              linearised(NIGHT_PRIOR.ids, at.with(unknown, (at[unknown] ?? 0) + by), SUBJECT)?.stops ?? 0;
            expect(slope).toBeCloseTo((moved(step) - moved(-step)) / (2 * step), 5);
          }
        },
      ),
    );
  });

  it('gives default spreads that lie within a stop together', () => {
    const { head, modifier, ambient } = PRIOR_SD_STOPS;
    expect(Math.hypot(head, modifier)).toBeLessThan(1);
    expect(ambient).toBeLessThan(head);
  });
});

/** Is a symmetric matrix free of eigenvalues below `least`? Cholesky of A − least·I must go through. */
function leastEigenvalueAtLeast({ ids, covariance }: Belief, least: number): boolean {
  const count = ids.length;
  const lower = covariance.map((value, at) =>
    Math.floor(at / count) === at % count ? value - 2 * least : value,
  );
  for (let column = 0; column < count; column += 1) {
    for (let row = column; row < count; row += 1) {
      let sum = lower[row * count + column] ?? 0;
      for (let k = 0; k < column; k += 1)
        sum -= (lower[row * count + k] ?? 0) * (lower[column * count + k] ?? 0);
      if (row === column && sum <= 0) return false;
      lower[row * count + column] =
        row === column ? Math.sqrt(sum) : sum / (lower[column * count + column] ?? 1);
    }
  }
  return true;
}
