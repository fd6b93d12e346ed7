import { degFromRad, wrap180, wrap360 } from '../geometry/angle.ts';
import { type Spot, subtract, unit } from '../geometry/spot.ts';

export type TurnWord =
  | 'ahead'
  | 'ahead-right'
  | 'right'
  | 'behind-right'
  | 'behind'
  | 'behind-left'
  | 'left'
  | 'ahead-left';

const TURN_WORDS: readonly TurnWord[] = [
  'ahead',
  'ahead-right',
  'right',
  'behind-right',
  'behind',
  'behind-left',
  'left',
  'ahead-left',
];

/** A clock hour is kept until the turn is this far past its edge, so that words do not flicker [°]. */
const HOUR_HYSTERESIS_DEG = 3;

/**
 * Bearing on the plan, clockwise from plan-up: atan2(dx, −dy).
 *
 * @param from, to spots [m], y down
 * @returns bearing in [0, 360) [°]; null when both are one spot
 * @source guidance-convention
 */
export function bearingDeg(from: Spot, to: Spot): number | null {
  const way = unit(subtract(to, from));
  return way ? wrap360(degFromRad(Math.atan2(way.x, -way.y))) : null;
}

/**
 * How far to turn from a heading to a bearing.
 *
 * @param headingDeg where one faces [°]
 * @param towardDeg bearing wanted [°]
 * @returns turn in (−180, 180] [°]; + is clockwise, to the right
 * @source guidance-convention
 */
export function turnDeg(headingDeg: number, towardDeg: number): number {
  return wrap180(wrap360(towardDeg) - wrap360(headingDeg));
}

/**
 * Direction as an hour on a clock face lying flat, 12 straight ahead. Half-way goes clockwise.
 *
 * @param turn to the thing [°], + to the right
 * @param previousHour hour shown before, 1–12; kept until the turn is 3° past its edge
 * @returns 1–12
 * @source guidance-convention
 */
export function clockHour(turn: number, previousHour?: number): number {
  if (previousHour !== undefined) {
    const offDeg = Math.abs(wrap180(wrap360(turn) - previousHour * 30));
    if (offDeg <= 15 + HOUR_HYSTERESIS_DEG) return previousHour;
  }
  const hour = Math.floor((wrap360(turn) + 15) / 30) % 12;
  return hour === 0 ? 12 : hour;
}

/**
 * Direction in words, eight of 45° each. Half-way goes clockwise.
 *
 * @param turn to the thing [°], + to the right
 * @source guidance-convention
 */
export function turnWords(turn: number): TurnWord {
  return TURN_WORDS[Math.floor((wrap360(turn) + 22.5) / 45) % 8] ?? 'ahead';
}
