import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlacedLabel, placeLabels } from '../../client/parts/plan/label-layout.ts';

const SIZE = { widthPx: 390, heightPx: 420 };
const point = fc.record({
  x: fc.double({ min: -50, max: 440, noNaN: true }),
  y: fc.double({ min: -50, max: 470, noNaN: true }),
});
const label = fc.record({
  id: fc.uuid(),
  text: fc.string({ minLength: 1, maxLength: 14 }),
  at: point,
  weight: fc.integer({ min: 0, max: 9 }),
});

/** Measured here on its own terms: letters of 6 px, lines of 13 px, a little less than what the layout allows for. */
const touch = (a: PlacedLabel, b: PlacedLabel) =>
  Math.abs(a.x - b.x) < (a.text.length + b.text.length) * 3 && Math.abs(a.y - b.y) < 13;

describe('names on the plan', () => {
  it('never lie over each other, and never over a sign', () => {
    fc.assert(
      fc.property(fc.array(label, { maxLength: 30 }), fc.array(point, { maxLength: 5 }), (labels, signs) => {
        const placed = placeLabels(labels, signs, SIZE);
        for (const [index, one] of placed.entries()) {
          for (const other of placed.slice(index + 1)) expect(touch(one, other)).toBe(false);
          for (const sign of signs)
            expect(Math.abs(one.x - sign.x) < one.text.length * 3 && Math.abs(one.y - sign.y) < 12).toBe(
              false,
            );
        }
      }),
    );
  });

  it('leave out the lighter of two that lie on one place', () => {
    const at = { x: 200, y: 200 };
    const crowd = Array.from({ length: 6 }, (_, index) => ({
      id: `${index}`,
      text: 'Fern table',
      at,
      weight: index,
    }));
    const kept = placeLabels(crowd, [], SIZE).map(({ id }) => id);
    expect(kept).toContain('5');
    expect(kept).not.toContain('0');
  });
});
