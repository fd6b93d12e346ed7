import { keepFinite } from '../units/finite.ts';
import { roundToThird } from '../units/stops.ts';
import { sumStops } from './exposure.ts';

/** Which power gives the wanted exposure, or why none does; powers in stops under full. */
export type PowerAnswer =
  | { readonly kind: 'power'; readonly powerStops: number; readonly resultStops: number }
  | { readonly kind: 'too-weak'; readonly shortByStops: number }
  | { readonly kind: 'too-strong'; readonly overByStops: number }
  | { readonly kind: 'ambient-alone'; readonly ambientStops: number };

/** Half a step of the power dial: nearer than this no setting can come. */
const HALF_STEP_STOPS = 1 / 6;

/**
 * Power of one head that brings flash and ambient together to a target, in ⅓-stop steps.
 *
 * @param stopsAtFull exposure from the flash alone at full power [stops over correct]
 * @param ambientStops exposure from the ambient alone [stops]; null for none
 * @param targetStops wanted sum [stops]; 0 is what the meter calls correct
 * @param leastPowerStops log2 of the head's least power [stops], at most 0
 * @returns the nearest step and what it gives (within 1/6 stop of the target); or too weak even at full,
 *   too strong even at the least power, or the ambient alone is at the target already
 * @source iso2720
 */
export function solvePower({
  stopsAtFull,
  ambientStops,
  targetStops,
  leastPowerStops,
}: {
  readonly stopsAtFull: number;
  readonly ambientStops: number | null;
  readonly targetStops: number;
  readonly leastPowerStops: number;
}): PowerAnswer {
  if (ambientStops !== null && ambientStops >= targetStops) return { kind: 'ambient-alone', ambientStops };
  // 2^target − 2^ambient, in stops: what the flash alone must give.
  const missing = ambientStops === null ? 0 : Math.log2(1 - 2 ** (ambientStops - targetStops));
  const exact = keepFinite(targetStops + missing - stopsAtFull);
  const least = Math.min(0, Math.ceil(leastPowerStops * 3 - 1e-6) / 3 + 0);
  const powerStops = Math.max(least, Math.min(0, roundToThird(exact)));
  const resultStops = keepFinite(sumStops([ambientStops, stopsAtFull + powerStops]) ?? targetStops);
  const over = keepFinite(resultStops - targetStops);
  if (over < -HALF_STEP_STOPS - 1e-9) return { kind: 'too-weak', shortByStops: -over };
  if (over > HALF_STEP_STOPS + 1e-9) return { kind: 'too-strong', overByStops: over };
  return { kind: 'power', powerStops, resultStops };
}
