import { inDay } from './clock.ts';

/** How sure it is that a piece of text is a time. */
type Belief = 'yes' | 'maybe' | 'no';

/** A piece of a line that is or may be a time of day. */
export interface FoundTime {
  readonly from: number;
  readonly to: number;
  /** Its readings, minutes after midnight: one, or as written first and twelve hours later second. */
  readonly readings: readonly number[];
  readonly belief: Belief;
  /** Nothing but a number: a time only beside another time. */
  readonly bare: boolean;
  /** Says am or pm. */
  readonly halves: boolean;
  /** Written as the 24-hour clock writes it. */
  readonly clock24: boolean;
}

/** Words before a time that belong to it and not to the name. */
const LEAD =
  /(?:(?<!\p{L})(?:at|um|from|von|ab|about|approx\.?|ca\.?|circa|gegen|starts?|begins?)|[@~≈])\s*$/iu;
const POINTED = /(?:@|(?<!\p{L})(?:at|um|gegen))\s*$/iu;
/** A time at an edge of the text or of a column stands alone; inside a sentence a number may be anything. */
const OPENS = /(?:^|[|\t,;–—([]|\s-)\s*$/u;
const CLOSES = /^\s*(?:$|[|\t,;:–—)\]]|-\s)/u;
const UNIT =
  /^\s?(?:m|cm|mm|km|ft|feet|kg|g|l|%|€|\$|£|°|px|x|×|min|mins|minutes?|guests?|people|persons?|pax|tables?)(?![\p{L}\d])/iu;

const MARK =
  "(?:\\s?([ap])\\.?\\s?m(?![\\p{L}\\d])\\.?|([ap])(?![\\p{L}\\d'’])|\\s?(uhr)(?!\\p{L})|\\s?(h)(?![\\p{L}\\d'’])|\\s?(o['’]?clock)(?!\\p{L}))?";
/** A slash and a number after it that is no time: "1/2", "05/06". */
const FRACTION = '/(?!\\d{1,2}(?:[:.h]\\d\\d|\\s?[ap]\\.?m))\\d';
const CLOCK = new RegExp(
  `(?<![\\d:\\p{L}€$£#]|\\d[.,]|(?<![:.h]\\d\\d|m)/)(\\d{1,2})(?:([:.h])([0-5]\\d)(?::[0-5]\\d)?)?${MARK}(?![\\d%]|[:.,]\\d|${FRACTION})`,
  'giu',
);
const PACKED = new RegExp(
  `(?<![\\d.:,/\\p{L}€$£#])(\\d{1,2})([0-5]\\d)${MARK}(?![\\p{L}\\d/%]|[:.,]\\d)`,
  'giu',
);
const WORD = /(?<!\p{L})(?:12\s*)?(noon|midday|midnight|mittag|mitternacht)(?!\p{L})/giu;

/** "8ish", "5:30-ish". */
const ABOUT = /^\s?-?ish(?!\p{L})/iu;
/** "20 Uhr 30 …": the minutes, or the first word of the name. */
const TWO_DIGITS = /^\s[0-5]\d(?!\d)/u;

type Mark = 'am' | 'pm' | 'uhr' | 'h' | 'clock' | null;

function markOf(groups: readonly (string | undefined)[]): Mark {
  const [long, short, uhr, hours, clock] = groups;
  const half = (long ?? short)?.toLowerCase();
  if (half) return half === 'a' ? 'am' : 'pm';
  return uhr ? 'uhr' : hours ? 'h' : clock ? 'clock' : null;
}

/** Readings of an hour and a minute; none where there is no such time. A contradiction ("13 am") has both. */
function readingsOf(hour: number, minute: number, mark: Mark): number[] {
  if (hour > 24 || (hour === 24 && minute > 0)) return [];
  const written = inDay(hour * 60 + minute);
  const other = inDay(written + 720);
  const isEvening = hour > 12 && hour < 24;
  if (mark === 'pm' && isEvening) return [written];
  if (mark !== 'am' && mark !== 'pm')
    return isEvening || hour === 0 || hour === 24 ? [written] : [written, other];
  if (isEvening || hour === 0 || hour === 24)
    return mark === 'am' && hour === 0 ? [written] : [written, other];
  const morning = inDay((hour % 12) * 60 + minute);
  return [mark === 'am' ? morning : morning + 720];
}

function beliefOf(shape: string, mark: Mark, hour: number, before: string, after: string): Belief {
  const [opens, closes, pointed] = [OPENS.test(before), CLOSES.test(after), POINTED.test(before)];
  const first = before.trim() === '';
  if (mark === 'h' && shape === 'bare') return first || hour > 12 || pointed ? 'yes' : 'no';
  if (mark === 'uhr' && shape === 'bare' && TWO_DIGITS.test(after)) return 'maybe';
  if (mark !== null || shape === ':' || shape === 'h') return 'yes';
  switch (shape) {
    case '.':
      return first || pointed || (opens && closes) ? 'yes' : closes ? 'maybe' : 'no';
    case 'packed4':
      return first || pointed || (opens && closes) ? 'yes' : closes ? 'maybe' : 'no';
    case 'packed3':
      return first || opens || closes ? 'maybe' : 'no';
    default:
      return pointed && closes ? 'yes' : first || pointed || (opens && closes) ? 'maybe' : 'no';
  }
}

function found(text: string, match: RegExpExecArray, shape: string, minute: number): FoundTime[] {
  const hour = Number(match[1]);
  const mark = markOf(match.slice(-5));
  const readings = readingsOf(hour, minute, mark);
  const end = match.index + match[0].length;
  const to = end + (ABOUT.exec(text.slice(end))?.[0].length ?? 0);
  const isAmount = mark === null && shape !== ':' && UNIT.test(text.slice(to));
  if (readings.length === 0 || isAmount) return [];
  const before = text.slice(0, match.index);
  return [
    {
      from: match.index,
      to,
      readings,
      belief: beliefOf(shape, mark, hour, before, text.slice(to)),
      bare: shape === 'bare' && mark === null,
      halves: mark === 'am' || mark === 'pm',
      clock24: mark === 'uhr' || mark === 'h' || shape === 'h' || /^0\d/u.test(match[0]),
    },
  ];
}

function words(text: string): FoundTime[] {
  return [...text.matchAll(WORD)].map((match) => {
    const to = match.index + match[0].length;
    const before = text.slice(0, match.index);
    const twelve = match[0].startsWith('12');
    const alone = (OPENS.test(before) || LEAD.test(before)) && CLOSES.test(text.slice(to));
    return {
      from: match.index,
      to,
      readings: [/night|nacht/iu.test(match[1] ?? '') ? 0 : 720],
      belief: alone || twelve ? 'yes' : 'maybe',
      bare: false,
      halves: false,
      clock24: false,
    } as const;
  });
}

/** @returns every piece of a line that is or may be a time, in order, none over another */
export function findTimes(text: string): FoundTime[] {
  const clocks = [...text.matchAll(CLOCK)].flatMap((match) =>
    found(text, match, match[2]?.toLowerCase() ?? 'bare', Number(match[3] ?? 0)),
  );
  const packed = [...text.matchAll(PACKED)].flatMap((match) =>
    found(text, match, `packed${(match[1]?.length ?? 0) + 2}`, Number(match[2])),
  );
  const all = [...words(text), ...packed, ...clocks].sort((a, b) => a.from - b.from || b.to - a.to);
  let end = 0;
  return all.filter(({ from, to }) => {
    if (from < end) return false;
    end = to;
    return true;
  });
}

/** @returns where a time begins when the words before it that belong to it ("at", "from") are counted in */
export function withLead(text: string, from: number): number {
  let start = from;
  for (let lead = LEAD.exec(text.slice(0, start)); lead; lead = LEAD.exec(text.slice(0, start)))
    start = lead.index;
  return start;
}
