import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineOf, type Shape } from '../../../core/geometry/shape.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import { beyondM, overlapM } from '../../../core/plan/overlap.ts';
import type { PlanFeature } from '../../../core/plan/plan-feature.ts';
import { planProblems } from '../../../core/plan/plan-problem.ts';
import { tableRows } from '../../../core/plan/table-rows.ts';

/** A U: two wings around a court from x = 8 to 10, open at the top. */
const U_ROOM: Spot[] = [
  { x: 0, y: 0 },
  { x: 8, y: 0 },
  { x: 8, y: 6 },
  { x: 10, y: 6 },
  { x: 10, y: 0 },
  { x: 18, y: 0 },
  { x: 18, y: 12 },
  { x: 0, y: 12 },
];

function box(widthM: number, depthM: number): Shape {
  return { kind: 'box', widthM, depthM };
}

function feature(name: string, at: Spot, shape: Shape, change: Partial<PlanFeature> = {}): PlanFeature {
  const turnDeg = change.turnDeg ?? 0;
  const drawn = {
    id: name,
    kind: 'table',
    name,
    at,
    turnDeg,
    outline: outlineOf({ at, turnDeg, shape }),
  } as const;
  return { ...drawn, blocksWalking: true, ...change };
}

function found(...features: PlanFeature[]): string[] {
  return planProblems(U_ROOM, features).map(({ level, reason }) => `${level}: ${reason}`);
}

describe('problems of a plan', () => {
  it('none where tables stand apart in the room, however they are turned', () => {
    const spots = tableRows({
      at: { x: 1.5, y: 8 },
      rows: 2,
      columns: 4,
      gapM: 0.6,
      turnDeg: 0,
      widthM: 1.8,
      depthM: 1,
    });
    if ('reason' in spots) throw new Error(spots.reason);
    expect(found(...spots.spots.map((at, index) => feature(`Table ${index}`, at, box(1.8, 1))))).toEqual([]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359, noNaN: true }), (turnDeg) => {
        // Corners reach 1.03 m from the middle.
        expect(found(feature('Table 1', { x: 2, y: 3 }, box(1.8, 1), { turnDeg }))).toEqual([]);
      }),
    );
  });

  it('outside, into a wall, across a court, round an inward corner', () => {
    expect(found(feature('Bar', { x: 25, y: 4 }, box(3, 1)))).toEqual(['problem: Bar is outside the room.']);
    expect(found(feature('Bar', { x: 9, y: 2 }, box(1.5, 1)))).toEqual(['problem: Bar is outside the room.']);
    // Just behind the wall, touching it.
    expect(found(feature('Bar', { x: 18.5, y: 4 }, box(1, 1)))).toEqual([
      'problem: Bar is outside the room.',
    ]);
    expect(found(feature('Bar', { x: 17, y: 4 }, box(2.6, 1)))).toEqual([
      'problem: Bar goes 0.3 m into a wall.',
    ]);
    // Both ends are in the room, the court is not.
    expect(found(feature('Screen', { x: 9, y: 3 }, box(4, 0.2)))).toEqual([
      'problem: Screen goes 1 m into a wall.',
    ]);
    // All corners are in the room; one of the court's is in the table.
    const poked = feature(
      'Table 2',
      { x: 9, y: 7 },
      {
        kind: 'outline',
        points: [
          { x: -3, y: 2 },
          { x: 0, y: -3 },
          { x: 3, y: 2 },
        ],
      },
    );
    expect(found(poked)).toHaveLength(1);
    // Flush with the wall, and 4 cm into it: drawn loosely.
    expect(found(feature('Bar', { x: 17, y: 4 }, box(2, 1)))).toEqual([]);
    expect(found(feature('Bar', { x: 17.04, y: 4 }, box(2, 1)))).toEqual([]);
  });

  it('two solid things in each other, once a pair', () => {
    const table = feature('Table 1', { x: 3, y: 9 }, box(3, 1));
    const across = feature('Table 2', { x: 3, y: 9 }, box(1, 3));
    expect(planProblems(U_ROOM, [table, across])).toEqual([
      {
        id: 'Table 1',
        otherId: 'Table 2',
        level: 'problem',
        reason: 'Table 1 and Table 2 are 0.5 m in each other.',
      },
    ]);
    const same = feature('Table 3', { x: 3, y: 9 }, box(3, 1));
    expect(found(table, same)).toHaveLength(1);
    const inside = feature('Pillar', { x: 2, y: 9 }, { kind: 'round', radiusM: 0.3 });
    expect(found(table, inside)).toHaveLength(1);
    expect(found(table, feature('Table 4', { x: 6, y: 9 }, box(3, 1)))).toEqual([]);
    expect(found(table, feature('Dance floor', { x: 3, y: 9 }, box(4, 4), { blocksWalking: false }))).toEqual(
      [],
    );
    expect(planProblems(U_ROOM, [table, across], 'imperial')[0]?.reason).toContain('1.5 ft');
  });

  it('a door across its wall is none; an exit in the middle of the floor is a note', () => {
    const exit = { kind: 'exit', blocksWalking: false } as const;
    expect(found(feature('Exit 1', { x: 18, y: 5 }, box(0.3, 1.2), exit))).toEqual([]);
    expect(found(feature('Exit 1', { x: 17.6, y: 5 }, box(0.2, 1.2), exit))).toEqual([]);
    expect(found(feature('Exit 1', { x: 15, y: 8 }, box(1, 1), exit))).toEqual([
      'note: Exit 1 is 2.5 m from the nearest wall.',
    ]);
    expect(found(feature('Door', { x: 15, y: 14.5 }, box(1, 1), { ...exit, kind: 'door' }))).toEqual([
      'note: Door is 2 m from the nearest wall.',
    ]);
  });

  it('a plan without a room still shows what is in each other', () => {
    const pair = [feature('a', { x: 90, y: 0 }, box(1, 1)), feature('b', { x: 90, y: 0 }, box(1, 1))];
    expect(planProblems([], pair)).toHaveLength(1);
    expect(planProblems(U_ROOM, [{ ...feature('a', { x: 90, y: 0 }, box(1, 1)), outline: [] }])).toEqual([]);
  });
});

const place = fc.double({ min: -4, max: 4, noNaN: true });
const size = fc.double({ min: 0.3, max: 4, noNaN: true });

describe('how deep outlines lie in each other', () => {
  it('two upright boxes: above zero just where they share floor, at most half the smaller side of one', () => {
    fc.assert(
      fc.property(place, place, size, size, size, size, (x, y, w1, d1, w2, d2) => {
        const one = outlineOf({ at: { x: 0, y: 0 }, turnDeg: 0, shape: box(w1, d1) });
        const other = outlineOf({ at: { x, y }, turnDeg: 0, shape: box(w2, d2) });
        const sharedX = Math.min(w1 / 2, x + w2 / 2) - Math.max(-w1 / 2, x - w2 / 2);
        const sharedY = Math.min(d1 / 2, y + d2 / 2) - Math.max(-d1 / 2, y - d2 / 2);
        fc.pre(Math.abs(sharedX) > 1e-6 && Math.abs(sharedY) > 1e-6);
        const deepM = overlapM(one, other);
        expect(deepM > 0).toBe(sharedX > 0 && sharedY > 0);
        expect(overlapM(other, one)).toBeCloseTo(deepM, 9);
        if (deepM > 0)
          expect(deepM).toBeLessThanOrEqual(Math.max(Math.min(w1, d1), Math.min(w2, d2)) / 2 + 1e-9);
      }),
    );
  });

  it('a box that goes past a straight wall goes past it by its own part', () => {
    const room = outlineOf({ at: { x: 0, y: 0 }, turnDeg: 0, shape: box(20, 20) });
    fc.assert(
      fc.property(place, fc.double({ min: -3, max: 3, noNaN: true }), size, (y, overM, depthM) => {
        const outline = outlineOf({ at: { x: 8 + overM, y }, turnDeg: 0, shape: box(4, depthM) });
        expect(beyondM(outline, room)).toBeCloseTo(Math.max(0, overM), 6);
      }),
    );
  });
});
