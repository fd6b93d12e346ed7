import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitView,
  type PlanView,
  pinch,
  pinchedView,
  toPlan,
  toScreen,
} from '../../client/parts/plan/plan-view.ts';

const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const spot = fc.record({ x: within(-50, 50), y: within(-50, 50) });
const anyView = fc.record<PlanView>({
  centre: spot,
  pxPerM: within(6, 240),
  upDeg: within(-720, 720),
  widthPx: within(100, 2000),
  heightPx: within(100, 2000),
});

describe('plan and screen', () => {
  it('puts what lies ahead at the top: facing 90°, five metres ahead, ten px a metre', () => {
    // Worked example of a heading-up plan: x right, y down, heading clockwise from plan-up.
    const view = { centre: { x: 0, y: 0 }, pxPerM: 10, upDeg: 90, widthPx: 360, heightPx: 800 };
    const ahead = toScreen(view, { x: 5, y: 0 });
    expect(ahead.x).toBeCloseTo(180, 9);
    expect(ahead.y).toBeCloseTo(350, 9);
    const behind = toScreen({ ...view, upDeg: 180 }, { x: -2, y: 3 });
    expect(behind.x).toBeCloseTo(200, 9);
    expect(behind.y).toBeCloseTo(370, 9);
  });

  it('comes back to the same spot from the screen', () => {
    fc.assert(
      fc.property(anyView, spot, (view, here) => {
        const back = toPlan(view, toScreen(view, here));
        expect(back.x).toBeCloseTo(here.x, 6);
        expect(back.y).toBeCloseTo(here.y, 6);
      }),
    );
  });

  it('fits every spot into the drawing, whatever is up', () => {
    fc.assert(
      fc.property(fc.array(spot, { minLength: 1, maxLength: 12 }), within(0, 360), (spots, upDeg) => {
        const view = fitView(spots, { widthPx: 390, heightPx: 400 }, upDeg);
        for (const point of spots.map((one) => toScreen(view, one))) {
          expect(point.x).toBeGreaterThan(0);
          expect(point.x).toBeLessThan(390);
          expect(point.y).toBeGreaterThan(0);
          expect(point.y).toBeLessThan(400);
        }
      }),
    );
  });
});

describe('two fingers', () => {
  const at = (x: number, y: number) => ({ x, y });

  it.each([
    // The similarity that takes two points to two points, worked by hand: scale, turn, shift.
    [at(100, 100), at(200, 100), at(50, 100), at(250, 100), 2, 0, at(-150, -100)],
    [at(100, 100), at(200, 100), at(100, 100), at(100, 200), 1, 90, at(200, 0)],
    [at(0, 0), at(10, 0), at(5, 5), at(5, 25), 2, 90, at(5, 5)],
  ] as const)('%o %o to %o %o', (fromA, fromB, toA, toB, scale, turnDeg, shift) => {
    const moved = pinch({ fromA, fromB, toA, toB });
    expect(moved?.scale).toBeCloseTo(scale, 9);
    expect(moved?.turnDeg).toBeCloseTo(turnDeg, 9);
    expect(moved?.shift.x).toBeCloseTo(shift.x, 9);
    expect(moved?.shift.y).toBeCloseTo(shift.y, 9);
  });

  it('says nothing while both are on one point', () => {
    expect(pinch({ fromA: at(1, 1), fromB: at(1, 1), toA: at(0, 0), toB: at(9, 9) })).toBeNull();
  });

  it('keep the spot between them under them', () => {
    const finger = fc.record({ x: within(0, 390), y: within(0, 500) });
    fc.assert(
      fc.property(anyView, finger, finger, finger, finger, (view, fromA, fromB, toA, toB) => {
        fc.pre(
          Math.hypot(fromA.x - fromB.x, fromA.y - fromB.y) > 20 &&
            Math.hypot(toA.x - toB.x, toA.y - toB.y) > 20,
        );
        const after = pinchedView(view, { fromA, fromB, toA, toB });
        const middle = (a: { x: number; y: number }, b: { x: number; y: number }) =>
          at((a.x + b.x) / 2, (a.y + b.y) / 2);
        const [held, under] = [toPlan(view, middle(fromA, fromB)), toPlan(after, middle(toA, toB))];
        expect(under.x).toBeCloseTo(held.x, 5);
        expect(under.y).toBeCloseTo(held.y, 5);
      }),
    );
  });
});
