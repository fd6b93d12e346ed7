import { keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';

/** ASSUMPTION: no small head is ready again sooner than this [s]. */
export const LEAST_RECYCLE_S = 0.1;

/** So many flashes at one power. */
export type Fired = { readonly count: number; readonly powerStops: number };

/** Energy of one flash against a full one: at most 1. */
function energyOf(powerStops: number): number {
  return ratioFromStops(Math.min(0, powerStops));
}

/**
 * Time until a head is ready again: the energy of a flash goes with its power, so T = T_full·p, but never
 * under the least time.
 *
 * @param fullRecycleS after a flash at full power, as the maker states it [s]
 * @param powerStops log2 of the power fraction [stops]; above 0 counts as full
 * @param leastRecycleS [s]
 * @source flash-energy
 */
export function recycleS(
  fullRecycleS: number,
  powerStops: number,
  leastRecycleS: number = LEAST_RECYCLE_S,
): number {
  return Math.max(0, leastRecycleS, keepFinite(fullRecycleS * energyOf(powerStops)));
}

/**
 * Share of a fresh battery that is left after these flashes.
 *
 * @param freshFlashes full-power flashes from a fresh battery
 * @param fired what has been fired since
 * @returns 0 to 1; an upper bound, since a head also uses power while it waits. 0 when freshFlashes is not
 *   above zero
 * @source flash-energy
 */
export function batteryShare(freshFlashes: number, fired: readonly Fired[]): number {
  if (!(freshFlashes > 0)) return 0;
  const used = fired.reduce(
    (sum, { count, powerStops }) => keepFinite(sum + Math.max(0, count) * energyOf(powerStops)),
    0,
  );
  return Math.max(0, 1 - keepFinite(used / freshFlashes));
}

/**
 * Flashes left at a power: floor(fresh · share left / p).
 *
 * @param freshFlashes full-power flashes from a fresh battery
 * @param fired what has been fired since
 * @param powerStops log2 of the power fraction of the flashes to come [stops]
 * @returns whole flashes; an UPPER bound: idle use, cold and age of the battery are not in it
 * @source flash-energy
 */
export function flashesLeft(freshFlashes: number, fired: readonly Fired[], powerStops: number): number {
  const left = keepFinite(freshFlashes * batteryShare(freshFlashes, fired));
  return Math.max(0, Math.floor(keepFinite(left / energyOf(powerStops) + 1e-9)));
}
