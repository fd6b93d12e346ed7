/** What a line is called once its times are taken out. */
export interface NameIn {
  readonly name: string;
  /** The other columns, if it came from a table. */
  readonly note: string | null;
}

const EDGE_START = /^[\s\-–—−:|,;.•·*=>@~→/]+/u;
const EDGE_END = /[\s\-–—−:|,;•·*=>@~→/]+$/u;
const EMPTY_BRACKETS = /\(\s*\)|\[\s*\]/gu;
const COLUMN = /[\t|]|\s{3,}/u;

/** @returns a text without separators at its edges, and with single spaces */
export function tidy(text: string): string {
  return text
    .replace(EMPTY_BRACKETS, ' ')
    .replace(EDGE_START, '')
    .replace(EDGE_END, '')
    .replace(/\s+/gu, ' ');
}

/** A stretch of a line, with the brackets around it if there are any. */
function withBrackets(text: string, from: number, to: number): readonly [from: number, to: number] {
  const before = /[([]\s*$/u.exec(text.slice(0, from));
  const after = /^\s*[)\]]/u.exec(text.slice(to));
  return before && after ? [before.index, to + after[0].length] : [from, to];
}

/** @returns the text with each stretch blanked, so that all else stays where it was */
export function blanked(text: string, stretches: readonly (readonly [from: number, to: number])[]): string {
  return stretches.reduce((left, [from, to]) => {
    const [start, end] = withBrackets(left, from, to);
    return left.slice(0, start) + ' '.repeat(end - start) + left.slice(end);
  }, text);
}

/**
 * The name in what is left of a line: every word of it stands in the line, in the same order. In a line with columns
 * (tabs, bars) the first column that holds something is the name and the others are the note.
 */
export function nameIn(line: string, left: string): NameIn {
  const hasColumns = /[\t|]/u.test(line);
  const [name = '', ...others] = (hasColumns ? left.split(COLUMN) : [left])
    .map(tidy)
    .filter((part) => part !== '');
  return { name, note: others.length > 0 ? others.join(', ') : null };
}
