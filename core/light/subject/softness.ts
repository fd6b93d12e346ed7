import { degFromRad } from '../../geometry/angle.ts';
import { isPositive, keepFinite } from '../../units/finite.ts';
import { penumbraM } from './penumbra.ts';

/** ASSUMPTION: a nose stands this far off the cheek that its shadow falls on [m]. */
const NOSE_M = 0.02;

/** How soft a light is on a face. */
export type Softness = {
  /** Angular diameter of the light, seen from the face [°] */
  readonly angularDiameterDeg: number;
  /** Soft edge of the nose's shadow [mm] */
  readonly nosePenumbraMm: number;
};

/**
 * How soft a light is: how large it looks from the face, and how wide the nose's shadow runs out.
 *
 * ASSUMPTION: the light is an evenly lit flat disc; turned aside it looks like an ellipse, and counts as the
 * round one of the same area (diameter times √cos φ).
 *
 * @param diameterM of the light [m]; 0 for a point
 * @param distanceM from the light to the face [m]
 * @param emissionDeg φ, from the light's axis to the face [°]
 * @returns null when the distance is not above zero, or the face sees the disc from behind or edge-on
 * @source shadow-geometry
 */
export function softness({
  diameterM,
  distanceM,
  emissionDeg,
}: {
  readonly diameterM: number;
  readonly distanceM: number;
  readonly emissionDeg: number;
}): Softness | null {
  const cosine = Math.cos(((emissionDeg % 360) * Math.PI) / 180);
  if (!isPositive(distanceM) || cosine < 1e-9) return null;
  const seenM = keepFinite(Math.max(0, diameterM) * Math.sqrt(cosine));
  const penumbra = penumbraM(seenM, distanceM, NOSE_M);
  if (penumbra === null) return null;
  return {
    angularDiameterDeg: degFromRad(2 * Math.atan2(seenM / 2, distanceM)),
    nosePenumbraMm: keepFinite(1000 * penumbra),
  };
}
