import { isPositive, keepFinite } from '../../units/finite.ts';

/**
 * How light leaves one side of a flat source, far away: intensity·cos^exponent φ, φ from its axis.
 * - intensity: on the axis [cd·s]
 * - exponent: 1 for a Lambertian source, more for a narrower lobe
 * - flux: all of it [lm·s], 2π·intensity/(exponent + 1)
 */
export type Lobe = { readonly intensity: number; readonly exponent: number; readonly flux: number };

/** No light on this side. */
export const DARK_LOBE: Lobe = { intensity: 0, exponent: 1, flux: 0 };

/**
 * The lobe of a Lambertian source of so much light: I = Φ/π on the axis.
 *
 * @param flux Φ [lm·s]
 * @returns the lobe; dark without light
 * @source lambert-disc
 */
export function lambertLobe(flux: number): Lobe {
  return isPositive(flux) ? { intensity: flux / Math.PI, exponent: 1, flux } : DARK_LOBE;
}

/**
 * The widest lobe with a given intensity on its axis that holds no more than a given amount of light:
 * m = max(1, 2πI/Φ − 1). Lambertian where πI stays below Φ, and then with less light than Φ.
 * ASSUMPTION: a lobe of the form cos^m φ.
 *
 * @param intensity I on the axis [cd·s]
 * @param mostFlux Φ, the most light that it may hold [lm·s]
 * @returns the lobe; dark when either is not above zero
 * @source cosine-power-lobe
 */
export function lobeOf(intensity: number, mostFlux: number): Lobe {
  if (!isPositive(intensity) || !isPositive(mostFlux)) return DARK_LOBE;
  const exponent = Math.max(1, keepFinite((2 * Math.PI * intensity) / mostFlux - 1));
  return { intensity, exponent, flux: keepFinite(Math.min(mostFlux, Math.PI * intensity)) };
}
