import { cut, doubt, LONGEST_NAME, spanChoices, untimedChoice } from './choices.ts';
import { inDay } from './clock.ts';
import { type FoundDate, findDate, isWeekday } from './find-date.ts';
import { type FoundDuration, findDuration } from './find-duration.ts';
import { findTimes } from './find-times.ts';
import { isHeading, isTableHead } from './is-heading.ts';
import { joinTimes, type TimeGroup } from './join-times.ts';
import { numberingLength, withoutBullet } from './line-frame.ts';
import { manyTimes } from './many-times.ts';
import { blanked, nameIn, tidy } from './name-in.ts';
import type { LineReading } from './timeline.ts';

/** Longer lines are no list's: they are asked, not searched [signs]. */
export const LONGEST_LINE = 400;

/** What the whole text says about each of its lines. */
export interface LineContext {
  /** From 1. */
  readonly line: number;
  readonly nightIso: string;
  /** Bare numbers in front of the lines count them. */
  readonly counted: boolean;
  readonly columnsAreRange: boolean;
  readonly othersHaveSmallLetters: boolean;
}

const leftOut = (why: string, dayIso: string | null = null): LineReading => ({
  kind: 'left-out',
  why,
  dayIso,
});

/** A beginning and a length make an end. */
function lasting(group: TimeGroup, duration: FoundDuration | null): TimeGroup {
  if (!duration) return group;
  const spans = group.spans.map(({ startMin, endMin }) => ({
    startMin,
    endMin: endMin ?? inDay(startMin + duration.durationMin),
  }));
  return { ...group, spans };
}

/** One line's words with the numbering, the date and the length blanked out. */
interface Cleared {
  readonly body: string;
  readonly text: string;
  /** The same with the length left in: without a time it says more than nothing. */
  readonly lengthKept: string;
  readonly date: FoundDate | null;
  readonly duration: FoundDuration | null;
}

function clear(body: string, context: LineContext): Cleared {
  const date = findDate(body, context.nightIso);
  const undated = date?.sure ? blanked(body, [[date.from, date.to]]) : body;
  const numbering = date?.from === 0 ? 0 : numberingLength(undated, context.counted);
  const unnumbered = blanked(undated, [[0, numbering]]);
  const start = unnumbered.length - unnumbered.trimStart().length;
  const duration = findDuration(unnumbered.slice(start));
  const text = unnumbered.slice(start);
  return {
    body,
    text: duration ? blanked(text, [[duration.from, duration.to]]) : text,
    lengthKept: text,
    date,
    duration,
  };
}

function oneTime(group: TimeGroup, cleared: Cleared, context: LineContext): LineReading {
  const { text, body } = cleared;
  const { line } = context;
  const without = ({ from, to }: TimeGroup) => nameIn(body, blanked(text, [[from, to]]));
  const called = without(group);
  // "2027 at the mill" is rather the year.
  const isYear = text.slice(group.from, group.to) === context.nightIso.slice(0, 4);
  if (group.belief === 'maybe' || isYear) {
    const whole = cut(nameIn(body, cleared.lengthKept));
    return doubt(
      `Is “${tidy(text.slice(group.from, group.to))}” a time?`,
      [
        ...spanChoices(line, called.name === '' ? whole : cut(called), group.spans),
        untimedChoice(line, whole),
      ],
      false,
    );
  }
  if (group.alone) {
    const { alone } = group;
    return doubt(
      'Is the number beside the time a time too?',
      [
        ...spanChoices(line, cut(called), group.spans),
        ...spanChoices(line, cut(without(alone)), alone.spans),
      ],
      true,
    );
  }
  if (called.name.length > LONGEST_NAME)
    return doubt('Is this long line an entry?', spanChoices(line, cut(called), group.spans), false);
  return { kind: 'timed', ...called, spans: group.spans, clock24: group.clock24 };
}

/** "05/06": the night's day, another day, or two times. */
function slashed(date: FoundDate, cleared: Cleared, context: LineContext): LineReading | null {
  const { line, nightIso } = context;
  const written = cleared.body.slice(date.from, date.to);
  const at = cleared.text.indexOf(written);
  if (at < 0) return null;
  const rest = blanked(cleared.text, [[at, at + written.length]]);
  const called = nameIn(cleared.body, rest);
  if (called.name === '') return leftOut('a date');
  const groups = joinTimes(rest, findTimes(rest), context.columnsAreRange);
  if (groups.length > 0 && date.days.includes(nightIso))
    return withTimes({ ...cleared, text: rest, lengthKept: rest, date: null }, context);
  const [from = 0, to = 0] = written.split('/').map(Number);
  const hours =
    from <= 12 && to <= 12
      ? [0, 720].map((half) => ({ startMin: inDay(from * 60 + half), endMin: inDay(to * 60 + half) }))
      : [];
  const inLine = groups.flatMap(({ spans }) => spans);
  return doubt(
    `Is “${written}” a date or two times?`,
    [...spanChoices(line, cut(called), [...inLine, ...hours]), untimedChoice(line, cut(called))],
    groups.some(({ belief }) => belief === 'yes'),
  );
}

function withTimes(cleared: Cleared, context: LineContext): LineReading {
  const { body, text, date, duration } = cleared;
  if (date && !date.sure) {
    const read = slashed(date, cleared, context);
    if (read) return read;
  }
  const groups = joinTimes(text, findTimes(text), context.columnsAreRange).map((group) =>
    lasting(group, duration),
  );
  const [group] = groups;
  if (group)
    return groups.length === 1 || group.belief === 'maybe'
      ? oneTime(group, cleared, context)
      : manyTimes(groups, { line: context.line, body, text });
  const called = nameIn(body, cleared.lengthKept);
  if (!/[\p{L}\d]/u.test(called.name)) return leftOut('no words');
  if (called.name.length > LONGEST_NAME)
    return doubt('Is this long line an entry?', [untimedChoice(context.line, cut(called))], false);
  return { kind: 'plain', ...called };
}

/** A line under another date than the night's, or with one in it: whatever it says is asked. */
export function onOtherDay(reading: LineReading, dayWords: string, line: number): LineReading {
  const question = `This belongs to another date (${dayWords}). Take it?`;
  if (reading.kind === 'left-out') return reading;
  if (reading.kind === 'doubt') return { ...reading, question: `${question} ${reading.question}` };
  const called = cut({ name: reading.name, note: reading.note });
  return reading.kind === 'plain'
    ? doubt(question, [untimedChoice(line, called)], false)
    : doubt(question, called.name === '' ? [] : spanChoices(line, called, reading.spans), false);
}

/**
 * What one line says by itself: a heading or a date (left out), a name, a name with one time in one or two readings,
 * or something that must be asked. Null for an empty line.
 */
export function readLine(line: string, context: LineContext): LineReading | null {
  if (line.trim() === '') return null;
  const body = withoutBullet(line);
  if (!/[\p{L}\d]/u.test(body)) return leftOut('a dividing line');
  if (body.length > LONGEST_LINE)
    return doubt(
      'Is this long line an entry?',
      [untimedChoice(context.line, cut(nameIn(body, body)))],
      false,
    );
  if (isTableHead(body)) return leftOut('the head of a table');
  if (isWeekday(body)) return leftOut('a weekday');
  const cleared = clear(body, context);
  const { date } = cleared;
  const reading = withTimes(cleared, context);
  const isOther = date?.sure === true && !date.days.includes(context.nightIso);
  const holdsNoTime = reading.kind === 'plain' || reading.kind === 'left-out';
  if (date?.sure && holdsNoTime)
    return leftOut('a date', isOther ? (date.days[0] ?? null) : context.nightIso);
  if (reading.kind === 'plain' && isHeading(line, body, context.othersHaveSmallLetters))
    return leftOut('a heading');
  return isOther ? onOtherDay(reading, date?.days[0] ?? '', context.line) : reading;
}
