import { finiteOrNull, isPositive, keepFinite } from '../units/finite.ts';
import { ratioFromStops } from '../units/stops.ts';

/** What the camera is set to: ISO speed, f-number (N) and exposure time in seconds. */
export type Exposure = { readonly iso: number; readonly fNumber: number; readonly shutterS: number };

/** Incident-light constant C for a flat receptor [lx·s]. @source iso2720 */
export const INCIDENT_C = 250;
/** Reflected-light constant K [cd·s/m²]. @source iso2720 */
export const REFLECTED_K = 12.5;
/** APEX speed constant as used by Exif: it makes the speed value of ISO 100 exactly 5. @source apex */
const APEX_SPEED_CONSTANT = 1 / 3.125;

/** log2 of a product of positive factors; null as soon as one is not above zero. */
function log2OfProduct(factors: readonly number[]): number | null {
  let sum = 0;
  for (const factor of factors) {
    if (!isPositive(factor)) return null;
    sum += Math.log2(factor);
  }
  return finiteOrNull(sum);
}

/**
 * Exposure from one flash, in stops over what an incident meter calls correct: log2(H·S/(C·N²)).
 * The exposure time does not enter: up to sync speed the shutter is open for the whole flash.
 *
 * @param luxSeconds H at the subject [lx·s]
 * @param exposure camera settings; shutterS is not used
 * @param c incident constant C [lx·s]
 * @returns stops; null when there is no light or a setting is not above zero
 * @source iso2720
 * @source navedtra14209
 */
export function flashStops(luxSeconds: number, exposure: Exposure, c: number = INCIDENT_C): number | null {
  const light = log2OfProduct([luxSeconds, exposure.iso]);
  const need = log2OfProduct([c, exposure.fNumber, exposure.fNumber]);
  return light === null || need === null ? null : light - need;
}

/**
 * EV at ISO 100 that the settings are right for: log2(N²/t) − log2(S/100).
 *
 * @returns EV100 [stops]; null when a setting is not above zero
 * @source iso2720
 */
export function ev100Of(exposure: Exposure): number | null {
  const closed = log2OfProduct([exposure.fNumber, exposure.fNumber]);
  const open = log2OfProduct([exposure.shutterS, exposure.iso, 1 / 100]);
  return closed === null || open === null ? null : closed - open;
}

/**
 * Exposure from the ambient light, in stops over correct.
 *
 * @param ev100 ambient EV at ISO 100 [stops]
 * @returns stops; null when a setting is not above zero
 * @source iso2720
 */
export function ambientStops(ev100: number, exposure: Exposure): number | null {
  const right = ev100Of(exposure);
  return right === null ? null : finiteOrNull(ev100 - right);
}

/**
 * E = (C/100)·2^EV.
 *
 * @param ev100 EV at ISO 100 [stops]
 * @param c incident constant C [lx·s]
 * @returns illuminance [lx]
 * @source ev-table
 */
export function illuminanceFromEv100(ev100: number, c: number = INCIDENT_C): number {
  return keepFinite((c / 100) * ratioFromStops(ev100));
}

/**
 * L = (K/100)·2^EV.
 *
 * @param ev100 EV at ISO 100 [stops]
 * @param k reflected constant K [cd·s/m²]
 * @returns luminance [cd/m²]
 * @source ev-table
 */
export function luminanceFromEv100(ev100: number, k: number = REFLECTED_K): number {
  return keepFinite((k / 100) * ratioFromStops(ev100));
}

/**
 * EV100 = log2(100·E/C).
 *
 * @param lux illuminance [lx]
 * @param c incident constant C [lx·s]
 * @returns EV at ISO 100 [stops]; null without light
 * @source ev-table
 */
export function ev100FromIlluminance(lux: number, c: number = INCIDENT_C): number | null {
  const light = log2OfProduct([lux, 100]);
  const constant = log2OfProduct([c]);
  return light === null || constant === null ? null : light - constant;
}

/**
 * Several exposures of the same spot together: they add as light, not as stops.
 *
 * @param stopsList exposures [stops]; null stands for no light
 * @returns log2(Σ 2^xᵢ) [stops]; null when there is no light at all
 * @source navedtra14209
 */
export function sumStops(stopsList: readonly (number | null)[]): number | null {
  const lit = stopsList.filter((stops) => stops !== null);
  if (lit.length === 0) return null;
  // The brightest is taken out first, so that nothing over- or underflows.
  const brightest = Math.max(...lit);
  const rest = lit.reduce((sum, stops) => sum + 2 ** (stops - brightest), 0);
  return finiteOrNull(brightest + Math.log2(rest));
}

/** APEX Av = log2 N². @returns [stops]; null when N is not above zero. @source apex */
export function apertureValue(fNumber: number): number | null {
  return log2OfProduct([fNumber, fNumber]);
}

/** APEX Tv = −log2 t. @param shutterS time [s] @returns [stops]; null when t is not above zero. @source apex */
export function timeValue(shutterS: number): number | null {
  const stops = log2OfProduct([shutterS]);
  return stops === null ? null : 0 - stops;
}

/** APEX Sv = log2(S/3.125). @returns [stops]; null when S is not above zero. @source apex */
export function speedValue(iso: number): number | null {
  return log2OfProduct([iso, APEX_SPEED_CONSTANT]);
}

/**
 * APEX Bv = log2(L/(Nₓ·K)), Nₓ = 1/3.125.
 *
 * @param luminance L [cd/m²]
 * @param k reflected constant K [cd·s/m²]
 * @returns [stops]; null when L or K is not above zero
 * @source apex
 */
export function brightnessValue(luminance: number, k: number = REFLECTED_K): number | null {
  const light = log2OfProduct([luminance]);
  const constant = log2OfProduct([APEX_SPEED_CONSTANT, k]);
  return light === null || constant === null ? null : light - constant;
}
