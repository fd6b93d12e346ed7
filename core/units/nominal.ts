import { isPositive } from './finite.ts';

/** One entry of a third-stop scale: compute with `exact`, show `label` (the nominal figure). */
export type Nominal = { readonly exact: number; readonly label: string };

// Nominal figures differ from exact ones by up to 0.14 stop (f/1.2), so they are for showing only.
const F_LABELS =
  '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22'.split(' ');

const ISO_LABELS = (
  '50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 ' +
  '8000 10000 12800 16000 20000 25600'
).split(' ');

const SHUTTER_LABELS = (
  '1/4000 1/3200 1/2500 1/2000 1/1600 1/1250 1/1000 1/800 1/640 1/500 1/400 1/320 1/250 1/200 1/160 ' +
  '1/125 1/100 1/80 1/60 1/50 1/40 1/30 1/25 1/20 1/15 1/13 1/10 1/8 1/6 1/5 1/4 0.3 0.4 1/2 0.6 0.8 1'
).split(' ');

/** ISO 50 lies three thirds under ISO 100, the speed that the exact scale is tied to. */
const FIRST_ISO_THIRD = -3;

/**
 * f-numbers in third stops, f/1 to f/22; exact 2^(i/6); rising, so each step up is ⅓ stop less light.
 * Labels read "f/2.8". @source f-number-scale
 */
export const F_NUMBERS: readonly Nominal[] = F_LABELS.map((label, index) => ({
  exact: 2 ** (index / 6),
  label: `f/${label}`,
}));

/**
 * ISO speeds in third stops, 50 to 25600; exact 100·2^(k/3); rising, each step up is ⅓ stop brighter.
 * Labels read "1600". @source iso-speed-scale
 */
export const ISO_SPEEDS: readonly Nominal[] = ISO_LABELS.map((label, index) => ({
  exact: 100 * 2 ** ((index + FIRST_ISO_THIRD) / 3),
  label,
}));

/**
 * Exposure times [s] in third stops, 1/4000 to 1 s; exact 2^(−k/3); rising, each step up is ⅓ stop more
 * ambient light. Labels read "1/125", "0.3 s", "1 s". @source iso516
 */
export const SHUTTER_TIMES: readonly Nominal[] = SHUTTER_LABELS.map((label, index) => ({
  exact: 2 ** (-(SHUTTER_LABELS.length - 1 - index) / 3),
  label: label.includes('/') ? label : `${label} s`,
}));

/** Place in the list of the entry nearest to a value, measured in stops. */
function nearestIndex(list: readonly Nominal[], value: number): number {
  let best = 0;
  let bestStops = Number.POSITIVE_INFINITY;
  list.forEach((entry, index) => {
    const stops = Math.abs(Math.log2(entry.exact) - Math.log2(value));
    if (stops < bestStops) {
      best = index;
      bestStops = stops;
    }
  });
  return best;
}

/**
 * The entry so many steps from the one nearest to a value, kept inside the list.
 *
 * @param list one of F_NUMBERS, ISO_SPEEDS, SHUTTER_TIMES (never empty)
 * @param value exact or nominal value, in the list's unit; not above zero counts as the first entry
 * @param by whole steps: +1 next, −1 previous, 0 the nearest itself
 * @throws RangeError for an empty list (a bug of the caller)
 */
export function stepNominal(list: readonly Nominal[], value: number, by: number): Nominal {
  const start = isPositive(value) ? nearestIndex(list, value) : 0;
  const index = Math.max(0, Math.min(list.length - 1, start + Math.round(by)));
  const entry = list[index];
  if (!entry) throw new RangeError(`no entry ${index} in a list of ${list.length}`);
  return entry;
}
