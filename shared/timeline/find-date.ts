/** A date in a line: where it stands, and which days it may mean ('YYYY-MM-DD'). */
export interface FoundDate {
  readonly from: number;
  readonly to: number;
  readonly days: readonly string[];
  /** False for "05/06", which may be a day or two times. */
  readonly sure: boolean;
}

const MONTHS = [
  ['january', 'jan', 'januar'],
  ['february', 'feb', 'februar'],
  ['march', 'mar', 'märz'],
  ['april', 'apr'],
  ['may', 'mai'],
  ['june', 'jun', 'juni'],
  ['july', 'jul', 'juli'],
  ['august', 'aug'],
  ['september', 'sep', 'sept'],
  ['october', 'oct', 'oktober', 'okt'],
  ['november', 'nov'],
  ['december', 'dec', 'dezember', 'dez'],
] as const;
const MONTH = MONTHS.flat()
  .sort((a, b) => b.length - a.length)
  .join('|');
const WEEKDAY =
  '(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag';
const BEFORE = `(?<![\\p{L}\\d.:/-])(?:(?:${WEEKDAY}|mo|di|mi|do|fr|sa|so)\\.?,?\\s+)?(?:the\\s+)?`;

type Parts = readonly [day: string | undefined, month: string | undefined, year: string | undefined];

const monthNumber = (name: string | undefined): string =>
  String(MONTHS.findIndex((names) => (names as readonly string[]).includes(name?.toLowerCase() ?? '')) + 1);

/** A way of writing a date, and how its groups are read. */
type Way = readonly [pattern: RegExp, read: (match: RegExpExecArray) => readonly Parts[]];
/** Most explicit first. */
const WAYS: readonly Way[] = [
  [new RegExp(`${BEFORE}(\\d{4})-(\\d{2})-(\\d{2})(?![\\d-])`, 'iu'), (m) => [[m[3], m[2], m[1]]]],
  [
    new RegExp(
      `${BEFORE}(\\d{1,2})\\.(?:\\s(?=\\d{1,2}\\.\\s?\\d{4}(?!\\d)))?(\\d{1,2})\\.(?:\\s?(\\d{4})|(\\d{2}))?(?![\\d:.])`,
      'iu',
    ),
    (m) => [[m[1], m[2], m[3] ?? m[4]]],
  ],
  [
    new RegExp(`${BEFORE}(\\d{1,2})/(\\d{1,2})/(\\d{4}|\\d{2})(?![\\d/:])`, 'iu'),
    (m) => [
      [m[1], m[2], m[3]],
      [m[2], m[1], m[3]],
    ],
  ],
  [
    new RegExp(
      `${BEFORE}(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s+(?:of\\s+)?(${MONTH})(?!\\p{L})\\.?(?:,?\\s+(\\d{4})(?!\\d))?`,
      'iu',
    ),
    (m) => [[m[1], monthNumber(m[2]), m[3]]],
  ],
  [
    new RegExp(
      `${BEFORE}(${MONTH})(?!\\p{L})\\.?\\s+(\\d{1,2})(?!\\d|[:.]\\d|\\s?[ap]\\.?m)(?:st|nd|rd|th)?(?:,?\\s+(\\d{4})(?!\\d))?`,
      'iu',
    ),
    (m) => [[m[2], monthNumber(m[1]), m[3]]],
  ],
  [
    /(?<![\p{L}\d.:/])(\d{1,2})\/(\d{1,2})(?![\d/:])/u,
    (m) => [
      [m[1], m[2], undefined],
      [m[2], m[1], undefined],
    ],
  ],
];

/** 'YYYY-MM-DD', or null where there is no such day; without a year that of the night. */
function dayOf([day, month, year]: Parts, nightIso: string): string | null {
  const [dayNumber, monthNo] = [Number(day), Number(month)];
  if (!(dayNumber >= 1 && dayNumber <= 31 && monthNo >= 1 && monthNo <= 12)) return null;
  const fullYear = year === undefined ? nightIso.slice(0, 4) : year.length === 2 ? `20${year}` : year;
  return `${fullYear}-${String(monthNo).padStart(2, '0')}-${String(dayNumber).padStart(2, '0')}`;
}

/**
 * The first date in a text, or null.
 *
 * @param nightIso the night's date, which gives the year where none is written
 */
export function findDate(text: string, nightIso: string): FoundDate | null {
  for (const [index, [pattern, read]] of WAYS.entries()) {
    const match = pattern.exec(text);
    if (!match) continue;
    const days = read(match).flatMap((parts) => dayOf(parts, nightIso) ?? []);
    if (days.length === 0) continue;
    return {
      from: match.index,
      to: match.index + match[0].length,
      days: [...new Set(days)],
      sure: index < WAYS.length - 1,
    };
  }
  return null;
}

const ONLY_WEEKDAY = new RegExp(`^(?:on\\s+)?(?:${WEEKDAY})\\W*$`, 'iu');

/** Whether a text is a weekday's name and nothing more. */
export const isWeekday = (text: string): boolean => ONLY_WEEKDAY.test(text.trim());
