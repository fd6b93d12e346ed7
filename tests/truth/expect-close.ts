import { expect } from 'vitest';
import { toleranceOf } from './tolerances.ts';

/** Fails unless the value is there and lies within a named tolerance of the published one. */
export function expectClose(actual: number | null, published: number, tolerance: string, what: string): void {
  expect(actual, `${what}: no value`).not.toBeNull();
  const away = Math.abs((actual ?? Number.NaN) - published);
  expect(away, `${what}: ${actual} against ${published} (${tolerance})`).toBeLessThanOrEqual(
    toleranceOf(tolerance),
  );
}
