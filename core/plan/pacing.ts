import { isPositive } from '../units/finite.ts';
import { valueInWords } from './room-outline.ts';

/** Spread of a walked length, untrained, short, in a room with people [1]. @source own-estimate */
const UNTRAINED_FRACTION = 0.05;
/** Spread for somebody who has practised: 1 to 2 % on level ground; the larger is taken [1]. @source pacing */
const TRAINED_FRACTION = 0.02;

/** Shorter or longer, it was not a step that was counted [m]. @source own-rule */
const [LEAST_STEP_M, MOST_STEP_M] = [0.3, 1.2];
const MOST_LENGTH_M = 300;
/** Fewer steps say nothing about a step. @source own-rule */
const LEAST_STEPS = 3;

/** A length that was walked: how long, and how far off it may be (one standard deviation). */
export type PacedLength = {
  readonly lengthM: number;
  /** Spread of the step itself [1] */
  readonly spreadFraction: number;
  /** That spread and the rounding to whole steps together [m] */
  readonly spreadM: number;
};

/**
 * Somebody's own step from one known length.
 *
 * @param lengthM what was walked [m]
 * @param steps footfalls counted, 3 or more; halves are welcome
 * @returns one footfall [m]; else the reason, also when no step is that short (0.3 m) or long (1.2 m)
 * @source pacing
 */
export function stepFromKnownLength(
  lengthM: number,
  steps: number,
): { readonly stepM: number } | { readonly reason: string } {
  if (!isPositive(lengthM) || lengthM > MOST_LENGTH_M) {
    return { reason: `The length is ${valueInWords(lengthM, ' m')}; above 0 and up to ${MOST_LENGTH_M} m.` };
  }
  if (!(Number.isFinite(steps) && steps >= LEAST_STEPS)) {
    return { reason: `${valueInWords(steps, '')} steps; walk at least ${LEAST_STEPS}.` };
  }
  const stepM = lengthM / steps;
  if (stepM >= LEAST_STEP_M && stepM <= MOST_STEP_M) return { stepM };
  const words = `One step would be ${valueInWords(stepM, ' m')}; between ${LEAST_STEP_M} m and ${MOST_STEP_M} m is a step.`;
  return { reason: words };
}

/**
 * How long a wall is that was walked.
 *
 * ASSUMPTION: steps are counted whole, so that the end is known to a step's length evenly spread (standard
 * deviation: step/√12), on top of the spread of the steps themselves.
 *
 * @param steps footfalls counted
 * @param stepM one footfall [m]
 * @param trained has this person practised? 2 % instead of 5 %
 * @source pacing
 * @source own-estimate
 */
export function lengthFromSteps(
  steps: number,
  stepM: number,
  trained: boolean = false,
): PacedLength | { readonly reason: string } {
  if (!isPositive(steps)) return { reason: `${valueInWords(steps, '')} steps; count at least one.` };
  if (!(stepM >= LEAST_STEP_M && stepM <= MOST_STEP_M)) {
    const words = `A step of ${valueInWords(stepM, ' m')}; between ${LEAST_STEP_M} m and ${MOST_STEP_M} m is a step.`;
    return { reason: words };
  }
  const lengthM = steps * stepM;
  if (lengthM > MOST_LENGTH_M) {
    return { reason: `That is ${valueInWords(lengthM, ' m')}; at most ${MOST_LENGTH_M} m can be drawn.` };
  }
  const spreadFraction = trained ? TRAINED_FRACTION : UNTRAINED_FRACTION;
  return { lengthM, spreadFraction, spreadM: Math.hypot(lengthM * spreadFraction, stepM / Math.sqrt(12)) };
}
