import { keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';

/** A light whose power is wanted; its place in the list is its column in every row. */
export type PowerLight = {
  readonly id: string;
  /** log2 of the head's least power [stops], at most 0 */
  readonly leastPowerStops: number;
  /** It does not fire: not solved, its column is passed over */
  readonly isOff: boolean;
};

/**
 * One place that light falls on, linear, 1 = correct exposure (for a background: mid-grey, reflectance
 * taken in): light of every flash at full power, and what is there without any flash.
 */
export type LightRow = { readonly perLight: readonly number[]; readonly base: number };

/** A level that is wanted, in one place or as the median over many (rays through the frame). */
export type PowerTarget = {
  readonly name: string;
  readonly wantedStops: number;
  /** What a stop² of missing it counts; not above zero: only reported */
  readonly weight: number;
  readonly measure: 'single' | 'median';
  readonly rows: readonly LightRow[];
};

export type PowerProblem = {
  readonly lights: readonly PowerLight[];
  readonly targets: readonly PowerTarget[];
};

/** Darker than this counts as this, so that a place no light reaches does not weigh without end [stops]. */
export const DARKEST_STOPS = -20;
const DARKEST = 2 ** DARKEST_STOPS;
const BRIGHTEST = 2 ** 100;

/**
 * A target made ready for the many looks of a search: its rows as one block of numbers, only the lights that
 * fire, and room to sort in.
 */
export type ReadyTarget = {
  readonly wantedStops: number;
  readonly weight: number;
  readonly rows: number;
  readonly lights: number;
  /** rows × lights */
  readonly perLight: Float64Array;
  readonly base: Float64Array;
  readonly values: Float64Array;
  readonly sorted: Float64Array;
};

function usable(light: number | undefined): number {
  return light !== undefined && light > 0 ? Math.min(BRIGHTEST, light) : 0;
}

/**
 * @param columns which lights fire, by their place in the rows
 * @returns the target made ready; negative or missing light counts as none; 'single' keeps the first row
 * @source own-rule
 */
export function readyTarget(target: PowerTarget, columns: readonly number[]): ReadyTarget {
  const rows = target.measure === 'single' ? target.rows.slice(0, 1) : target.rows;
  const perLight = new Float64Array(rows.length * columns.length);
  const base = new Float64Array(rows.length);
  for (const [row, { perLight: given, base: without }] of rows.entries()) {
    base[row] = usable(without);
    for (const [at, column] of columns.entries()) perLight[row * columns.length + at] = usable(given[column]);
  }
  return {
    wantedStops: Math.max(-100, Math.min(100, keepFinite(target.wantedStops))),
    weight: Math.max(0, Math.min(1e6, keepFinite(target.weight))),
    rows: rows.length,
    lights: columns.length,
    perLight,
    base,
    values: new Float64Array(rows.length),
    sorted: new Float64Array(rows.length),
  };
}

/**
 * Level of a target: the middle of its rows (of an even number the mean of the two middle ones, as light).
 *
 * @param fractions power of every light, linear (1 = full)
 * @returns linear, 1 = correct, never under the darkest that counts
 * @source own-rule
 */
export function targetLevel(target: ReadyTarget, fractions: Float64Array): number {
  const { rows, lights, perLight, base, values, sorted } = target;
  if (rows === 0) return DARKEST;
  for (let row = 0; row < rows; row += 1) {
    let light = base[row] ?? 0;
    for (let at = 0; at < lights; at += 1) light += (perLight[row * lights + at] ?? 0) * (fractions[at] ?? 0);
    values[row] = light;
  }
  if (rows === 1) return Math.max(DARKEST, values[0] ?? 0);
  sorted.set(values);
  sorted.sort();
  const middle = ((sorted[(rows - 1) >> 1] ?? 0) + (sorted[rows >> 1] ?? 0)) / 2;
  return Math.max(DARKEST, middle);
}

/** Row whose value lies nearest to a level, as left by the last `targetLevel`. @source own-rule */
export function middleRow(target: ReadyTarget, level: number): number {
  let best = 0;
  let away = Number.POSITIVE_INFINITY;
  for (let row = 0; row < target.rows; row += 1) {
    const off = Math.abs((target.values[row] ?? 0) - level);
    if (off < away) [best, away] = [row, off];
  }
  return best;
}

/**
 * What a choice of powers costs: Σ weight·(level − wanted)².
 *
 * @param powers of every light that fires [stops]
 * @param fractions room for as many numbers
 * @returns cost [stops²]
 * @source own-rule
 */
export function costOf(
  targets: readonly ReadyTarget[],
  powers: Float64Array,
  fractions: Float64Array,
): number {
  for (let at = 0; at < powers.length; at += 1) fractions[at] = ratioFromStops(powers[at] ?? 0);
  let cost = 0;
  for (const target of targets) {
    if (target.weight === 0) continue;
    const miss = Math.log2(targetLevel(target, fractions)) - target.wantedStops;
    cost += target.weight * miss * miss;
  }
  return cost;
}
