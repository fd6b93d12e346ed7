import { isPositive, keepFinite } from '../units/finite.ts';
import { ratioFromStops } from '../units/stops.ts';
import { facingDiscFactor } from './disc.ts';
import { type FlashHead, headFlux, intensityToward } from './flash-head.ts';
import { DARK_LOBE, type Lobe, lambertLobe, lobeOf } from './lamps/lobe.ts';

/**
 * A white shoot-through umbrella.
 * - diameterM: of the open rim [m]
 * - forwardFraction: share of the head's light that leaves toward the subject [1]
 * - backFraction: share that the cloth throws back past the head [1]; see `backFractionOf` when not given
 * - lossStops: if measured, the loss on the axis and far away against the same head bare [stops]
 */
export type Umbrella = {
  readonly diameterM: number;
  readonly forwardFraction: number;
  readonly backFraction?: number | undefined;
  readonly lossStops?: number | undefined;
};

/** ASSUMPTION: half of the light goes forward; the rest goes back into the room or is lost. */
export const DEFAULT_FORWARD_FRACTION = 0.5;
/** ASSUMPTION: about a third comes back through the open side; cloth, ribs and head swallow the rest. */
const DEFAULT_BACK_FRACTION = 0.35;

/** A key: one head, through an umbrella or bare. */
export type KeySource = { readonly head: FlashHead; readonly umbrella: Umbrella | null };

/** A head in its umbrella. */
export type HeadInUmbrella = { readonly head: FlashHead; readonly umbrella: Umbrella };

/** Where the subject is, as the light sees it, and the power it fires at. */
export type TowardSubject = {
  readonly distanceM: number;
  readonly offAxisDeg: number;
  /** log2 of the power fraction [stops]; 0 is full */
  readonly powerStops: number;
};

/** Nearer than this neither law holds: the head itself is as large [m]. */
export const NEAREST_TO_LIGHT_M = 0.1;

/**
 * Share of the head's light that an umbrella throws back: as given; if not, 0.35 or whatever the forward
 * share leaves of it.
 *
 * @returns [1]
 * @source assumption-umbrella
 */
export function backFractionOf({ forwardFraction, backFraction }: Umbrella): number {
  if (backFraction !== undefined) return Math.max(0, backFraction);
  return Math.max(0, Math.min(DEFAULT_BACK_FRACTION, 1 - forwardFraction));
}

/**
 * How an umbrella spreads its light forward, full power. From its share alone: a Lambertian disc. With a
 * measured loss the axis is as bright as measured; were a Lambertian disc that bright to hold more light than
 * goes forward at all, the lobe is narrower instead, so that no light is made.
 * ASSUMPTION: the whole beam lands on the cloth.
 *
 * @source assumption-umbrella
 * @source cosine-power-lobe
 */
export function forwardLobe({ head, umbrella }: HeadInUmbrella): Lobe {
  const mostFlux = headFlux(head) * Math.max(0, umbrella.forwardFraction);
  if (umbrella.lossStops === undefined) return lambertLobe(mostFlux);
  return lobeOf(intensityToward(head, 0) * ratioFromStops(-umbrella.lossStops), mostFlux);
}

/**
 * What the umbrella throws back into the room, full power: a Lambertian disc that faces the other way. The
 * loss measured in front says nothing about it.
 *
 * @source assumption-umbrella
 */
export function backLobe({ head, umbrella }: HeadInUmbrella): Lobe {
  return lambertLobe(headFlux(head) * backFractionOf(umbrella));
}

/**
 * Light that leaves the umbrella toward the subject's side, full power.
 *
 * @returns lumen-seconds
 * @source assumption-umbrella
 */
export function forwardFlux(source: HeadInUmbrella): number {
  return forwardLobe(source).flux;
}

/**
 * Light at the subject from one flash, on a flat receptor that faces the source.
 *
 * Bare: E = I(θ)/d², inverse square. Umbrella: a disc; Lambertian, E = πL·R²/(R² + d²) on its axis and by the
 * exact disc factor aside, so nearer than about five diameters it falls more slowly than the inverse square; a
 * narrower lobe weights that with cos^(m−1)φ. Behind it stands the disc of its back spill.
 * ASSUMPTION: the cloth is a flat, evenly lit disc, and the head behind it casts no shadow.
 *
 * @param toward distance from the source [m] (under 0.1 m counts as 0.1 m), angle from its axis [°], power
 * @returns H [lx·s]; 0 where no light goes
 * @source lambert-disc
 * @source cie-inverse-square
 * @source cosine-power-lobe
 */
export function luxSecondsAt(source: KeySource, toward: TowardSubject): number {
  const power = ratioFromStops(toward.powerStops);
  const distanceM = Math.max(NEAREST_TO_LIGHT_M, toward.distanceM);
  const { head, umbrella } = source;
  if (umbrella === null || !isPositive(umbrella.diameterM)) {
    return keepFinite((intensityToward(head, toward.offAxisDeg) * power) / (distanceM * distanceM));
  }
  const radiusM = umbrella.diameterM / 2;
  const cosine = Math.cos(((toward.offAxisDeg % 360) * Math.PI) / 180);
  const lobe = lobeToward({ head, umbrella }, cosine);
  const emissionDeg = cosine < 0 ? 180 - toward.offAxisDeg : toward.offAxisDeg;
  const factor = facingDiscFactor({ distanceM, emissionDeg, radiusM }) / (radiusM * radiusM);
  const narrower = Math.abs(cosine) ** (lobe.exponent - 1);
  return Math.max(0, keepFinite(lobe.intensity * factor * narrower * power));
}

function lobeToward(source: HeadInUmbrella, cosine: number): Lobe {
  if (cosine === 0) return DARK_LOBE;
  return cosine > 0 ? forwardLobe(source) : backLobe(source);
}
