import { isPositive, keepFinite } from '../../units/finite.ts';
import { type Exposure, flashStops } from '../exposure.ts';
import type { Belief } from './belief.ts';

/**
 * A part of the light on one place, and what it hangs on: it is multiplied by 2^(sum of the offsets of these
 * unknowns). An umbrella's light that came back from the room hangs on head, umbrella and room; ambient light
 * enters as E·t. An id that the belief does not have counts as known.
 */
export type Contribution = { readonly luxSeconds: number; readonly unknownIds: readonly string[] };

/** Light on one place, taken with one setting of the camera. */
export type Lit = { readonly contributions: readonly Contribution[]; readonly exposure: Exposure };

/** How bright something comes out [stops over correct], give or take one standard deviation [stops]. */
export type Prediction = { readonly stops: number; readonly sdStops: number };

/** No light lies so far from any other [stops]. */
const FARTHEST_LEVEL_STOPS = 1e6;

/** A level and how it follows each unknown, near one point. */
export type Linearised = {
  /** [stops over correct] */
  readonly stops: number;
  /** d stops / d offset: the share of the light that hangs on each unknown [1] */
  readonly slopes: readonly number[];
};

/**
 * Level of light whose parts have unknown factors, y = log2(Σ cₖ·2^(Σ offsets)·S/(C·N²)), with its slopes.
 *
 * @param ids the unknowns, in the order of `offsets`
 * @param offsets where to linearise [stops]
 * @returns level [stops] and slopes; null when no light falls or a setting is not above zero
 * @source iso2720
 */
export function linearised(ids: readonly string[], offsets: readonly number[], lit: Lit): Linearised | null {
  const setting = flashStops(1, lit.exposure);
  const parts = lit.contributions.filter(({ luxSeconds }) => isPositive(luxSeconds));
  if (setting === null || parts.length === 0) return null;
  const hangOn = parts.map(({ unknownIds }) => unknownIds.map((id) => ids.indexOf(id)));
  const levels = parts.map(({ luxSeconds }, part) => {
    const level = (hangOn[part] ?? []).reduce((sum, at) => sum + (offsets[at] ?? 0), Math.log2(luxSeconds));
    // Absurd offsets of several unknowns together would leave what a number can hold, and no share could be told.
    return Math.max(-FARTHEST_LEVEL_STOPS, Math.min(FARTHEST_LEVEL_STOPS, keepFinite(level)));
  });
  // Relative to the brightest part, so that neither a sun nor a candle leaves what a number can hold.
  const brightest = Math.max(...levels);
  const shares = levels.map((level) => 2 ** (level - brightest));
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const slopes = ids.map(() => 0);
  for (const [part, at] of hangOn.flatMap((unknowns, index) => unknowns.map((one) => [index, one] as const)))
    if (at >= 0) slopes[at] = (slopes[at] ?? 0) + (shares[part] ?? 0) / whole;
  return { stops: keepFinite(brightest + Math.log2(whole) + setting), slopes };
}

/**
 * Covariance times slopes: how a level and each unknown vary together.
 *
 * @param covariance row-major [stops²]
 * @returns [stops²], one for each unknown
 * @source bayes-normal
 */
export function covarianceWith(covariance: readonly number[], slopes: readonly number[]): number[] {
  const count = slopes.length;
  return slopes.map((_, row) => {
    let sum = 0;
    for (let column = 0; column < count; column += 1)
      sum += (covariance[row * count + column] ?? 0) * (slopes[column] ?? 0);
    return keepFinite(sum);
  });
}

/**
 * How two levels vary together: g·slopes, with g as `covarianceWith` gives it.
 *
 * @param g [stops²]
 * @returns [stops²]
 * @source bayes-normal
 */
export function varianceAlong(g: readonly number[], slopes: readonly number[]): number {
  return keepFinite(g.reduce((sum, value, at) => sum + value * (slopes[at] ?? 0), 0));
}

/**
 * What is to be expected, with its uncertainty, linearised at what is believed now.
 * ASSUMPTION: the geometry is as the plan says; the spread is that of the unknowns alone.
 *
 * @returns level and one standard deviation [stops]; null when no light falls or a setting is not above zero
 * @source bayes-normal
 */
export function predict(belief: Belief, { contributions, exposure }: Lit): Prediction | null {
  const near = linearised(belief.ids, belief.means, { contributions, exposure });
  if (near === null) return null;
  const variance = varianceAlong(covarianceWith(belief.covariance, near.slopes), near.slopes);
  return { stops: near.stops, sdStops: Math.sqrt(Math.max(0, variance)) };
}
