import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batteryShare, flashesLeft, LEAST_RECYCLE_S, recycleS } from '../../../core/light/powers/recycle.ts';

const power = fc.integer({ min: -21, max: 0 }).map((thirds) => thirds / 3);

describe('recycle time', () => {
  it('halves with every stop less, down to the least', () => {
    expect(recycleS(2.4, 0)).toBeCloseTo(2.4, 12);
    expect(recycleS(2.4, -1)).toBeCloseTo(1.2, 12);
    expect(recycleS(2.4, -4)).toBeCloseTo(0.15, 12);
    expect(recycleS(2.4, -6)).toBe(LEAST_RECYCLE_S);
    expect(recycleS(2.4, -6, 0.02)).toBeCloseTo(0.0375, 12);
    expect(recycleS(2.4, 1)).toBeCloseTo(2.4, 12);
  });
});

describe('flashes left', () => {
  it('full-power flashes go by twos, fours … at lower power', () => {
    expect(flashesLeft(150, [], 0)).toBe(150);
    expect(flashesLeft(150, [], -6)).toBe(9600);
    expect(flashesLeft(150, [{ count: 75, powerStops: 0 }], -1)).toBe(150);
    expect(batteryShare(150, [{ count: 75, powerStops: 0 }])).toBeCloseTo(0.5, 12);
  });

  it('firing what is left empties the battery to less than one flash, and never below nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 400 }),
        fc.array(fc.record({ count: fc.integer({ min: 0, max: 300 }), powerStops: power }), { maxLength: 4 }),
        power,
        (fresh, fired, powerStops) => {
          const left = flashesLeft(fresh, fired, powerStops);
          const energy = (flashes: number) =>
            fired.reduce((sum, shot) => sum + shot.count * 2 ** shot.powerStops, flashes * 2 ** powerStops);
          if (left > 0) expect(energy(left)).toBeLessThanOrEqual(fresh * (1 + 1e-9));
          expect(energy(left + 1)).toBeGreaterThan(fresh * (1 - 1e-9));
        },
      ),
    );
  });

  it('nothing from a battery without flashes', () => {
    expect(flashesLeft(0, [], -6)).toBe(0);
    expect(batteryShare(0, [])).toBe(0);
  });
});
