const THIRD_SIGNS = ['', ' +⅓', ' +⅔'] as const;

/** Lowest fraction that is still written out (1/1048576): far under any head, only a guard. */
const LOWEST_WHOLE_STOPS = -20;

/**
 * How a power is written on a head: the lower whole fraction and the thirds above it.
 *
 * @param powerStops log2 of the power fraction [stops]: 0 is full, −6 is 1/64; above 0 is shown as full
 * @returns "1/1", "1/64", "1/64 +⅓" …; "not known" when it is not a number
 */
export function powerLabel(powerStops: number): string {
  if (!Number.isFinite(powerStops)) return 'not known';
  const clamped = Math.max(LOWEST_WHOLE_STOPS, Math.min(0, powerStops));
  const thirds = Math.round(clamped * 3);
  const wholeStops = Math.floor(thirds / 3);
  const sign = THIRD_SIGNS[thirds - wholeStops * 3] ?? '';
  return `1/${2 ** -wholeStops}${sign}`;
}
