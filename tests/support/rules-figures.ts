/** A number with its unit, brought to one unit per kind, so that "10 minutes" and "600 s" are the same. */
export type Quantity = { readonly value: number; readonly unit: string };

/** A quantity as a document states it. */
export type Figure = Quantity & {
  /** As written */
  readonly said: string;
  readonly line: number;
  /** The words around it: from the figure before to the figure after, within its paragraph, item or row */
  readonly context: string;
};

/** Unit as written → the unit of its kind and how many of that it is. */
const UNITS: Readonly<Record<string, readonly [unit: string, factor: number]>> = {
  ms: ['s', 0.001],
  millisecond: ['s', 0.001],
  s: ['s', 1],
  second: ['s', 1],
  min: ['s', 60],
  minute: ['s', 60],
  h: ['s', 3600],
  hour: ['s', 3600],
  day: ['s', 86400],
  byte: ['bytes', 1],
  kB: ['bytes', 1000],
  KiB: ['bytes', 1024],
  MB: ['bytes', 1_000_000],
  MiB: ['bytes', 1024 * 1024],
  bit: ['bits', 1],
  px: ['px', 1],
  mm: ['m', 0.001],
  cm: ['m', 0.01],
  m: ['m', 1],
  metre: ['m', 1],
  kg: ['kg', 1],
  lx: ['lx', 1],
  stop: ['stops', 1],
  probe: ['probes', 1],
  line: ['lines', 1],
  '%': ['%', 1],
  '°': ['°', 1],
};

const WORDS = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const TENS: Readonly<Record<string, number>> = {
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  forty: 40,
  fifty: 50,
  sixty: 60,
  ninety: 90,
};

const UNIT = Object.keys(UNITS)
  .sort((a, b) => b.length - a.length)
  .join('|');
const WORD = [...WORDS, ...Object.keys(TENS)].join('|');
/** "a minute" counts only where it bounds something; "twice a minute" is a rate. */
const BOUNDING_A = '(?<=\\b(?:over|within|after|under|than|for) )an?';
/** What stands before a number that is part of a name, a path, a fraction, a date or a standard. */
const NOT_AFTER = '(?<![\\w./-]|\\d[:,]|\\b(?:ISO|IEC|ANSI|CIE|RFC|WCAG|PH2)[ /])';
const FIGURE = new RegExp(
  [
    `${NOT_AFTER}(?<wide>\\d+) ?× ?(?<high>\\d+)(?! ?×)\\b`,
    `(?:${NOT_AFTER}(?<digits>\\d+(?:\\.\\d+)?)[ \\u00a0-]?|\\b(?<word>${WORD}|${BOUNDING_A})[ \\u00a0-])(?<unit>${UNIT})(?:s|es)?(?![\\w/²³·])`,
    `${NOT_AFTER}(?<bare>\\d+\\.\\d+|\\d{4,})(?![\\w/-]|\\.\\d|:\\d)`,
  ].join('|'),
  'gi',
);

function numberOf(word: string): number {
  const lower = word.toLowerCase();
  if (lower === 'a' || lower === 'an') return 1;
  return TENS[lower] ?? WORDS.indexOf(lower);
}

function quantityOf(groups: Readonly<Record<string, string | undefined>>): Quantity | null {
  const { wide, high, digits, word, unit, bare } = groups;
  if (wide && high) return { value: Number(wide), unit: `× ${high}` };
  if (bare) return { value: Number(bare), unit: '' };
  const [base, factor] = UNITS[unit ?? ''] ?? UNITS[(unit ?? '').toLowerCase()] ?? [];
  if (base === undefined || factor === undefined) return null;
  return { value: (digits ? Number(digits) : numberOf(word ?? '')) * factor, unit: base };
}

/** Where a paragraph, an item, a heading, a row or a line of a block begins. */
const NEW_BLOCK = /^\s*(?:[-*] |\d+\. |#|\||```|$)/;

function blocksOf(markdown: string): { readonly text: string; readonly line: number }[] {
  const blocks: { text: string; line: number }[] = [];
  let fenced = false;
  for (const [at, text] of markdown.split('\n').entries()) {
    const last = blocks.at(-1);
    if (last && !fenced && !NEW_BLOCK.test(text) && last.text !== '') last.text += `\n${text}`;
    else blocks.push({ text, line: at + 1 });
    if (/^\s*```/.test(text)) fenced = !fenced;
  }
  return blocks;
}

/**
 * Every number with a unit in a document, and every number that needs none to be a fact: one of four digits or
 * more (a port, a code), one with a decimal point, a size (390 × 844).
 */
export function figuresIn(markdown: string): Figure[] {
  return blocksOf(markdown).flatMap(({ text, line }) => {
    const found = [...text.matchAll(FIGURE)].flatMap((match) => {
      const quantity = quantityOf(match.groups ?? {});
      return quantity ? [{ ...quantity, said: match[0], at: match.index }] : [];
    });
    return found.map(({ value, unit, said, at }, index): Figure => {
      const before = found[index - 1];
      const start = before ? before.at + before.said.length : 0;
      const context = text
        .slice(start, found[index + 1]?.at ?? text.length)
        .replace(/[*`]|\b_|_\b/g, '')
        .replace(/\s+/g, ' ');
      return { value, unit, said, line: line + text.slice(0, at).split('\n').length - 1, context };
    });
  });
}

/** Is one quantity the other, but for the last digits of a binary fraction? */
export function isSameQuantity(one: Quantity, other: Quantity): boolean {
  return one.unit === other.unit && Math.abs(one.value - other.value) <= 1e-9 * Math.abs(other.value);
}
