import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../client/parts/number-field/read-number.ts';

const LIMITS = { least: 1, most: 200, decimals: 1 };

describe('a number that a person types', () => {
  it('is read with point or comma, with its unit or without', () => {
    for (const typed of ['36', ' 36 ', '36.0', '36,0', '36 m', '36m']) {
      expect(readNumber(typed, 'm', LIMITS)).toEqual({ ok: true, value: 36 });
    }
    expect(readNumber('−2,5', '', { least: -5, most: 5, decimals: 1 })).toEqual({ ok: true, value: -2.5 });
  });

  it('is refused with what was typed and the limit it breaks', () => {
    expect(readNumber('0', 'm', LIMITS)).toEqual({
      ok: false,
      reason: '0 m is too small: at least 1 m.',
    });
    expect(readNumber('1e9', '', LIMITS)).toEqual({ ok: false, reason: '“1e9” is not a number.' });
    expect(readNumber('1000000000', '', LIMITS)).toMatchObject({
      reason: expect.stringContaining('at most 200'),
    });
    expect(readNumber('', 'm', LIMITS)).toEqual({ ok: false, reason: 'Type a number.' });
  });

  it('is within its limits, or refused with a reason, whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.double().map(String), fc.integer().map(String)), (typed) => {
        const read = readNumber(typed, 'm', LIMITS);
        if (read.ok) expect(read.value >= 1 && read.value <= 200).toBe(true);
        else expect(read.reason.length).toBeGreaterThan(10);
      }),
    );
  });
});
