import { clockWords, spanWords } from './clock.ts';
import type { NameIn } from './name-in.ts';
import type { LineReading, Span, TimelineChoice, TimelineMoment } from './timeline.ts';

/** The longest name that a moment may have [signs]; longer lines are rather a letter's than a list's. */
export const LONGEST_NAME = 80;
/** More times than this in one line are not worth a key each. */
const MOST_OFFERED = 6;

export const LEAVE_OUT: TimelineChoice = { label: 'leave it out', moments: [] };

/** @returns a moment as its line gives it; without a span it has no time */
export function momentOf(line: number, { name, note }: NameIn, span: Span | null): TimelineMoment {
  return {
    name,
    startsAt: span && clockWords(span.startMin),
    endsAt: span && span.endMin !== null ? clockWords(span.endMin) : null,
    note,
    line,
    inferred: false,
    why: null,
  };
}

/** @returns one choice for each possible time */
export function spanChoices(line: number, called: NameIn, spans: readonly Span[]): TimelineChoice[] {
  return spans.map((span) => ({ label: spanWords(span), moments: [momentOf(line, called, span)] }));
}

/** @returns the choice of an entry without a time */
export function untimedChoice(line: number, called: NameIn): TimelineChoice {
  return { label: 'no time', moments: [momentOf(line, called, null)] };
}

/** @returns a question with its choices, and the one to leave the line out */
export const doubt = (
  question: string,
  choices: readonly TimelineChoice[],
  holdsTime: boolean,
): LineReading => ({
  kind: 'doubt',
  question,
  choices: [...choices.slice(0, MOST_OFFERED), LEAVE_OUT],
  holdsTime,
});

/** @returns a name no longer than a moment may have */
export const cut = ({ name, note }: NameIn): NameIn => ({ name: name.slice(0, LONGEST_NAME).trim(), note });
