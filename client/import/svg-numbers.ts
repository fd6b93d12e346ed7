import type { LengthUnit } from './length-unit.ts';

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/;

/** @returns the numbers of a list such as `1,2 3-4.5.6`, in order, up to `most`; whatever else stands there is passed over */
export function numbersIn(text: string, most: number): number[] {
  const numbers: number[] = [];
  for (const [found] of text.matchAll(new RegExp(NUMBER, 'g'))) {
    if (numbers.length >= most) break;
    numbers.push(Number(found));
  }
  return numbers;
}

/** A length of more letters is none; longer texts are not searched. */
const LONGEST_LENGTH = 40;

/** A length as an attribute gives it. */
export interface SvgLength {
  readonly value: number;
  /** Null where the number counts pixels or the drawing's own units. */
  readonly unit: LengthUnit | null;
}

/** Units that are lengths one can measure; px, em, % and the like are not. A point is 1/72 inch, a pica 1/6 (CSS Values 4). */
const MEASURED: ReadonlyMap<string, { readonly unit: LengthUnit; readonly times: number }> = new Map([
  ['mm', { unit: 'mm', times: 1 }],
  ['cm', { unit: 'cm', times: 1 }],
  ['in', { unit: 'in', times: 1 }],
  ['pt', { unit: 'in', times: 1 / 72 }],
  ['pc', { unit: 'in', times: 1 / 6 }],
]);

/** @returns a length; null for what is none, and for parts of something else (%) */
export function svgLength(text = ''): SvgLength | null {
  if (text.length > LONGEST_LENGTH) return null;
  const found = new RegExp(`^\\s*(${NUMBER.source})\\s*([a-z%]*)\\s*$`, 'i').exec(text);
  const value = Number(found?.[1]);
  if (!found || !Number.isFinite(value) || found[2] === '%') return null;
  const measured = MEASURED.get((found[2] ?? '').toLowerCase());
  return measured ? { value: value * measured.times, unit: measured.unit } : { value, unit: null };
}
