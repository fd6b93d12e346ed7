import { isPositive } from '../units/finite.ts';
import { type LengthUnits, lengthLabel } from '../units/length.ts';

/** One footfall of somebody who carries a stand through a crowd: an estimate [m]. @source own-estimate */
export const DEFAULT_STEP_M = 0.65;
/** Step length over body height; only consumer sources give it, so a default only. @source step-ratio */
const STEP_PER_HEIGHT = 0.414;

/** Nearer than this the arm reaches [m]. */
const ARMS_LENGTH_M = 0.7;
/** Nearer than this one step does [m]. */
const ONE_STEP_M = 1;
/** Below this a count of steps helps nobody [m]. */
const STEPS_FROM_M = 2;

/** A distance in words: the main one, and the steps where they help. */
export type DistanceWords = { readonly main: string; readonly steps: string | null };

/**
 * Whole steps to a place, at least one.
 *
 * @param distanceM [m]
 * @param stepM one footfall [m]; not above zero counts as DEFAULT_STEP_M
 * @returns steps; 0 for no distance
 * @source guidance-convention
 */
export function stepsFor(distanceM: number, stepM: number): number {
  if (!isPositive(distanceM)) return 0;
  const steps = Math.round(distanceM / (isPositive(stepM) ? stepM : DEFAULT_STEP_M));
  return Math.max(1, Math.min(Number.MAX_SAFE_INTEGER, steps));
}

/**
 * Step length guessed from body height, until somebody has walked a known wall.
 *
 * @param bodyHeightM [m]
 * @param stepPerHeight step over height [1]
 * @returns one footfall [m]; DEFAULT_STEP_M when the height is not above zero
 * @source step-ratio
 */
export function stepFromHeight(bodyHeightM: number, stepPerHeight: number = STEP_PER_HEIGHT): number {
  const stepM = bodyHeightM * stepPerHeight;
  return isPositive(stepM) ? stepM : DEFAULT_STEP_M;
}

/**
 * A distance as the carrier reads it.
 *
 * @param distanceM [m]
 * @param stepM one footfall [m]
 * @returns main: "arm's length" under 0.7 m, "one step" under 1 m, else the length; steps: "≈ 8 steps",
 *   null under 2 m
 * @source guidance-convention
 */
export function distanceWords(distanceM: number, stepM: number, units: LengthUnits): DistanceWords {
  if (distanceM < ARMS_LENGTH_M) return { main: "arm's length", steps: null };
  if (distanceM < ONE_STEP_M) return { main: 'one step', steps: null };
  const main = lengthLabel(distanceM, units);
  return { main, steps: distanceM < STEPS_FROM_M ? null : `≈ ${stepsFor(distanceM, stepM)} steps` };
}
