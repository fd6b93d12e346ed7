import { clockWords, DAY_MIN } from './clock.ts';
import type { Span } from './timeline.ts';

/** A line's possible times, or the one that is certain. */
export interface OpenTime {
  readonly line: number;
  readonly spans: readonly Span[];
  readonly clock24: boolean;
}

/** The time that a line has in the end, and from what it was concluded; null where the line says it itself. */
export interface SettledTime {
  readonly span: Span;
  readonly why: string | null;
}

/**
 * A lone neighbour decides no further than this. ASSUMPTION: between two entries of one evening there are at most six
 * hours, half of the twelve that lie between the two readings of a clock; so at most one reading can be near.
 */
const MOST_GAP_MIN = 6 * 60;
/** Before this hour a time belongs to the night before, once the afternoon has been. */
const NIGHT_ENDS_MIN = 6 * 60;

type Placed = { readonly settled: SettledTime; readonly atMin: number; readonly line: number };

/** Where a time may lie, counted from the midnight before the night: past midnight is also a day later. */
function placesOf({ startMin }: Span): number[] {
  return startMin < NIGHT_ENDS_MIN ? [startMin, startMin + DAY_MIN] : [startMin];
}

/**
 * Times that are certain, in place. The small hours are those of the next day once noon has been, or once anything
 * has been if the day does not begin after them.
 */
function placeCertain(times: readonly OpenTime[]): (Placed | null)[] {
  const isCertain = ({ spans }: OpenTime) => spans.length === 1;
  let isAfternoon = false;
  return times.map((time, index) => {
    const [span] = time.spans;
    if (!span || !isCertain(time)) return null;
    const follows = times.slice(0, index).some(({ spans }) => spans.length > 1);
    const dayBegins = times
      .slice(index + 1)
      .some((later) => isCertain(later) && (later.spans[0]?.startMin ?? 0) >= NIGHT_ENDS_MIN);
    const isNextDay = span.startMin < NIGHT_ENDS_MIN && (isAfternoon || (follows && !dayBegins));
    const atMin = isNextDay ? span.startMin + DAY_MIN : span.startMin;
    isAfternoon ||= atMin >= 720;
    return { settled: { span, why: null }, atMin, line: time.line };
  });
}

const near = (placed: readonly (Placed | null)[], index: number) => ({
  before: placed.slice(0, index).findLast((place) => place !== null) ?? null,
  after: placed.slice(index + 1).find((place) => place !== null) ?? null,
});

const said = ({ atMin, line }: Placed) => `${clockWords(atMin)} (line ${line})`;

function fits(atMin: number, before: Placed | null, after: Placed | null): boolean {
  if (before && atMin < before.atMin) return false;
  if (after && atMin > after.atMin) return false;
  if (before && after) return true;
  const gapMin = before ? atMin - before.atMin : after ? after.atMin - atMin : Number.POSITIVE_INFINITY;
  return gapMin <= MOST_GAP_MIN;
}

/** The one reading that keeps the order of the lines, or null where none or both do. */
function byNeighbours(time: OpenTime, before: Placed | null, after: Placed | null): Placed | null {
  const fitting = time.spans.flatMap((span) => {
    const atMin = placesOf(span).find((place) => fits(place, before, after));
    return atMin === undefined ? [] : [{ span, atMin }];
  });
  const [only] = fitting;
  if (!only || fitting.length > 1) return null;
  const why = before
    ? after
      ? `between ${said(before)} and ${said(after)}`
      : `after ${said(before)}`
    : after
      ? `before ${said(after)}`
      : '';
  return { settled: { span: only.span, why }, atMin: only.atMin, line: time.line };
}

/** As written, where the list uses the 24-hour clock and the order of the lines agrees. */
function asWritten(time: OpenTime, before: Placed | null, after: Placed | null): Placed | null {
  const [span] = time.spans;
  if (!span || !time.clock24) return null;
  const atMin = placesOf(span).find(
    (place) => (!before || place >= before.atMin) && (!after || place <= after.atMin),
  );
  return atMin === undefined
    ? null
    : { settled: { span, why: 'the list is on the 24-hour clock' }, atMin, line: time.line };
}

/**
 * Settles times that may be morning or evening: as written in a list on the 24-hour clock, else the one reading that
 * keeps the order of the lines. What neither decides stays open.
 *
 * @param times in the order of the text
 * @param listIs24 whether the list uses the 24-hour clock and says am or pm nowhere
 * @returns one answer per time; null where a person must be asked
 */
export function settleTimes(times: readonly OpenTime[], listIs24: boolean): (SettledTime | null)[] {
  const placed = placeCertain(times);
  const rules = listIs24 ? [asWritten, byNeighbours] : [byNeighbours];
  for (const rule of rules) {
    let moved = true;
    while (moved) {
      moved = false;
      for (const [index, time] of times.entries()) {
        if (placed[index]) continue;
        const { before, after } = near(placed, index);
        const found = rule(time, before, after);
        if (!found) continue;
        placed[index] = found;
        moved = true;
      }
    }
  }
  return placed.map((place) => place?.settled ?? null);
}
