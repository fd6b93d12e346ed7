import { isPositive, keepFinite } from '../units/finite.ts';

/** Where a small flat element is, seen from a disc: sideways from its axis and in front of its plane [m]. */
export type BesideDisc = {
  readonly offsetM: number;
  readonly heightM: number;
  readonly radiusM: number;
};

/** The lengths that both factors share, in radii of the disc (a, h in the sources). */
function inRadii({ offsetM, heightM, radiusM }: BesideDisc) {
  const offset = Math.abs(offsetM) / radiusM;
  const height = heightM / radiusM;
  const sum = offset * offset + height * height + 1;
  return { offset, height, sum, root: Math.sqrt(Math.max(0, sum * sum - 4 * offset * offset)) };
}

function asFactor(value: number): number {
  return Math.max(0, Math.min(1, keepFinite(value)));
}

/**
 * Share of a Lambertian disc's exitance that reaches a small flat element PARALLEL to it (view factor of
 * the element to the disc): F = ½·(1 − (a² + h² − R²)/√((a² + h² + R²)² − 4a²R²)); on the axis it is
 * R²/(R² + h²).
 *
 * @returns factor between 0 and 1; 0 when height or radius is not above zero
 * @source howell-element-disc
 */
export function discFactor(place: BesideDisc): number {
  if (!isPositive(place.heightM) || !isPositive(place.radiusM)) return 0;
  const { height, sum, root } = inRadii(place);
  const away = sum - 2;
  // root² − away² = 4h²: written so, far away no digits are lost to a difference of near-equal numbers.
  return asFactor(away > 0 ? (2 * height * height) / ((root + away) * root) : 0.5 * (1 - away / root));
}

/**
 * The same for an element SQUARE to the disc's plane that looks toward its axis:
 * F = (h/2a)·((a² + h² + R²)/√((a² + h² + R²)² − 4a²R²) − 1).
 *
 * @returns factor between 0 and 1; 0 on the axis, and when height or radius is not above zero
 * @source howell-element-disc
 */
export function squareDiscFactor(place: BesideDisc): number {
  if (!isPositive(place.heightM) || !isPositive(place.radiusM)) return 0;
  const { offset, height, sum, root } = inRadii(place);
  return asFactor((2 * offset * height) / ((sum + root) * root));
}

/**
 * The same for an element that FACES the disc's centre, as a meter does. Exact while the element sees the
 * whole disc (farther than R from its centre): the light vector's two components, turned to the element.
 * Far away it becomes R²·cos φ/d²; the shorter R²·cos φ/(d² + R²) would be 0.07 stop low
 * at three radii and 30° aside, 0.14 at 45°.
 *
 * @param distanceM d, from the disc's centre [m]
 * @param emissionDeg φ, from the disc's axis [°]
 * @param radiusM R [m]
 * @returns factor between 0 and 1; 0 behind the disc's plane
 * @source howell-element-disc
 */
export function facingDiscFactor({
  distanceM,
  emissionDeg,
  radiusM,
}: {
  readonly distanceM: number;
  readonly emissionDeg: number;
  readonly radiusM: number;
}): number {
  const emission = ((emissionDeg % 360) * Math.PI) / 180;
  const cosine = Math.cos(emission);
  const sine = Math.abs(Math.sin(emission));
  const place = { offsetM: distanceM * sine, heightM: distanceM * cosine, radiusM };
  return asFactor(discFactor(place) * cosine + squareDiscFactor(place) * sine);
}
