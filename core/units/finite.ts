/**
 * The nearest number that JavaScript can still hold: ±∞ becomes ± the largest number, NaN becomes 0.
 *
 * Core promises that no NaN and no ±∞ leaves a public function for finite input; sums and products of
 * absurdly large numbers can only overflow, so they are capped here instead of being let out.
 *
 * @param value any number, any unit; the result has the same unit
 */
export function keepFinite(value: number): number {
  if (Number.isNaN(value)) return 0;
  if (value === Number.POSITIVE_INFINITY) return Number.MAX_VALUE;
  if (value === Number.NEGATIVE_INFINITY) return -Number.MAX_VALUE;
  // "+ 0" turns −0 into 0: no screen, file or comparison should ever meet a negative nothing.
  return value + 0;
}

/** The number itself, or null ("there is none") where it is NaN or ±∞. */
export function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** True for a number that is finite and above zero: the domain of every logarithm in core. */
export function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}
