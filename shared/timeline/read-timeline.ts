import { LEAVE_OUT, momentOf, spanChoices, untimedChoice } from './choices.ts';
import { clockWords, minutesOf } from './clock.ts';
import { findTimes } from './find-times.ts';
import { headsRange } from './is-heading.ts';
import { areCounted, withoutBullet } from './line-frame.ts';
import { pairStacked } from './pair-stacked.ts';
import { LONGEST_LINE, onOtherDay, readLine } from './read-line.ts';
import { type OpenTime, type SettledTime, settleTimes } from './settle-times.ts';
import type {
  LeftOutLine,
  LineReading,
  ReadLine,
  TimelineAsk,
  TimelineChoice,
  TimelineMoment,
  TimelineReading,
} from './timeline.ts';

/** Larger texts are no running order. */
export const MOST_LINES = 200;
export const MOST_SIGNS = 20_000;

/** Answers to questions of an earlier reading of the same text: the chosen label by line. */
export type TimelineAnswers = ReadonlyMap<number, string>;

/** A line as it is looked at beside the others; too long a one is none. */
function bodyOf(text: string): string {
  const body = withoutBullet(text);
  return body.length > LONGEST_LINE ? '' : body;
}

function readLines(texts: readonly string[], nightIso: string): ReadLine[] {
  const bodies = texts.map(bodyOf);
  const timedBodies = bodies.filter((body) => findTimes(body).some(({ belief }) => belief === 'yes'));
  const shared = {
    nightIso,
    counted: areCounted(bodies),
    columnsAreRange: bodies.some(headsRange),
    othersHaveSmallLetters: timedBodies.some((body) => /\p{Ll}{3}/u.test(body)),
  };
  let dayIso = nightIso;
  return texts.flatMap((text, index) => {
    const line = index + 1;
    const reading = readLine(text, { ...shared, line });
    if (!reading) return [];
    if (reading.kind === 'left-out' && reading.dayIso) dayIso = reading.dayIso;
    return [{ line, text, reading: dayIso === nightIso ? reading : onOtherDay(reading, dayIso, line) }];
  });
}

/** What a person has chosen for a line, if the choice is one of those that are offered. */
function chosen(choices: readonly TimelineChoice[], answer: string | undefined): TimelineChoice | null {
  return answer === undefined ? null : (choices.find(({ label }) => label === answer) ?? null);
}

/** All that a line with a time may mean. */
const timedChoices = (
  line: number,
  { name, note, spans }: LineReading & { kind: 'timed' },
): TimelineChoice[] => [
  ...spanChoices(line, { name, note }, spans),
  untimedChoice(line, { name, note }),
  LEAVE_OUT,
];

/** A line's times as far as they can stand beside others: its readings, or the one that a person has chosen. */
function openTime({ line, reading }: ReadLine, answer: string | undefined): OpenTime {
  const none = { line, spans: [], clock24: false };
  if (reading.kind !== 'timed' && reading.kind !== 'doubt') return none;
  const choices = reading.kind === 'doubt' ? reading.choices : timedChoices(line, reading);
  const choice = chosen(choices, answer);
  if (!choice)
    return reading.kind === 'timed' ? { line, spans: reading.spans, clock24: reading.clock24 } : none;
  const startsAt = choice.moments.find((moment) => moment.startsAt !== null)?.startsAt;
  return startsAt ? { line, spans: [{ startMin: minutesOf(startsAt), endMin: null }], clock24: false } : none;
}

/** Whether the list writes hours of the 24-hour clock and never am or pm. */
function isOn24(texts: readonly string[]): boolean {
  const times = texts.flatMap((text) => findTimes(bodyOf(text)).filter(({ belief }) => belief === 'yes'));
  const hours = times.map(({ readings }) => readings);
  return (
    !times.some(({ halves }) => halves) && hours.some((of) => of.length === 1 && (of[0] ?? 0) >= 13 * 60)
  );
}

type Part = {
  readonly moments?: readonly TimelineMoment[];
  readonly ask?: TimelineAsk;
  readonly leftOut?: LeftOutLine;
};

function timedPart(
  read: ReadLine,
  reading: LineReading & { kind: 'timed' },
  settled: SettledTime | null,
): Part {
  const { line, text } = read;
  const called = { name: reading.name, note: reading.note };
  if (settled) {
    const inferred = settled.why !== null;
    return { moments: [{ ...momentOf(line, called, settled.span), inferred, why: settled.why }] };
  }
  const [early, late] = reading.spans.map(({ startMin }) => clockWords(startMin));
  return {
    ask: { line, text, question: `Is that ${early} or ${late}?`, choices: timedChoices(line, reading) },
  };
}

function part(
  read: ReadLine,
  settled: SettledTime | null,
  isBetween: boolean,
  answer: string | undefined,
): Part {
  const { line, text, reading } = read;
  switch (reading.kind) {
    case 'left-out':
      return { leftOut: { line, text, why: reading.why } };
    case 'timed': {
      const choice = chosen(timedChoices(line, reading), answer);
      return choice ? { moments: choice.moments } : timedPart(read, reading, settled);
    }
    case 'doubt': {
      const choice = chosen(reading.choices, answer);
      const { question, choices } = reading;
      return choice ? { moments: choice.moments } : { ask: { line, text, question, choices } };
    }
    case 'plain': {
      const choices = [untimedChoice(line, reading), LEAVE_OUT];
      const choice = chosen(choices, answer) ?? (isBetween ? choices[0] : null);
      return choice
        ? { moments: choice.moments }
        : { ask: { line, text, question: 'Is this an entry? It has no time.', choices } };
    }
  }
}

const holdsTime = ({ reading }: ReadLine) =>
  reading.kind === 'timed' || (reading.kind === 'doubt' && reading.holdsTime);

/**
 * Reads a running order from a text that somebody has pasted: a list, a table, a mail. Every entry's words come from
 * its line. A time that may be morning or evening is settled by the lines around it and marked `inferred`, or asked;
 * so is whatever else only a person can tell. It never throws.
 *
 * @param text at most 200 lines and 20,000 signs, else `trouble` says so and nothing is read
 * @param date the night's date, 'YYYY-MM-DD': it tells dates in the text from times, and lines of other days
 * @param answers chosen labels of an earlier reading of the same text, by line; a choice that is not offered is ignored
 * @returns moments, questions and what was left out, each in the order of the text
 */
export function readTimeline(
  text: string,
  { date, answers = new Map() }: { readonly date: string; readonly answers?: TimelineAnswers },
): TimelineReading {
  const nothing = { moments: [], asks: [], leftOut: [] };
  const texts = text.split(/\r\n|[\n\r\u2028\u2029\u0085\v\f]/u);
  if (text.length > MOST_SIGNS)
    return { ...nothing, trouble: `The text has ${text.length} signs; up to ${MOST_SIGNS} can be read.` };
  if (texts.length > MOST_LINES)
    return { ...nothing, trouble: `The text has ${texts.length} lines; up to ${MOST_LINES} can be read.` };
  const lines = pairStacked(readLines(texts, date));
  const settled = settleTimes(
    lines.map((read) => openTime(read, answers.get(read.line))),
    isOn24(texts),
  );
  const firstTimed = lines.findIndex(holdsTime);
  const lastTimed = lines.findLastIndex(holdsTime);
  const parts = lines.map((read, index) =>
    part(
      read,
      settled[index] ?? null,
      index > firstTimed && firstTimed >= 0 && index < lastTimed,
      answers.get(read.line),
    ),
  );
  return {
    moments: parts.flatMap(({ moments }) => moments ?? []),
    asks: parts.flatMap(({ ask }) => ask ?? []),
    leftOut: parts.flatMap(({ leftOut }) => leftOut ?? []),
    trouble: null,
  };
}
