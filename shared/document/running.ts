import type { MomentId } from '../ids.ts';
import { momentOrder } from './moment-order.ts';
import type { Moment } from './parts.ts';
import type { Night } from './snapshot.ts';

const MINUTES_OF_DAY = 24 * 60;
const NOON_MIN = 12 * 60;

/** A moment is overdue when its time passed longer ago than this; guests are never on the minute (own assumption). */
export const OVERDUE_AFTER_MIN = 5;

/** Minutes since midnight of a time like "19:05"; null for anything else. */
export function clockMinutes(text: string): number | null {
  const found = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  return found ? Number(found[1]) * 60 + Number(found[2]) : null;
}

/**
 * How far a night has got: minutes since midnight of the day that it is dated with; beyond 1440 after midnight.
 *
 * @param date of the night, like "2026-05-16"
 * @param nowMs milliseconds since 1970
 * @param aheadMin how far local time is ahead of UTC [min]
 * @returns null where the date is none
 */
export function minutesIntoNight(date: string, nowMs: number, aheadMin: number): number | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return null;
  const midnightMs = Date.parse(`${date}T00:00:00Z`);
  const minutes = (nowMs - midnightMs) / 60_000 + aheadMin;
  return Number.isFinite(minutes) ? minutes : null;
}

export interface Running {
  readonly momentId: MomentId;
  /** `past`: before the moment that is on, in the list. */
  readonly standing: 'past' | 'now' | 'next' | 'later' | 'skipped';
  /** Minutes since midnight of the night's date; null without an expected time. */
  readonly expectedMin: number | null;
  /** For what is still to come: by how much its time has passed; negative before it. */
  readonly lateMin: number | null;
  /** Its time passed more than 5 minutes ago, and it is not on yet. */
  readonly isOverdue: boolean;
}

/** Whether times before noon are those of the day after: the night's first expected time is at noon or later. */
function runsPastMidnight(moments: readonly Moment[]): boolean {
  for (const { expected } of moments) {
    const minutes = expected === null ? null : clockMinutes(expected);
    if (minutes !== null) return minutes >= NOON_MIN;
  }
  return false;
}

function standingOf({ moment: on, next }: Night, moment: Moment): Running['standing'] {
  if (moment.id === on?.id) return 'now';
  if (moment.skipped) return 'skipped';
  if (moment.id === next?.id) return 'next';
  return on && momentOrder(moment, on) < 0 ? 'past' : 'later';
}

/**
 * Where each moment of the running order stands, in its order.
 *
 * ASSUMPTION: what comes before the present moment in the list has been, or is not missed: only what comes after it can be
 * overdue. Whoever wants a moment later moves it there.
 *
 * @param nowMin minutes since midnight of the night's date (`minutesIntoNight`); null where that is not known: nothing is
 *   overdue then
 */
export function runningOrder(night: Night, nowMin: number | null): readonly Running[] {
  const isPastMidnight = runsPastMidnight(night.moments);
  return night.moments.map((moment) => {
    const standing = standingOf(night, moment);
    const clock = moment.expected === null ? null : clockMinutes(moment.expected);
    const isNextDay = clock !== null && isPastMidnight && clock < NOON_MIN;
    const expectedMin = clock === null ? null : clock + (isNextDay ? MINUTES_OF_DAY : 0);
    const isToCome = standing === 'next' || standing === 'later';
    const lateMin = isToCome && expectedMin !== null && nowMin !== null ? nowMin - expectedMin : null;
    const isOverdue = lateMin !== null && lateMin > OVERDUE_AFTER_MIN;
    return { momentId: moment.id, standing, expectedMin, lateMin, isOverdue };
  });
}
