import { isPositive, keepFinite } from '../../units/finite.ts';

/**
 * Width of the soft edge of a shadow, by similar triangles: w = D·b/a.
 *
 * @param diameterM D, of what shines [m]
 * @param lightToEdgeM a, from the light to what throws the shadow [m]
 * @param edgeToSurfaceM b, from there to where the shadow falls [m]
 * @returns width, square to the ray [m]; 0 for a point of light; null when a is not above zero
 * @source shadow-geometry
 */
export function penumbraM(diameterM: number, lightToEdgeM: number, edgeToSurfaceM: number): number | null {
  if (!isPositive(lightToEdgeM)) return null;
  return keepFinite((Math.max(0, diameterM) / lightToEdgeM) * Math.max(0, edgeToSurfaceM));
}
