/** One entry read from a pasted text. */
export interface TimelineMoment {
  /** Words of its line, never others. */
  readonly name: string;
  /** When it begins: 'HH:MM' on the 24-hour clock, local; null where the text gives no time. */
  readonly startsAt: string | null;
  /** When it ends, likewise. */
  readonly endsAt: string | null;
  /** Other columns of its line, if it came from a table. */
  readonly note: string | null;
  /** The line it stands on, from 1. */
  readonly line: number;
  /** Whether its time was concluded from the lines around it. */
  readonly inferred: boolean;
  /** From what it was concluded. */
  readonly why: string | null;
}

/** One answer to a question; a line that is to be left out gives no moments. */
export interface TimelineChoice {
  readonly label: string;
  readonly moments: readonly TimelineMoment[];
}

/** What only a person can tell. */
export interface TimelineAsk {
  readonly line: number;
  readonly text: string;
  readonly question: string;
  readonly choices: readonly TimelineChoice[];
}

/** A line that gives no moment. */
export interface LeftOutLine {
  readonly line: number;
  readonly text: string;
  readonly why: string;
}

export interface TimelineReading {
  /** In the order of the text. */
  readonly moments: readonly TimelineMoment[];
  readonly asks: readonly TimelineAsk[];
  /** Headings and dates, so that nothing disappears unseen; empty lines are not listed. */
  readonly leftOut: readonly LeftOutLine[];
  /** Why nothing was read, in plain words. */
  readonly trouble: string | null;
}

/** A possible time of a line, minutes after midnight, 0 to 1439. */
export interface Span {
  readonly startMin: number;
  readonly endMin: number | null;
}

/** What one line says when the lines around it are not looked at. */
export type LineReading =
  | { readonly kind: 'left-out'; readonly why: string; readonly dayIso: string | null }
  | { readonly kind: 'plain'; readonly name: string; readonly note: string | null }
  | {
      readonly kind: 'timed';
      readonly name: string;
      readonly note: string | null;
      /** One, or the morning and the evening reading. */
      readonly spans: readonly Span[];
      /** Written as the 24-hour clock writes it (a leading zero, "Uhr", "h"): then the first reading counts. */
      readonly clock24: boolean;
    }
  | {
      readonly kind: 'doubt';
      readonly question: string;
      readonly choices: readonly TimelineChoice[];
      /** Whether its time is in no doubt, only what it belongs to. */
      readonly holdsTime: boolean;
    };

/** A line with its reading; empty lines have none. */
export interface ReadLine {
  readonly line: number;
  readonly text: string;
  readonly reading: LineReading;
}
