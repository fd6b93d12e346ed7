/** How long something takes, and where the line says so. */
export interface FoundDuration {
  readonly from: number;
  readonly to: number;
  readonly durationMin: number;
}

const HOURS = 'hours?|hrs?|h|std\\.?|stunden?';
const MINUTES = "minutes?|minuten?|mins?\\.?|['’′]";
const DURATION = new RegExp(
  `([(\\[]\\s*)?(?<![\\p{L}\\d.:,])(?:ca\\.?\\s*|approx\\.?\\s*|about\\s+|for\\s+|~\\s*)?` +
    `(?:(\\d{1,2}(?:[.,]\\d{1,2})?)\\s?(?:${HOURS})(?![\\p{L}\\d])(?:\\s*(?:and\\s+)?(\\d{1,2})\\s?(?:${MINUTES})(?![\\p{L}\\d]))?` +
    `|(\\d{1,3})\\s?-?(?:${MINUTES})(?![\\p{L}\\d]))(\\s*[)\\]])?`,
  'giu',
);

/** After these words a span of time says when, not how long. */
const SAYS_WHEN = /(?:^|[\s(])(?:in|after|every|within|last|first|next|nach|alle|before|vor)\s*$/iu;
const ENDS_COLUMN = /^\s*(?:$|[|\t,;–—-])/u;

/**
 * The length that a line gives its moment, "(20 min)", "Dinner, 1.5 hours", or null. It counts in brackets, at the
 * end and in a column of its own; inside a sentence ("2 hours of dancing") it is a part of the name.
 */
export function findDuration(text: string): FoundDuration | null {
  for (const match of text.matchAll(DURATION)) {
    const from = match.index;
    const to = from + match[0].length;
    const bracketed = match[1] !== undefined && match[5] !== undefined;
    const before = text.slice(0, from);
    const stands =
      bracketed || (before.trim() !== '' && ENDS_COLUMN.test(text.slice(to)) && !SAYS_WHEN.test(before));
    const hours = Number((match[2] ?? '0').replace(',', '.'));
    // "19 h" is a time of day.
    if (!stands || hours >= 13) continue;
    const durationMin = Math.round(hours * 60) + Number(match[3] ?? 0) + Number(match[4] ?? 0);
    if (durationMin > 0 && durationMin < 13 * 60) return { from, to, durationMin };
  }
  return null;
}
