import { DAY_MIN, inDay } from './clock.ts';
import type { FoundTime } from './find-times.ts';
import { withLead } from './find-times.ts';
import type { Span } from './timeline.ts';

/** One time or one range in a line. */
export interface TimeGroup {
  readonly from: number;
  readonly to: number;
  readonly spans: readonly Span[];
  readonly clock24: boolean;
  readonly belief: 'yes' | 'maybe';
  /** A range whose other half may as well be a number of the name; the sure half alone. */
  readonly alone: TimeGroup | null;
}

const CONNECTS =
  /^\s*(?:[-–—−‑→]+>?|to|until|till|til|bis|through|and ends? at)\s*(?:(?:at|about|ca\.?|~)\s*)?$/iu;
const NEXT_COLUMN = /^\s*[|\t,;]\s*$/u;
const OPENS = /(?:^|[|\t,;(@~[]|\s-|(?<!\p{L})(?:at|from|von|um|between))\s*$/iu;
const CLOSES = /^\s*(?:$|[|\t,;:–—)\]]|-\s)/u;

/** Minutes from one time of day to the next time that the other comes round. */
const gap = (fromMin: number, toMin: number): number => inDay(toMin - fromMin) || DAY_MIN;

/**
 * Beginnings with their ends. ASSUMPTION: nothing in an evening lasts half a day, so of two readings twelve hours
 * apart the end is the one that comes first after the beginning, and the beginning the last one before its end.
 */
function rangeSpans(starts: readonly number[], ends: readonly number[]): Span[] {
  const nearest = starts.map((startMin) => ({
    startMin,
    endMin: ends.reduce((best, end) => (gap(startMin, end) < gap(startMin, best) ? end : best), ends[0] ?? 0),
  }));
  const short = nearest.filter(({ startMin, endMin }) => gap(startMin, endMin) < DAY_MIN / 2);
  return short.length > 0 ? short : nearest;
}

function single(text: string, time: FoundTime): TimeGroup {
  return {
    from: withLead(text, time.from),
    to: time.to,
    spans: time.readings.map((startMin) => ({ startMin, endMin: null })),
    clock24: time.clock24,
    belief: time.belief === 'yes' ? 'yes' : 'maybe',
    alone: null,
  };
}

/** The sure half of a doubtful range; a number at the start is then the line's number and not its name. */
function aloneOf(text: string, a: FoundTime, b: FoundTime, looseEnd: boolean): TimeGroup {
  if (looseEnd) return single(text, a);
  const group = single(text, b);
  return a.from === 0 ? { ...group, from: 0 } : group;
}

/** Two times beside each other as a range, or null where nothing says that they are one. */
function range(text: string, a: FoundTime, b: FoundTime, columnsAreRange: boolean): TimeGroup | null {
  const between = text.slice(a.to, b.from);
  const connected = CONNECTS.test(between) || (columnsAreRange && NEXT_COLUMN.test(between));
  const opens = OPENS.test(text.slice(0, a.from));
  const byWord = /\p{L}/u.test(between);
  if (!connected || (a.belief === 'no' && !opens && !byWord)) return null;
  const spaced = /\s/u.test(between) && /[-–—−]/u.test(between);
  const looseEnd = b.bare && spaced && !CLOSES.test(text.slice(b.to));
  const looseStart = a.bare && (a.belief === 'no' ? !opens : spaced && !b.halves && a.from === 0);
  const sure = a.belief === 'yes' || b.belief === 'yes';
  return {
    from: withLead(text, a.from),
    to: b.to,
    spans: rangeSpans(a.readings, b.readings),
    clock24: a.clock24,
    belief: sure ? 'yes' : 'maybe',
    alone: sure && (looseEnd || looseStart) ? aloneOf(text, a, b, looseEnd) : null,
  };
}

/**
 * The times of a line, ranges joined ("7–7:30 pm", "from 19:00 until 20:00"). Pieces that cannot be a time where they
 * stand are dropped; if any is certain, the doubtful ones are too, for they are then part of the name.
 *
 * @param columnsAreRange whether two columns of times are a beginning and an end
 */
export function joinTimes(text: string, times: readonly FoundTime[], columnsAreRange: boolean): TimeGroup[] {
  const groups: TimeGroup[] = [];
  for (let index = 0; index < times.length; index++) {
    const [time, next] = [times[index], times[index + 1]];
    const joined = time && next ? range(text, time, next, columnsAreRange) : null;
    if (joined) index++;
    if (joined) groups.push(joined);
    else if (time && time.belief !== 'no') groups.push(single(text, time));
  }
  const certain = groups.filter(({ belief }) => belief === 'yes');
  return certain.length > 0 ? certain : groups;
}
