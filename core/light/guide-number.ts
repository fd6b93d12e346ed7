import { finiteOrNull, isPositive, keepFinite } from '../units/finite.ts';
import { ratioFromStops } from '../units/stops.ts';
import { INCIDENT_C } from './exposure.ts';

/** A guide number and what it is used at. Guide numbers are in metres at ISO 100 and full power. */
export type GuideNumberUse = {
  readonly guideNumberM: number;
  readonly iso: number;
  /** log2 of the power fraction [stops]; 0 is full */
  readonly powerStops: number;
};

/**
 * Luminous intensity, integrated over the flash, that a guide number stands for: I = C·GN²/100.
 * A guide number in a leaflet often holds half a stop of "average room" already.
 *
 * @param guideNumberM GN [m], ISO 100
 * @param c incident constant C that ties the guide number to light [lx·s]
 * @returns cd·s on the axis; the same number is lx·s at 1 m
 * @source iso2720
 * @source iso1230
 */
export function candelaSeconds(guideNumberM: number, c: number = INCIDENT_C): number {
  return keepFinite((c * guideNumberM * guideNumberM) / 100);
}

/**
 * Guide number of an intensity: GN = √(100·I/C).
 *
 * @param intensity I [cd·s]
 * @param c incident constant C [lx·s]
 * @returns GN [m] at ISO 100; null when I or C is not above zero
 * @source iso2720
 */
export function guideNumberFromCandelaSeconds(intensity: number, c: number = INCIDENT_C): number | null {
  if (!isPositive(intensity) || !isPositive(c)) return null;
  return finiteOrNull(Math.sqrt(intensity / c) * 10);
}

/**
 * Guide number at another speed and power: GN·√(S/100)·√p.
 *
 * @returns GN [m]; null when the guide number or the speed is not above zero
 * @source iso1230
 */
export function scaledGuideNumberM({ guideNumberM, iso, powerStops }: GuideNumberUse): number | null {
  if (!isPositive(guideNumberM) || !isPositive(iso)) return null;
  return finiteOrNull(guideNumberM * Math.sqrt(iso / 100) * ratioFromStops(powerStops / 2));
}

/**
 * Several heads at one place: GN = √(Σ GNᵢ²), because their light adds.
 *
 * @param guideNumbersM [m], each at the same speed
 * @returns GN [m]; 0 for none
 * @source navedtra14209
 */
export function combinedGuideNumberM(guideNumbersM: readonly number[]): number {
  return keepFinite(Math.hypot(...guideNumbersM));
}

/**
 * f-number for a correct exposure at a distance: N = GN/d.
 *
 * @param use guide number, speed and power; distanceM from the flash to the subject [m]
 * @returns f-number; null when an input is not above zero
 * @source iso1230
 */
export function fNumberFor(use: GuideNumberUse & { readonly distanceM: number }): number | null {
  const guideNumberM = scaledGuideNumberM(use);
  if (guideNumberM === null || !isPositive(use.distanceM)) return null;
  return finiteOrNull(guideNumberM / use.distanceM);
}

/**
 * Distance of a correct exposure at an f-number: d = GN/N.
 *
 * @returns distance from the flash to the subject [m]; null when an input is not above zero
 * @source iso1230
 */
export function distanceFor(use: GuideNumberUse & { readonly fNumber: number }): number | null {
  const guideNumberM = scaledGuideNumberM(use);
  if (guideNumberM === null || !isPositive(use.fNumber)) return null;
  return finiteOrNull(guideNumberM / use.fNumber);
}
