/** The value below which a share of the measurements lies (nearest rank). */
function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? Number.NaN;
}

export interface Spread {
  readonly p50: number;
  readonly p95: number;
  readonly p99: number;
}

export const spread = (values: readonly number[]): Spread => ({
  p50: percentile(values, 0.5),
  p95: percentile(values, 0.95),
  p99: percentile(values, 0.99),
});

const fixed = (value: number) => value.toFixed(2).padStart(8);

export const spreadLine = (name: string, { p50, p95, p99 }: Spread, unit: string): string =>
  `${name.padEnd(46)} ${fixed(p50)} ${fixed(p95)} ${fixed(p99)}  ${unit}`;

export const ratio = (a: Spread, b: Spread): Spread => ({
  p50: a.p50 / b.p50,
  p95: a.p95 / b.p95,
  p99: a.p99 / b.p99,
});
