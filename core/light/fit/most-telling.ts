import { keepFinite } from '../../units/finite.ts';
import type { Belief } from './belief.ts';
import { covarianceWith, type Linearised, type Lit, linearised, varianceAlong } from './predict.ts';

/** A test frame that could be taken, and how well its result would be known [stops]. */
export type Candidate = Lit & { readonly id: string; readonly sdStops: number };

/** The frame to take next, and what it would do to the targets: root mean square of their spreads [stops]. */
export type MostTelling = {
  readonly id: string;
  readonly sdBeforeStops: number;
  readonly sdAfterStops: number;
};

/** A gain below this [stops²] is no reason to take a frame: a hundredth of a stop. */
const WORTH_IT = 1e-4;
const LEAST_SD_STOPS = 0.01;

/** Mean variance that a frame would take from the targets; the result itself need not be known for that. */
function gainOf(belief: Belief, candidate: Candidate, targets: readonly Linearised[]): number {
  const near = linearised(belief.ids, belief.means, candidate);
  if (near === null) return 0;
  const g = covarianceWith(belief.covariance, near.slopes);
  const noise = Math.max(LEAST_SD_STOPS, Math.abs(candidate.sdStops)) ** 2;
  const spread = keepFinite(varianceAlong(g, near.slopes) + noise);
  const taken = targets.reduce(
    (sum, { slopes }) => sum + (varianceAlong(g, slopes) / spread) * varianceAlong(g, slopes),
    0,
  );
  return keepFinite(taken / targets.length);
}

/**
 * Which test frame would narrow the predictions most: the one that takes most from the targets' mean variance,
 * tᵀ·P·t − (tᵀ·P·h)²/(hᵀ·P·h + R). Of two that are alike, the first in the list.
 *
 * @param candidates frames that could be taken, with how well each would be read
 * @param targets the levels that matter, as `predict` takes them; one on which no light falls is left out
 * @returns the frame, and the spread of the targets before and after it [stops]; null when none would help
 * @source bayes-normal
 */
export function mostTelling(
  belief: Belief,
  candidates: readonly Candidate[],
  targets: readonly Lit[],
): MostTelling | null {
  const near = targets.flatMap((target) => linearised(belief.ids, belief.means, target) ?? []);
  if (near.length === 0) return null;
  const before =
    near.reduce(
      (sum, { slopes }) => sum + varianceAlong(covarianceWith(belief.covariance, slopes), slopes),
      0,
    ) / near.length;
  let best: { readonly id: string; readonly gain: number } | null = null;
  for (const candidate of candidates) {
    const gain = gainOf(belief, candidate, near);
    // A last digit must not decide between two frames that tell the same.
    if (gain > WORTH_IT && gain > (best?.gain ?? 0) * (1 + 1e-9)) best = { id: candidate.id, gain };
  }
  if (best === null) return null;
  const sd = (variance: number) => Math.sqrt(Math.max(0, keepFinite(variance)));
  return { id: best.id, sdBeforeStops: sd(before), sdAfterStops: sd(before - best.gain) };
}
