import { keepFinite } from '../../units/finite.ts';
import type { Belief } from './belief.ts';
import { covarianceWith, type Linearised, type Lit, linearised, varianceAlong } from './predict.ts';

/** What came out of a test frame [stops over correct], give or take one standard deviation [stops]. */
export type Observation = Lit & { readonly observedStops: number; readonly sdStops: number };

/** Nothing that comes off a camera or a meter is known better than this; also keeps the division sound. */
const LEAST_SD_STOPS = 0.01;
/** An offset beyond this is no head and no room: a slip of the hand, which must not overflow. */
const FARTHEST_STOPS = 60;
/** Gauss–Newton: in rooms 3 or 4 passes settle it to a thousandth of a stop; more are for odd mixtures. */
const MOST_PASSES = 20;
const SETTLED_STOPS = 1e-9;

const clamp = (stops: number) => Math.max(-FARTHEST_STOPS, Math.min(FARTHEST_STOPS, keepFinite(stops)));

/**
 * One linear step: a level that is y at `point` and changes with `slopes` came out as observed.
 * K = P·h/(hᵀ·P·h + R); P' = (I − K·hᵀ)·P·(I − K·hᵀ)ᵀ + R·K·Kᵀ, which rounding cannot turn negative.
 */
function linearStep(belief: Belief, point: readonly number[], seen: Observation, near: Linearised): Belief {
  const { ids, means, covariance } = belief;
  const count = ids.length;
  const noise = Math.max(LEAST_SD_STOPS, Math.min(FARTHEST_STOPS, Math.abs(seen.sdStops))) ** 2;
  const g = covarianceWith(covariance, near.slopes);
  const spread = varianceAlong(g, near.slopes) + noise;
  const gain = g.map((value) => value / spread);
  const moved = near.slopes.reduce((sum, h, at) => sum + h * ((means[at] ?? 0) - (point[at] ?? 0)), 0);
  const surprise = keepFinite(seen.observedStops - near.stops - moved);
  const left = covariance.map(
    (value, at) => value - (gain[Math.floor(at / count)] ?? 0) * (g[at % count] ?? 0),
  );
  const leftWith = covarianceWith(left, near.slopes);
  const after = left.map((value, at) => {
    const [row, column] = [Math.floor(at / count), at % count];
    return value + (noise * (gain[row] ?? 0) - (leftWith[row] ?? 0)) * (gain[column] ?? 0);
  });
  return {
    ids,
    means: means.map((mean, at) => clamp(mean + (gain[at] ?? 0) * surprise)),
    // Rounding may leave the two halves a last digit apart: the matrix is symmetric by its meaning.
    covariance: after.map(
      (value, at) => (value + (after[(at % count) * count + Math.floor(at / count)] ?? 0)) / 2,
    ),
  };
}

/** All observations, each linearised at the same point. */
function pass(prior: Belief, observations: readonly Observation[], point: readonly number[]): Belief {
  return observations.reduce((belief, seen) => {
    const near = linearised(prior.ids, point, seen);
    return near === null ? belief : linearStep(belief, point, seen, near);
  }, prior);
}

const farthestApart = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((most, value, at) => Math.max(most, Math.abs(value - (b[at] ?? 0))), 0);

/**
 * What is believed after test frames: the linear Bayesian (Kalman) update in stops, all frames linearised at
 * the point where they end up together (Gauss–Newton). Their order does not matter, and a frame is taken back by
 * leaving it out. A frame in which no light fell teaches nothing.
 *
 * @param prior what was believed before the first of them
 * @param observations in any order
 * @returns means [stops] and covariance [stops²]; of no observations, the prior itself
 * @source bayes-normal
 * @source joseph-form
 */
export function beliefFrom(prior: Belief, observations: readonly Observation[]): Belief {
  if (observations.length === 0) return prior;
  let point: readonly number[] = prior.means;
  let stepBefore = Number.POSITIVE_INFINITY;
  let belief = prior;
  for (let count = 0; count < MOST_PASSES; count += 1) {
    belief = pass(prior, observations, point);
    const step = farthestApart(belief.means, point);
    if (step < SETTLED_STOPS) break;
    // A step that does not shrink swings from one side of the answer to the other: half of it does not.
    const share = step < stepBefore ? 1 : 0.5;
    point = point.map((from, at) => from + share * ((belief.means[at] ?? 0) - from));
    stepBefore = step * share;
  }
  return belief;
}

/**
 * What is believed after one more test frame. For frames that may be taken back keep them and use `beliefFrom`.
 *
 * @returns means [stops] and covariance [stops²]
 * @source bayes-normal
 */
export function updateBelief(belief: Belief, observation: Observation): Belief {
  return beliefFrom(belief, [observation]);
}
