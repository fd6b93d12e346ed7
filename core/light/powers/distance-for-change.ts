import { isPositive } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';

/** Light at a distance [m], in any unit, falling as the distance grows. */
export type Falloff = (distanceM: number) => number;

/** No stand comes nearer to a face than this, none goes farther away [m]. */
const NEAREST_M = 0.5;
const FARTHEST_M = 50;
/** Halvings of the search: the result is then within 1e-9 m. */
const HALVINGS = 40;

/**
 * How far away a light must be to give so many stops more or less: d·2^(−x/2) by the inverse square, or by
 * its own law (an umbrella near by falls more slowly).
 *
 * @param distanceM where it is now [m]
 * @param changeStops wanted change of its light [stops]; + is more
 * @param falloff its law; null for the inverse square
 * @returns distance [m]; null when it would be under 0.5 m or over 50 m, or the law gives no light
 * @source cie-inverse-square
 */
export function distanceForChangeM(
  distanceM: number,
  changeStops: number,
  falloff: Falloff | null,
): number | null {
  if (!isPositive(distanceM)) return null;
  if (falloff === null) {
    const to = distanceM * ratioFromStops(-changeStops / 2);
    return to >= NEAREST_M && to <= FARTHEST_M ? to : null;
  }
  const wanted = falloff(distanceM) * ratioFromStops(changeStops);
  if (!isPositive(wanted) || !(falloff(NEAREST_M) >= wanted) || !(falloff(FARTHEST_M) <= wanted)) return null;
  let [near, far] = [NEAREST_M, FARTHEST_M];
  for (let turn = 0; turn < HALVINGS; turn += 1) {
    const middle = (near + far) / 2;
    if (falloff(middle) > wanted) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}
