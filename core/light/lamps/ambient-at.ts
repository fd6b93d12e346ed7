import { distance, type Spot } from '../../geometry/spot.ts';
import { keepFinite } from '../../units/finite.ts';
import { INCIDENT_C, illuminanceFromEv100 } from '../exposure.ts';

/** Ambient as measured at a spot, EV at ISO 100. */
export type AmbientReading = { readonly spot: Spot; readonly ev100: number };

/** Mean EV of the readings, weighted with the inverse square of their distance; exact at a reading. */
function weightedEv100(readings: readonly AmbientReading[], spot: Spot): number | null {
  const away = readings.map((reading) => distance(reading.spot, spot));
  const nearest = Math.min(...away);
  let sum = 0;
  let weights = 0;
  for (const [index, { ev100 }] of readings.entries()) {
    const awayM = away[index] ?? nearest;
    // Over the nearest distance, so that nothing overflows; at a reading only the readings there count.
    const weight = awayM === nearest ? 1 : (nearest / awayM) ** 2;
    sum += weight * ev100;
    weights += weight;
  }
  return weights > 0 ? keepFinite(sum / weights) : null;
}

/**
 * Ambient light at a spot, from where it was measured: between readings by inverse-distance weighting (power 2)
 * in stops, at a reading exactly that reading.
 *
 * @param measured readings in the room
 * @param spot where the light is wanted [m]
 * @param fallbackEv100 EV at ISO 100 for the whole room [stops], used when there is no reading; null for none
 * @param c incident constant C that ties EV to light [lx·s]
 * @returns illuminance [lx]; null when nothing is known
 * @source own-rule
 * @source ev-table
 */
export function ambientLuxAt(
  measured: readonly AmbientReading[],
  spot: Spot,
  fallbackEv100: number | null,
  c: number = INCIDENT_C,
): number | null {
  const ev100 = weightedEv100(measured, spot) ?? fallbackEv100;
  return ev100 === null ? null : illuminanceFromEv100(ev100, c);
}
