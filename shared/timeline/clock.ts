import type { Span } from './timeline.ts';

export const DAY_MIN = 24 * 60;

/** @returns minutes after midnight brought into 0 … 1439 */
export const inDay = (minutes: number): number => ((minutes % DAY_MIN) + DAY_MIN) % DAY_MIN;

/** @returns 'HH:MM' for minutes after midnight; whole days are dropped */
export function clockWords(minutes: number): string {
  const ofDay = inDay(Math.round(minutes));
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

/** @returns minutes after midnight of an 'HH:MM' that `clockWords` gave */
export function minutesOf(clock: string): number {
  return Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
}

/** @returns how a possible time is offered: "19:00" or "19:00 to 19:30" */
export function spanWords({ startMin, endMin }: Span): string {
  return endMin === null ? clockWords(startMin) : `${clockWords(startMin)} to ${clockWords(endMin)}`;
}
