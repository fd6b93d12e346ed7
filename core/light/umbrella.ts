import { isPositive, keepFinite } from '../units/finite.ts';
import { ratioFromStops } from '../units/stops.ts';
import { facingDiscFactor } from './disc.ts';
import { type FlashHead, headFlux, intensityToward } from './flash-head.ts';

/**
 * A white shoot-through umbrella.
 * - diameterM: of the open rim [m]
 * - forwardFraction: share of the head's light that leaves toward the subject [1]
 * - lossStops: if measured, the loss on the axis and far away against the same head bare [stops]; it
 *   replaces forwardFraction
 */
export type Umbrella = {
  readonly diameterM: number;
  readonly forwardFraction: number;
  readonly lossStops?: number | undefined;
};

/** ASSUMPTION: half of the light goes forward; the rest goes back into the room or is lost. */
export const DEFAULT_FORWARD_FRACTION = 0.5;

/** A key: one head, through an umbrella or bare. */
export type KeySource = { readonly head: FlashHead; readonly umbrella: Umbrella | null };

/** Where the subject is, as the light sees it, and the power it fires at. */
export type TowardSubject = {
  readonly distanceM: number;
  readonly offAxisDeg: number;
  /** log2 of the power fraction [stops]; 0 is full */
  readonly powerStops: number;
};

/** Nearer than this neither law holds: the head itself is as large [m]. */
const NEAREST_M = 0.1;

/**
 * Light that leaves the umbrella toward the subject's side, full power.
 * ASSUMPTION: the whole beam lands on the cloth.
 *
 * @returns lumen-seconds
 * @source assumption-umbrella
 */
export function forwardFlux({ head, umbrella }: { head: FlashHead; umbrella: Umbrella }): number {
  if (umbrella.lossStops === undefined) return headFlux(head) * umbrella.forwardFraction;
  // Far away a Lambertian disc of flux Φ has the axial intensity Φ/π.
  return keepFinite(Math.PI * intensityToward(head, 0) * ratioFromStops(-umbrella.lossStops));
}

/**
 * Light at the subject from one flash, on a flat receptor that faces the source.
 *
 * Bare: E = I(θ)/d², inverse square. Umbrella: a Lambertian disc of exitance πL = Φ/(πR²); on its axis
 * E = πL·R²/(R² + d²), aside by the exact disc factor, so nearer than about five diameters it falls more
 * slowly than the inverse square. ASSUMPTION: the cloth is a flat, evenly lit disc; light that it throws
 * back is neglected, and behind its plane there is none.
 *
 * @param toward distance from the source [m] (under 0.1 m counts as 0.1 m), angle from its axis [°], power
 * @returns H [lx·s]; 0 where no light goes
 * @source lambert-disc
 * @source cie-inverse-square
 */
export function luxSecondsAt(source: KeySource, toward: TowardSubject): number {
  const power = ratioFromStops(toward.powerStops);
  const distanceM = Math.max(NEAREST_M, toward.distanceM);
  const { head, umbrella } = source;
  if (umbrella === null || !isPositive(umbrella.diameterM)) {
    return keepFinite((intensityToward(head, toward.offAxisDeg) * power) / (distanceM * distanceM));
  }
  const radiusM = umbrella.diameterM / 2;
  const exitance = forwardFlux({ head, umbrella }) / (Math.PI * radiusM * radiusM);
  const factor = facingDiscFactor({ distanceM, emissionDeg: toward.offAxisDeg, radiusM });
  return Math.max(0, keepFinite(exitance * factor * power));
}
