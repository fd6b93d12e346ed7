import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf } from '../../../core/geometry/box.ts';
import { distanceToOutline } from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { add, distance, rotate, type Spot, subtract } from '../../../core/geometry/spot.ts';
import { type Arranged, aligned, evenlySpaced, type Moved, turnedBy } from '../../../core/plan/arrange.ts';
import { duplicateSpots, tableRows } from '../../../core/plan/table-rows.ts';

// −0 is not 0 to a test, and it is to a plan.
const place = fc.double({ min: -20, max: 20, noNaN: true }).map((value) => value + 0);
const size = fc.double({ min: 0.2, max: 5, noNaN: true });
const turn = fc.double({ min: 0, max: 359, noNaN: true });
const features = fc
  .array(fc.tuple(place, place, size, size, turn), { minLength: 1, maxLength: 7 })
  .map((all) =>
    all.map(([x, y, widthM, depthM, turnDeg], index): Arranged => {
      const at = { x, y };
      return {
        id: `f${index}`,
        at,
        turnDeg,
        outline: outlineOf({ at, turnDeg, shape: { kind: 'box', widthM, depthM } }),
      };
    }),
  );

function boxAfter(feature: Arranged, moved: Moved | undefined) {
  if (moved?.id !== feature.id) throw new Error('order is lost');
  return boxOf(feature.outline.map((corner) => add(corner, subtract(moved.at, feature.at))));
}

function spotsOf(
  outcome: { readonly spots: readonly Spot[] } | { readonly reason: string },
): readonly Spot[] {
  if ('reason' in outcome) throw new Error(outcome.reason);
  return outcome.spots;
}

const edges = {
  left: (one: ReturnType<typeof boxOf>) => one.leastX,
  right: (one: ReturnType<typeof boxOf>) => one.mostX,
  top: (one: ReturnType<typeof boxOf>) => one.leastY,
  bottom: (one: ReturnType<typeof boxOf>) => one.mostY,
  'middle-across': (one: ReturnType<typeof boxOf>) => (one.leastY + one.mostY) / 2,
  'middle-down': (one: ReturnType<typeof boxOf>) => (one.leastX + one.mostX) / 2,
};

describe('arranging features', () => {
  it('aligned edges and middles are really on one line, and nothing moves the other way', () => {
    const by = fc.constantFrom('left', 'right', 'top', 'bottom', 'middle-across', 'middle-down');
    fc.assert(
      fc.property(features, by, (all, side) => {
        const moved = aligned(all, side);
        const lines = all.map((one, index) => edges[side](boxAfter(one, moved[index])));
        for (const line of lines) expect(line).toBeCloseTo(lines[0] ?? Number.NaN, 9);
        const sideways = side === 'left' || side === 'right' || side === 'middle-down';
        all.forEach((one, index) => {
          const there = moved[index]?.at;
          expect(sideways ? there?.y : there?.x).toBe(sideways ? one.at.y : one.at.x);
        });
        const common = boxOf(all.flatMap(({ outline }) => outline));
        expect(lines[0]).toBeCloseTo(edges[side](common), 9);
      }),
    );
  });

  it('gaps come out equal, the order is kept and the outer two stay', () => {
    fc.assert(
      fc.property(features, fc.constantFrom('across', 'down'), (all, way) => {
        const moved = evenlySpaced(all, way);
        const span = (box: ReturnType<typeof boxOf>) =>
          way === 'across' ? [box.leastX, box.mostX] : [box.leastY, box.mostY];
        const middleOf = (box: ReturnType<typeof boxOf>) => span(box).reduce((sum, end) => sum + end / 2, 0);
        const before = all.map((one, index) => ({ index, middle: middleOf(boxOf(one.outline)) }));
        const order = before
          .sort((a, b) => a.middle - b.middle || a.index - b.index)
          .map(({ index }) => index);
        const after = order.map((index) => {
          const one = all[index];
          if (!one) throw new Error('no feature');
          return span(boxAfter(one, moved[index]));
        });
        const gaps = after.slice(1).map(([least = 0], index) => least - (after[index]?.[1] ?? 0));
        if (all.length >= 3) for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0] ?? Number.NaN, 6);
        for (const index of [order[0], order.at(-1)]) {
          expect(moved[index ?? -1]?.at).toEqual(all[index ?? -1]?.at);
        }
      }),
    );
  });

  it('four quarter turns are none, and a turn keeps every distance to the centre', () => {
    const centre = fc.record({ x: place, y: place });
    fc.assert(
      fc.property(features, centre, fc.double({ min: -720, max: 720, noNaN: true }), (all, about, byDeg) => {
        const turned = (from: readonly Arranged[], deg: number) =>
          turnedBy(from, about, deg).map((one, index) => ({ ...one, outline: from[index]?.outline ?? [] }));
        let round: readonly Arranged[] = all;
        for (let quarter = 0; quarter < 4; quarter++) round = turned(round, 90);
        const once = turned(all, byDeg);
        all.forEach((one, index) => {
          expect(distance(round[index]?.at ?? about, one.at)).toBeLessThan(1e-9);
          expect(round[index]?.turnDeg).toBeCloseTo(one.turnDeg, 9);
          const there = once[index]?.at ?? one.at;
          expect(distance(there, about)).toBeCloseTo(distance(one.at, about), 9);
          expect(distance(there, add(about, rotate(subtract(one.at, about), byDeg)))).toBeLessThan(1e-9);
        });
      }),
    );
  });
});

describe('rows of tables', () => {
  it('as many as asked for, with the gap between any neighbours, turned as a whole', () => {
    const count = fc.integer({ min: 1, max: 5 });
    fc.assert(
      fc.property(
        count,
        count,
        size,
        size,
        fc.double({ min: 0, max: 3, noNaN: true }),
        turn,
        (rows, columns, widthM, depthM, gapM, turnDeg) => {
          const at = { x: 4, y: -1 };
          const spots = spotsOf(tableRows({ at, rows, columns, gapM, turnDeg, widthM, depthM }));
          expect(spots).toHaveLength(rows * columns);
          expect(spots[0]).toEqual(at);
          const shape = { kind: 'box', widthM, depthM } as const;
          const outlines = spots.map((spot) => outlineOf({ at: spot, turnDeg, shape }));
          outlines.forEach((outline, index) => {
            const right = (index + 1) % columns === 0 ? null : spots[index + 1];
            const below = spots[index + columns];
            if (right) expect(distanceToOutline(outline, right)).toBeCloseTo(gapM + widthM / 2, 9);
            if (below) expect(distanceToOutline(outline, below)).toBeCloseTo(gapM + depthM / 2, 9);
          });
        },
      ),
    );
  });

  it('copies of a table lie in rows along its own turn', () => {
    const at = { x: 3, y: 2 };
    const outline = outlineOf({ at, turnDeg: 90, shape: { kind: 'box', widthM: 2, depthM: 1 } });
    const spots = spotsOf(duplicateSpots({ at, turnDeg: 90, outline }, { rows: 2, columns: 2, gapM: 1 }));
    const expected = [
      { x: 3, y: 5 },
      { x: 1, y: 2 },
      { x: 1, y: 5 },
    ];
    expect(spots).toHaveLength(3);
    spots.forEach((spot, index) => {
      expect(distance(spot, expected[index] ?? at)).toBeLessThan(1e-9);
    });
    expect(duplicateSpots({ at, turnDeg: 0, outline }, { rows: 1, columns: 1, gapM: 0 })).toEqual({
      spots: [],
    });
  });

  it('refuses numbers that make no rows', () => {
    const rows = { at: { x: 0, y: 0 }, rows: 2, columns: 3, gapM: 1, turnDeg: 0, widthM: 2, depthM: 1 };
    const refused: [Partial<typeof rows>, RegExp][] = [
      [{ rows: 0 }, /0 rows/],
      [{ columns: 2.5 }, /2\.5 columns/],
      [{ rows: 20, columns: 20 }, /400 at once/],
      [{ gapM: -0.2 }, /gap is -0\.2 m/],
      [{ widthM: 0 }, /side is 0 m/],
      [{ turnDeg: Number.NaN }, /not a number/],
    ];
    for (const [change, words] of refused) {
      expect(tableRows({ ...rows, ...change })).toEqual({ reason: expect.stringMatching(words) });
    }
  });
});
