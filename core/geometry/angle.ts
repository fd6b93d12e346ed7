import { keepFinite } from '../units/finite.ts';

/** @returns the same angle in [0, 360) [°] */
export function wrap360(angleDeg: number): number {
  return ((angleDeg % 360) + 360) % 360;
}

/** @returns the same angle in (−180, 180] [°] */
export function wrap180(angleDeg: number): number {
  const wrapped = wrap360(angleDeg);
  return wrapped > 180 ? wrapped - 360 : wrapped;
}

/** @returns angle [°] from radians */
export function degFromRad(angleRad: number): number {
  return keepFinite((angleRad * 180) / Math.PI);
}

/** @returns angle in radians, from [°] */
export function radFromDeg(angleDeg: number): number {
  return (angleDeg / 180) * Math.PI;
}

/** Shorter than this, the mean vector points nowhere: opposite headings cancel. */
const SHORTEST_MEAN = 1e-9;

/**
 * Mean of directions, taken as unit vectors (the plain mean of 359° and 1° would be 180°).
 *
 * @param listDeg directions [°]
 * @returns mean in [0, 360) [°]; null for an empty list or when the directions cancel
 * @source circular-statistics
 */
export function circularMeanDeg(listDeg: readonly number[]): number | null {
  if (listDeg.length === 0) return null;
  let x = 0;
  let y = 0;
  for (const angleDeg of listDeg) {
    const angle = radFromDeg(wrap360(angleDeg));
    x += Math.cos(angle);
    y += Math.sin(angle);
  }
  if (Math.hypot(x, y) / listDeg.length < SHORTEST_MEAN) return null;
  return wrap360(degFromRad(Math.atan2(y, x)));
}
