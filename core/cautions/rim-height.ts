import { keepFinite } from '../units/finite.ts';
import { type Caution, metresInWords, notChecked } from './caution.ts';

/** Clear height over a circulation path, 80 in [m]. @source ada-headroom */
export const HEADROOM_M = 2.032;

const SOURCE = 'US accessible-route headroom, 80 in';

/**
 * Lowest point of an umbrella's rim: H − (D/2)·cos τ.
 *
 * @param heightM H, of the umbrella's centre [m]
 * @param diameterM D [m]
 * @param tiltDeg τ, of its axis down (or up) from level [°]
 * @returns height [m]; below 0 it would touch the floor
 * @source rim-geometry
 */
export function rimLow(heightM: number, diameterM: number, tiltDeg: number): number {
  const tilt = ((tiltDeg % 360) * Math.PI) / 180;
  return keepFinite(heightM - (diameterM / 2) * Math.abs(Math.cos(tilt)));
}

/**
 * Rim at head height where people pass.
 *
 * @param nearWalkway do people pass beside the stand? null when not known
 * @returns 'caution' under 2.032 m where people pass, 'info' where they do not; null without an umbrella or
 *   from 2.032 m up
 * @source ada-headroom
 */
export function rimCaution({
  heightM,
  tiltDeg,
  umbrella,
  nearWalkway,
}: {
  readonly heightM: number;
  readonly tiltDeg: number;
  readonly umbrella: { readonly diameterM: number } | null;
  readonly nearWalkway: boolean | null;
}): Caution | null {
  if (!umbrella) return null;
  if (!Number.isFinite(heightM)) return notChecked('rim-height', 'Rim height', 'no height is set', SOURCE);
  const lowM = rimLow(heightM, umbrella.diameterM, tiltDeg);
  if (lowM >= HEADROOM_M) return null;
  const passing =
    nearWalkway === null
      ? 'Not checked: whether people pass here.'
      : nearWalkway
        ? 'People pass here: raise it, or put furniture under it.'
        : 'Keep people from passing under it.';
  return {
    id: 'rim-height',
    level: nearWalkway ? 'caution' : 'info',
    title: 'Rim at head height',
    detail: `The umbrella's rim is ${metresInWords(lowM)} up; walkways need ${HEADROOM_M} m. ${passing}`,
    value: lowM,
    limit: HEADROOM_M,
    unit: 'm',
    source: SOURCE,
  };
}
