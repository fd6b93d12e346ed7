import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Spot } from '../../../core/geometry/spot.ts';
import { bearingDeg } from '../../../core/guidance/bearing.ts';
import { createHomography } from '../../../core/plan/homography.ts';
import { lengthFromSteps, stepFromKnownLength } from '../../../core/plan/pacing.ts';
import { checkedAgainst, createTrace } from '../../../core/plan/traced.ts';

const px = fc.double({ min: 0, max: 4000, noNaN: true });
const pixel = fc.record({ x: px, y: px });
const length = fc.double({ min: 1, max: 60, noNaN: true });
const bearing = fc.double({ min: 0, max: 359, noNaN: true });

function given<T extends object>(outcome: T | { readonly reason: string }): T {
  if ('reason' in outcome) throw new Error(outcome.reason);
  return outcome;
}

describe('a traced picture', () => {
  it('the traced wall has its length and the bearing asked for, and every pixel finds its way back', () => {
    fc.assert(
      fc.property(pixel, pixel, pixel, length, bearing, (a, b, other, lengthM, wantedDeg) => {
        fc.pre(distance(a, b) > 20);
        const trace = given(createTrace({ a, b, lengthM, bearingDeg: wantedDeg }));
        const [from, to] = [trace.toPlan(a), trace.toPlan(b)];
        expect(distance(from, to)).toBeCloseTo(lengthM, 6);
        const offDeg = Math.abs((bearingDeg(from, to) ?? 0) - wantedDeg);
        expect(Math.min(offDeg, 360 - offDeg)).toBeLessThan(1e-6);
        expect(distance(trace.toPicture(trace.toPlan(other)), other)).toBeLessThan(1e-6);
        // One scale in all directions.
        expect(distance(trace.toPlan(other), from)).toBeCloseTo(distance(other, a) * trace.mPerPx, 6);
      }),
    );
  });

  it('unturned, the picture’s top left is the plan’s', () => {
    const trace = given(createTrace({ a: { x: 100, y: 0 }, b: { x: 100, y: 500 }, lengthM: 5 }));
    expect(trace.toPlan({ x: 0, y: 0 })).toEqual({ x: 0, y: 0 });
    expect(trace.turnDeg).toBe(0);
    expect(trace.toPlan({ x: 200, y: 300 })).toEqual({ x: 2, y: 3 });
  });

  it('asks for a longer line under 300 px, for finer taps past 2 %', () => {
    const adviceFor = (lengthPx: number, sigmaPx?: number) =>
      given(createTrace({ a: { x: 0, y: 0 }, b: { x: lengthPx, y: 0 }, lengthM: 9 }, sigmaPx)).advice;
    expect(adviceFor(299)).toBe('longer-line');
    expect(adviceFor(300)).toBeNull();
    expect(adviceFor(300, 4.3)).toBe('finer-taps');
    expect(adviceFor(300, -1)).toBeNull();
  });

  it('refuses one point twice, no length and no number', () => {
    const [a, b] = [
      { x: 5, y: 5 },
      { x: 500, y: 5 },
    ];
    expect(createTrace({ a, b: { x: 9, y: 5 }, lengthM: 3 })).toEqual({
      reason: expect.stringContaining('4 px'),
    });
    expect(createTrace({ a, b, lengthM: -3 })).toEqual({ reason: expect.stringContaining('-3 m') });
    expect(createTrace({ a, b, lengthM: 3000 })).toEqual({ reason: expect.stringContaining('3000 m') });
    expect(createTrace({ a: { x: Number.NaN, y: 0 }, b, lengthM: 3 })).toHaveProperty('reason');
  });

  it('a second length shows a wrong one', () => {
    const trace = given(createTrace({ a: { x: 0, y: 0 }, b: { x: 400, y: 0 }, lengthM: 8 }));
    const check = checkedAgainst(trace.toPlan, { a: { x: 0, y: 0 }, b: { x: 0, y: 330 }, lengthM: 6 });
    expect(check?.tracedM).toBeCloseTo(6.6, 9);
    expect(check?.offFraction).toBeCloseTo(0.1, 9);
    expect(checkedAgainst(() => null, { a: { x: 0, y: 0 }, b: { x: 0, y: 1 }, lengthM: 6 })).toBeNull();
  });
});

const unitPart = fc.double({ min: 0.02, max: 0.98, noNaN: true });
/** A rectangle of floor as a camera sees it: a corner of every quarter, pushed about. */
const quad = fc
  .array(
    fc.tuple(fc.double({ min: 0, max: 0.3, noNaN: true }), fc.double({ min: 0, max: 0.3, noNaN: true })),
    {
      minLength: 4,
      maxLength: 4,
    },
  )
  .map((pushes) =>
    [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ].map(([x = 0, y = 0], index) => {
      const [dx, dy] = pushes[index] ?? [0, 0];
      return { x: 1000 * (x ? 1 - dx : dx), y: 1000 * (y ? 1 - dy : dy) };
    }),
  );

function floor(widthM: number, depthM: number): Spot[] {
  return [
    { x: 0, y: 0 },
    { x: widthM, y: 0 },
    { x: widthM, y: depthM },
    { x: 0, y: depthM },
  ];
}

/** How far c is off the line a–b. */
function offLineM(a: Spot, b: Spot, c: Spot): number {
  return Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / distance(a, b);
}

describe('a photo at a slant', () => {
  it('corners go to corners, lines to lines, and every spot finds its way back', () => {
    fc.assert(
      fc.property(quad, length, length, unitPart, unitPart, unitPart, (corners, widthM, depthM, u, v, w) => {
        const plan = floor(widthM, depthM);
        const map = given(createHomography(corners, plan));
        corners.forEach((corner, index) => {
          const there = map.toPlan(corner);
          expect(there && distance(there, plan[index] ?? corner)).toBeLessThan(1e-6);
        });
        const [a, b] = [
          { x: u * widthM, y: 0 },
          { x: widthM, y: v * depthM },
        ];
        const between = { x: a.x + (b.x - a.x) * w, y: a.y + (b.y - a.y) * w };
        const [pa, pb, pc] = [a, b, between].map(map.toPicture);
        if (!pa || !pb || !pc) throw new Error('beyond the horizon');
        const back = map.toPlan(pc);
        expect(back && distance(back, between)).toBeLessThan(1e-6);
        if (distance(pa, pb) > 1) expect(offLineM(pa, pb, pc)).toBeLessThan(1e-6);
      }),
    );
  });

  it('what lies on or beyond the horizon is nowhere', () => {
    // Side walls run together at (500, 0): 300 px above the far corners.
    const corners = [
      { x: 400, y: 300 },
      { x: 600, y: 300 },
      { x: 800, y: 900 },
      { x: 200, y: 900 },
    ];
    const { toPlan } = given(createHomography(corners, floor(10, 20)));
    expect(toPlan({ x: 500, y: 0 })).toBeNull();
    expect(toPlan({ x: 500, y: -40 })).toBeNull();
    expect(toPlan({ x: 500, y: 20 })?.y).toBeLessThan(0);
    // On the middle line, half-way down the picture is not half-way down the room.
    const middle = toPlan({ x: 500, y: 600 });
    expect(middle?.x).toBeCloseTo(5, 9);
    expect(middle?.y).toBeGreaterThan(10);
  });

  it('refuses corners that no photo of a floor has', () => {
    const plan = floor(10, 6);
    const [a, b, c, d] = floor(800, 600) as [Spot, Spot, Spot, Spot];
    const refused: [Spot[], RegExp][] = [
      [[a, b, c], /there are 3 and 4/],
      [[a, c, b, d], /cross over/],
      [[a, b, { x: 790, y: 0 }, d], /on one line/],
      [[a, b, { x: 200, y: 150 }, d], /inside the other three/],
      [[d, c, b, a], /other way round/],
      [[a, b, c, { x: Number.NaN, y: 0 }], /not a number/],
      [[a, a, c, d], /on one line/],
    ];
    for (const [corners, words] of refused) {
      expect(createHomography(corners, plan)).toEqual({ reason: expect.stringMatching(words) });
    }
  });
});

describe('a walked wall', () => {
  it('a step found on a known length gives that length back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 200 }),
        fc.double({ min: 0.35, max: 1.1, noNaN: true }),
        (steps, step) => {
          const { stepM } = given(stepFromKnownLength(steps * step, steps));
          const paced = given(lengthFromSteps(steps, stepM));
          expect(paced.lengthM).toBeCloseTo(steps * step, 9);
          // Never better than the steps themselves, never worse than a whole step more.
          expect(paced.spreadM).toBeGreaterThan(0.05 * paced.lengthM);
          expect(paced.spreadM).toBeLessThan(0.05 * paced.lengthM + stepM);
          expect(given(lengthFromSteps(steps, stepM, true)).spreadM).toBeLessThan(paced.spreadM);
        },
      ),
    );
  });

  it('refuses what is no step, with the value', () => {
    expect(stepFromKnownLength(10, 5)).toEqual({ reason: expect.stringContaining('2 m') });
    expect(stepFromKnownLength(10, 60)).toEqual({ reason: expect.stringContaining('0.17 m') });
    expect(stepFromKnownLength(1, 2)).toEqual({ reason: expect.stringContaining('2 steps') });
    expect(stepFromKnownLength(0, 9)).toHaveProperty('reason');
    expect(lengthFromSteps(0, 0.7)).toHaveProperty('reason');
    expect(lengthFromSteps(9, 7)).toEqual({ reason: expect.stringContaining('7 m') });
    expect(lengthFromSteps(900, 0.7)).toEqual({ reason: expect.stringContaining('630 m') });
  });
});
