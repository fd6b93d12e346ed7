import ICAL from 'ical.js';
import { clockWords } from '../../shared/timeline/clock.ts';
import type { TimelineMoment } from '../../shared/timeline/timeline.ts';
import { type CalendarEvent, calendarEvent, zoneOf } from './calendar-event.ts';
import { isKnownZone, type NightZone } from './wall-clock.ts';

/** Larger files are no evening's [signs]. */
export const MOST_CALENDAR_SIGNS = 1_000_000;
/** As many as a pasted text may have lines. */
export const MOST_MOMENTS = 200;
/** Before this hour a moment belongs to the night before. */
const NIGHT_ENDS_MIN = 6 * 60;
const DAY_MIN = 24 * 60;

/** An entry that was not taken, and why. */
export interface LeftOutEvent {
  readonly name: string;
  readonly why: string;
}

export interface CalendarReading {
  /** In the order of the night; `line` is the entry's place in the file. */
  readonly moments: readonly TimelineMoment[];
  readonly leftOut: readonly LeftOutEvent[];
  /** What a person should know about the moments that were taken. */
  readonly notes: readonly string[];
  /** Why nothing was read, in plain words. */
  readonly trouble: string | null;
}

type Event = CalendarEvent & { readonly kind: 'event' };

const none = (trouble: string, leftOut: readonly LeftOutEvent[] = []): CalendarReading => ({
  moments: [],
  leftOut,
  notes: [],
  trouble,
});

const NO_CALENDAR = 'This is no calendar file (.ics), or it is cut off. Export it again.';

/** A calendar without the zones that have no name: the library would throw on looking for any other. */
function withoutNamelessZones(calendar: ICAL.Component): ICAL.Component {
  for (const zone of calendar.getAllSubcomponents('vtimezone'))
    if (!zone.hasProperty('tzid')) calendar.removeSubcomponent(zone);
  return calendar;
}

/** Every VCALENDAR of a text; null where it is no calendar. */
function calendarsIn(text: string): ICAL.Component[] | null {
  try {
    const parsed: unknown = ICAL.parse(text.replace(/^\ufeff/u, ''));
    if (!Array.isArray(parsed)) return null;
    const list: unknown[] = typeof parsed[0] === 'string' ? [parsed] : parsed;
    const calendars = list.flatMap((jcal) =>
      Array.isArray(jcal) ? [withoutNamelessZones(new ICAL.Component(jcal))] : [],
    );
    return calendars.length > 0 && calendars.every(({ name }) => name === 'vcalendar') ? calendars : null;
  } catch {
    return null;
  }
}

/** The zone that most entries name, else the calendar's own, else the phone's. */
function nightZone(calendar: ICAL.Component, phoneZone: string): NightZone {
  const named = calendar.getAllSubcomponents('vevent').flatMap((event) => zoneOf(event) ?? []);
  const times = (zone: string) => named.filter((other) => other === zone).length;
  const [most] = [...new Set(named)].sort((a, b) => times(b) - times(a));
  const own = calendar.getFirstPropertyValue('x-wr-timezone');
  const ownName = typeof own === 'string' && isKnownZone(own) ? own : null;
  const name = most ?? ownName ?? phoneZone;
  return { name, described: calendar.getTimeZoneByID(name) };
}

/** The day before, as 'YYYY-MM-DD'. */
const dayBefore = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - DAY_MIN * 60_000).toISOString().slice(0, 10);

/** The evening that an entry belongs to: its day, or the one before in the small hours. */
function nightOf({ start }: Event): string {
  return start.minutes !== null && start.minutes < NIGHT_ENDS_MIN ? dayBefore(start.day) : start.day;
}

/** Where an entry lies in its night: whole days first, the small hours last. */
function placeOf({ start }: Event): number {
  if (start.minutes === null) return -1;
  return start.minutes < NIGHT_ENDS_MIN ? start.minutes + DAY_MIN : start.minutes;
}

function momentOf({ line, name, start, end }: Event): TimelineMoment {
  const words = (minutes: number | null | undefined) =>
    typeof minutes === 'number' ? clockWords(minutes) : null;
  return {
    name,
    startsAt: words(start.minutes),
    endsAt: words(end?.minutes),
    note: null,
    line,
    inferred: false,
    why: null,
  };
}

function notesOn(taken: readonly Event[]): string[] {
  return taken.flatMap(({ name, repeats, start: { unknownZone } }) => [
    ...(repeats ? [`“${name}” repeats; it is taken once, on its first day.`] : []),
    ...(unknownZone
      ? [
          `“${name}” is in the time zone ${unknownZone}, which the file does not describe: its time is taken as written.`,
        ]
      : []),
  ]);
}

/** The entries of the night; of a file with one other day only, that day's. */
function chosenNight(events: readonly Event[], date: string): string | null {
  const nights = [...new Set(events.map(nightOf))];
  if (nights.includes(date)) return date;
  return nights.length === 1 ? (nights[0] ?? null) : null;
}

function readNight(text: string, date: string, phoneZone: string): CalendarReading {
  const calendars = calendarsIn(text);
  if (!calendars) return none(NO_CALENDAR);
  const read = calendars
    .flatMap((calendar) => {
      const zone = nightZone(calendar, phoneZone);
      return calendar.getAllSubcomponents('vevent').map((event) => ({ event, zone }));
    })
    .map(({ event, zone }, index) => calendarEvent(event, index + 1, zone));
  const unread = read.flatMap((each) =>
    each.kind === 'no-event' ? [{ name: each.name, why: each.why }] : [],
  );
  const events = read.filter((each) => each.kind === 'event');
  if (events.length === 0) return none('The calendar has no entry that can be read.', unread);
  const night = chosenNight(events, date);
  const other = (event: Event) => ({ name: event.name, why: `it is on ${event.start.day}` });
  if (night === null)
    return none(`The calendar has no entry on ${date}. Set the night’s date, or add the moments by hand.`, [
      ...unread,
      ...events.map(other),
    ]);
  const inNight = events.filter((event) => nightOf(event) === night).sort((a, b) => placeOf(a) - placeOf(b));
  const taken = inNight.slice(0, MOST_MOMENTS);
  return {
    moments: taken.map(momentOf),
    leftOut: [
      ...unread,
      ...events.filter((event) => nightOf(event) !== night).map(other),
      ...inNight
        .slice(MOST_MOMENTS)
        .map(({ name }) => ({ name, why: `a night has at most ${MOST_MOMENTS} moments` })),
    ],
    notes: [
      ...(night === date ? [] : [`The calendar is for ${night}; the night is on ${date}.`]),
      ...notesOn(taken),
    ],
    trouble: null,
  };
}

/**
 * Reads a calendar file (iCalendar, RFC 5545) as a running order. Of several days the night's is taken, the hours
 * after midnight with it; the others are listed as left out. A repeating entry is taken once, with a note. It never
 * throws.
 *
 * @param date the night's date, 'YYYY-MM-DD'
 * @param phoneZone the zone for times in UTC where the file names none (IANA name)
 */
export function readCalendar(
  text: string,
  { date, phoneZone }: { readonly date: string; readonly phoneZone: string },
): CalendarReading {
  if (text.trim() === '') return none('The file is empty.');
  if (text.length > MOST_CALENDAR_SIGNS)
    return none(`The file has ${text.length} signs; up to ${MOST_CALENDAR_SIGNS} can be read.`);
  try {
    return readNight(text, date, phoneZone);
  } catch {
    return none(NO_CALENDAR);
  }
}
