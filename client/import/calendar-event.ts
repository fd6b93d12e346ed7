import ICAL from 'ical.js';
import { type NightZone, type WallClock, wallClock } from './wall-clock.ts';

/** One entry of a calendar on the clocks of the night, or why it is not taken. */
export type CalendarEvent =
  | {
      readonly kind: 'event';
      /** Its place in the file, from 1. */
      readonly line: number;
      readonly name: string;
      readonly start: WallClock;
      readonly end: WallClock | null;
      readonly repeats: boolean;
    }
  | { readonly kind: 'no-event'; readonly line: number; readonly name: string; readonly why: string };

/** The longest name that a moment may have [signs]. */
const LONGEST_NAME = 80;

/** @returns the zone that an entry names for its beginning, or null */
export function zoneOf(event: ICAL.Component): string | null {
  const zone = event.getFirstProperty('dtstart')?.getFirstParameter('tzid');
  return typeof zone === 'string' && zone !== '' ? zone : null;
}

function nameOf(event: ICAL.Component): string {
  const summary = event.getFirstPropertyValue('summary');
  return String(summary ?? '')
    .replace(/\s+/gu, ' ')
    .trim()
    .slice(0, LONGEST_NAME)
    .trim();
}

/** When a day can be told: the library takes "20271399T990000" for a time. */
const isDay = ({ year, month, day, hour, minute }: ICAL.Time): boolean =>
  [year, month, day, hour, minute].every(Number.isFinite) &&
  year > 0 &&
  month >= 1 &&
  month <= 12 &&
  day >= 1 &&
  day <= ICAL.Time.daysInMonth(month, year) &&
  hour >= 0 &&
  hour < 24 &&
  minute >= 0 &&
  minute < 60;

function timesOf(component: ICAL.Component, night: NightZone) {
  const event = new ICAL.Event(component);
  const [startTime, endTime] = [event.startDate, event.endDate];
  if (!startTime || !isDay(startTime)) return null;
  const zone = zoneOf(component);
  const start = wallClock(startTime, zone, night);
  const lastsS = endTime && isDay(endTime) ? endTime.subtractDateTz(startTime).toSeconds() : 0;
  // A whole day or more is no length of a moment, and an end before the beginning is none at all.
  if (startTime.isDate || lastsS <= 0 || lastsS >= 24 * 3600) return { start, end: null };
  const endZone = component.getFirstProperty('dtend')?.getFirstParameter('tzid');
  return { start, end: wallClock(endTime, typeof endZone === 'string' ? endZone : zone, night) };
}

/** @returns one VEVENT (RFC 5545, section 3.6.1) as an entry, or why it is none; it never throws */
export function calendarEvent(component: ICAL.Component, line: number, night: NightZone): CalendarEvent {
  const name = nameOf(component);
  const no = (why: string): CalendarEvent => ({ kind: 'no-event', line, name, why });
  if (String(component.getFirstPropertyValue('status') ?? '').toUpperCase() === 'CANCELLED')
    return no('it is cancelled');
  if (name === '') return no('it has no name');
  try {
    const times = timesOf(component, night);
    if (!times) return no('its time cannot be read');
    return {
      kind: 'event',
      line,
      name,
      ...times,
      repeats: component.hasProperty('rrule') || component.hasProperty('rdate'),
    };
  } catch {
    return no('its time cannot be read');
  }
}
