import { finiteOrNull, isPositive } from '../../units/finite.ts';

/** What is sharp. Distances from the lens [m]. */
export type DepthOfField = {
  /** Largest blur that still counts as sharp, on the sensor [mm] */
  readonly circleMm: number;
  readonly hyperfocalM: number;
  readonly nearM: number;
  /** null: sharp to infinity */
  readonly farM: number | null;
};

/** Circle of confusion on 36 × 24 mm [mm]. @source hyperfocal */
const CIRCLE_MM = 0.03;
const FULL_DIAGONAL_MM = Math.hypot(36, 24);

/**
 * Depth of field of a thin lens, exact: H = f²/(N·c) + f, near = s(H − f)/(H + s − 2f),
 * far = s(H − f)/(H − s). The circle of confusion c is 0.03 mm on 36 × 24 mm and grows with the diagonal.
 *
 * @param focalMm f [mm]
 * @param fNumber N
 * @param sensorWidthMm, sensorHeightMm format [mm]
 * @param focusM s, distance in focus [m]
 * @returns null when a value is not above zero or the distance is within the focal length
 * @source hyperfocal
 */
export function depthOfField({
  focalMm,
  fNumber,
  sensorWidthMm,
  sensorHeightMm,
  focusM,
}: {
  readonly focalMm: number;
  readonly fNumber: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
  readonly focusM: number;
}): DepthOfField | null {
  const given = [focalMm, fNumber, sensorWidthMm, sensorHeightMm, focusM];
  if (!given.every(isPositive) || focusM * 1000 <= focalMm) return null;
  const circleMm = (CIRCLE_MM * Math.hypot(sensorWidthMm, sensorHeightMm)) / FULL_DIAGONAL_MM;
  const focalM = focalMm / 1000;
  const beyondM = ((focalMm / fNumber) * (focalMm / circleMm)) / 1000;
  const hyperfocalM = finiteOrNull(beyondM + focalM);
  if (hyperfocalM === null || !isPositive(circleMm)) return null;
  // The factor is taken first, so that nothing overflows.
  const nearM = finiteOrNull(focusM * (beyondM / (beyondM + (focusM - focalM))));
  if (nearM === null) return null;
  const farM = focusM < hyperfocalM ? finiteOrNull(focusM * (beyondM / (hyperfocalM - focusM))) : null;
  return { circleMm, hyperfocalM, nearM, farM };
}
