export interface NumberLimits {
  readonly least: number;
  readonly most: number;
  readonly decimals: number;
}

export type ReadNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly reason: string };

/** A plain number: sign, digits, one point or comma. Nothing that a phone's keyboard slips in between. */
const PLAIN = /^[-−+]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** Reads what a person typed as a number within limits, or says in plain words why it cannot be used. */
export function readNumber(typed: string, unit: string, limits: NumberLimits): ReadNumber {
  const text = typed.trim().replace(unit, '').trim();
  if (text === '') return { ok: false, reason: 'Type a number.' };
  if (!PLAIN.test(text)) return { ok: false, reason: `“${typed.trim().slice(0, 20)}” is not a number.` };
  const value = Number(text.replace(',', '.').replace('−', '-'));
  const { least, most } = limits;
  const of = unit ? ` ${unit}` : '';
  if (value < least) return { ok: false, reason: `${text}${of} is too small: at least ${least}${of}.` };
  if (value > most) return { ok: false, reason: `${text}${of} is too much: at most ${most}${of}.` };
  return { ok: true, value };
}
