import ICAL from 'ical.js';

/** A day and a time of day as a clock on the wall shows them. */
export interface WallClock {
  /** 'YYYY-MM-DD'. */
  readonly day: string;
  /** After midnight; null for a whole day. */
  readonly minutes: number | null;
  /** The zone that the file names and does not describe, so that its time was taken as it is written. */
  readonly unknownZone: string | null;
}

/** Where the night is: a zone of the file, or one that the phone knows by name. */
export interface NightZone {
  readonly name: string;
  /** The file's own description of it. */
  readonly described: ICAL.Timezone | null;
}

const two = (value: number) => String(value).padStart(2, '0');

const written = (
  { year, month, day, hour, minute, isDate }: ICAL.Time,
  unknownZone: string | null,
): WallClock => ({
  day: `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`,
  minutes: isDate ? null : hour * 60 + minute,
  unknownZone,
});

/** @returns whether the phone knows a zone by this name (IANA time zone database) */
export function isKnownZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en-GB', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

/** An instant on the clocks of a zone that the phone knows. */
function onClocks(instant: Date, zoneName: string): WallClock {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zoneName,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  }).formatToParts(instant);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((each) => each.type === type)?.value ?? '';
  return {
    day: `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`,
    minutes: Number(part('hour')) * 60 + Number(part('minute')),
    unknownZone: null,
  };
}

/**
 * What the clocks at the night show at a time of a calendar (RFC 5545, section 3.3.5): a floating time is taken as
 * it stands, one in UTC or another zone is brought to the night's zone, a date is a whole day.
 *
 * @param zoneName the zone that the entry names, or null
 */
export function wallClock(time: ICAL.Time, zoneName: string | null, night: NightZone): WallClock {
  const isUtc = time.zone === ICAL.Timezone.utcTimezone;
  if (time.isDate || (!isUtc && (zoneName === null || zoneName === night.name))) return written(time, null);
  if (time.zone === ICAL.Timezone.localTimezone) return written(time, zoneName);
  if (night.described) return written(time.convertToZone(night.described), null);
  return isKnownZone(night.name) ? onClocks(time.toJSDate(), night.name) : written(time, zoneName ?? 'UTC');
}
