import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ambientLuxAt } from '../../../core/light/lamps/ambient-at.ts';
import { openGuideNumberM } from '../../../core/light/lamps/guide-number-meaning.ts';

const spot = fc.record({
  x: fc.double({ min: 0, max: 20, noNaN: true }),
  y: fc.double({ min: 0, max: 20, noNaN: true }),
});
const readings = fc.uniqueArray(fc.record({ spot, ev100: fc.double({ min: -2, max: 10, noNaN: true }) }), {
  minLength: 1,
  maxLength: 6,
  selector: ({ spot: { x, y } }) => `${x} ${y}`,
});

describe('ambient at a spot', () => {
  it('is the reading where one was taken', () => {
    fc.assert(
      fc.property(readings, (measured) => {
        for (const { spot: at, ev100 } of measured) {
          const apart = measured.filter(
            (other) => Math.hypot(other.spot.x - at.x, other.spot.y - at.y) > 1e-9,
          );
          fc.pre(apart.length === measured.length - 1);
          expect(Math.log2((ambientLuxAt(measured, at, null) ?? 0) / 2.5)).toBeCloseTo(ev100, 9);
        }
      }),
    );
  });

  it('lies between the readings elsewhere, in whatever order they come', () => {
    fc.assert(
      fc.property(readings, spot, (measured, at) => {
        const ev100 = Math.log2((ambientLuxAt(measured, at, 20) ?? 0) / 2.5);
        const values = measured.map((reading) => reading.ev100);
        expect(ev100).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(ev100).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        const back = Math.log2((ambientLuxAt([...measured].reverse(), at, 20) ?? 0) / 2.5);
        expect(back).toBeCloseTo(ev100, 9);
      }),
    );
  });

  it('weighs in stops with the inverse square of the distance', () => {
    const measured = [
      { spot: { x: 0, y: 0 }, ev100: 2 },
      { spot: { x: 3, y: 0 }, ev100: 7 },
    ];
    // 1 m from EV 2, 2 m from EV 7: weights 4 and 1, so EV 3, which is 20 lx.
    expect(ambientLuxAt(measured, { x: 1, y: 0 }, null)).toBeCloseTo(20, 9);
    expect(ambientLuxAt(measured, { x: 1, y: 0 }, null, 500)).toBeCloseTo(40, 9);
  });

  it('falls back on the room, and knows when it knows nothing', () => {
    expect(ambientLuxAt([], { x: 1, y: 1 }, 4)).toBe(40);
    expect(ambientLuxAt([], { x: 1, y: 1 }, null)).toBeNull();
    expect(ambientLuxAt([{ spot: { x: 9, y: 9 }, ev100: 0 }], { x: 1, y: 1 }, 4)).toBeCloseTo(2.5, 9);
  });
});

describe('what a guide number means', () => {
  it('a printed one loses half a stop of light, an open one nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 100, noNaN: true }), (guideNumberM) => {
        expect(openGuideNumberM(guideNumberM, 'open')).toBe(guideNumberM);
        const stops = 2 * Math.log2(guideNumberM / openGuideNumberM(guideNumberM, 'printed'));
        expect(stops).toBeCloseTo(0.5, 9);
      }),
    );
  });
});
