import { isPositive, keepFinite } from './finite.ts';

/** Exponent beyond which 2^x no longer fits a number; no light is within 900 stops of it. */
const LARGEST_STOPS = 1023;

/**
 * Stops of a ratio of two exposures: log2(ratio).
 *
 * @param ratio light over reference [1]
 * @returns stops; null for a ratio that is not above zero (no light has no stops)
 * @source iso2720
 */
export function stopsFromRatio(ratio: number): number | null {
  return isPositive(ratio) ? Math.log2(ratio) : null;
}

/**
 * Ratio of two exposures that lie so many stops apart: 2^stops.
 *
 * @param stops difference [stops]; capped at ±1023, where a number can hold no more
 * @returns ratio [1], above zero or (far below) zero
 * @source iso2720
 */
export function ratioFromStops(stops: number): number {
  return 2 ** Math.max(-LARGEST_STOPS, Math.min(LARGEST_STOPS, stops));
}

/**
 * Nearest third of a stop, the step of shutter, aperture, ISO and power dials.
 *
 * @param stops [stops]
 * @returns the nearest multiple of 1/3 [stops]; half-way goes up
 */
export function roundToThird(stops: number): number {
  const thirds = Math.round(keepFinite(stops * 3));
  // "+ 0" turns −0 into 0, so that no screen ever shows a negative nothing.
  return thirds / 3 + 0;
}
