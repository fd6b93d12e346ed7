import fc from 'fast-check';
import { expect, test } from 'vitest';
import { panned, toPlan } from '../../../client/parts/plan/plan-view.ts';

test('a plan that is pulled along keeps the spot under the finger, however it is turned and sized', () => {
  const coordinate = fc.integer({ min: -400, max: 400 });
  fc.assert(
    fc.property(
      fc.record({ x: coordinate, y: coordinate }),
      fc.record({ x: coordinate, y: coordinate }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: 6, max: 240, noNaN: true }),
      (from, to, upDeg, pxPerM) => {
        const view = { centre: { x: 9, y: 6 }, pxPerM, upDeg, widthPx: 390, heightPx: 500 };
        const held = toPlan(view, from);
        const now = toPlan(panned(view, from.x - to.x, from.y - to.y), to);
        expect(now.x).toBeCloseTo(held.x, 6);
        expect(now.y).toBeCloseTo(held.y, 6);
      },
    ),
  );
});
