import { isPositive } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';

/** No finish sends back more; beyond it a closed room would hold its light for ever. */
const MOST_REFLECTANCE = 0.99;

/**
 * Mean reflectance of a room that returns more or less light than was thought. What comes back goes as ρ/(1−ρ)
 * (the integrating sphere, E = Φ/S·ρ/(1−ρ)), so that an offset in stops is a factor on it:
 * q = ρ/(1−ρ)·2^stops, ρ' = q/(1+q).
 * ASSUMPTION: one offset for the whole room, as if all surfaces had the mean reflectance.
 *
 * @param reflectance mean reflectance that was assumed [1]
 * @param stops what the room returns over what was thought [stops]
 * @returns corrected reflectance, 0 to 0.99 [1]; 0 for a black room, whatever was found
 * @source integrating-sphere
 */
export function reflectanceAfter(reflectance: number, stops: number): number {
  if (!isPositive(reflectance)) return 0;
  const before = Math.min(reflectance, MOST_REFLECTANCE);
  const returned = (before / (1 - before)) * ratioFromStops(stops);
  return Number.isFinite(returned) ? Math.min(MOST_REFLECTANCE, returned / (1 + returned)) : MOST_REFLECTANCE;
}
