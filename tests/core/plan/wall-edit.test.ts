import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaOf, edgesOf } from '../../../core/geometry/polygon.ts';
import { add, distance, dot, midpoint, rotate, type Spot, subtract } from '../../../core/geometry/spot.ts';
import type { OutlineOutcome } from '../../../core/plan/room-outline.ts';
import { lOutline, rectangleOutline } from '../../../core/plan/room-shapes.ts';
import {
  wallLengthsM,
  withCornerAdded,
  withCornerAt,
  withoutCorner,
  withWallLength,
} from '../../../core/plan/wall-edit.ts';

const size = fc.double({ min: 2, max: 40, noNaN: true });
const turn = fc.double({ min: 0, max: 360, noNaN: true });
const corner = fc.constantFrom('top-left', 'top-right', 'bottom-right', 'bottom-left');

function outlineOf(outcome: OutlineOutcome): readonly Spot[] {
  if ('reason' in outcome) throw new Error(outcome.reason);
  return outcome.outline;
}

/** The room turned, somewhere else on the plan, and frozen: whoever changes it throws. */
function laid(outline: readonly Spot[], turnDeg: number): readonly Spot[] {
  return Object.freeze(outline.map((one) => Object.freeze(add({ x: 3, y: -2 }, rotate(one, turnDeg)))));
}

function expectRightAngles(outline: readonly Spot[]): void {
  const edges = edgesOf(outline);
  edges.forEach(([a, b], index) => {
    const next = edges[(index + 1) % edges.length];
    const square = next ? dot(subtract(b, a), subtract(next[1], next[0])) : Number.NaN;
    expect(Math.abs(square)).toBeLessThan(1e-6);
  });
}

const L_ROOM = outlineOf(
  lOutline({ widthM: 18, depthM: 12, cutWidthM: 6, cutDepthM: 4, corner: 'bottom-right' }),
);

describe('a wall as long as typed', () => {
  it('a rectangle stays one: the opposite wall follows, the other two keep their length', () => {
    fc.assert(
      fc.property(size, size, turn, fc.nat(3), size, (widthM, depthM, turnDeg, wall, lengthM) => {
        const room = laid(outlineOf(rectangleOutline(widthM, depthM)), turnDeg);
        const edited = outlineOf(withWallLength(room, wall, lengthM));
        expectRightAngles(edited);
        const sides = wall % 2 === 0 ? [lengthM, depthM] : [widthM, lengthM];
        wallLengthsM(edited).forEach((length, index) => {
          expect(length).toBeCloseTo(sides[index % 2] ?? 0, 9);
        });
        expect(edited[wall]).toBe(room[wall]);
      }),
    );
  });

  it('an L keeps its right angles, whichever wall is typed', () => {
    fc.assert(
      fc.property(
        corner,
        turn,
        fc.nat(5),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (where, turnDeg, wall, lengthM) => {
          const shape = { widthM: 18, depthM: 12, cutWidthM: 6, cutDepthM: 4, corner: where };
          const room = laid(outlineOf(lOutline(shape)), turnDeg);
          const outcome = withWallLength(room, wall, lengthM);
          if ('reason' in outcome) {
            // Only where all walls along it are too short for the difference.
            const shorterM = (wallLengthsM(room)[wall] ?? 0) - lengthM;
            expect(shorterM).toBeGreaterThan(0);
            return;
          }
          expectRightAngles(outcome.outline);
          expect(wallLengthsM(outcome.outline)[wall]).toBeCloseTo(lengthM, 9);
        },
      ),
    );
  });

  it('the first parallel wall that can takes the difference', () => {
    expect(wallLengthsM(outlineOf(withWallLength(L_ROOM, 0, 20)))).toEqual([20, 8, 8, 4, 12, 12]);
    expect(wallLengthsM(outlineOf(withWallLength(L_ROOM, 0, 14)))).toEqual([14, 8, 2, 4, 12, 12]);
    // The wall of 6 m cannot give 7 m; the one of 12 m does.
    expect(wallLengthsM(outlineOf(withWallLength(L_ROOM, 0, 11)))).toEqual([11, 8, 6, 4, 5, 12]);
    // A wall with a corner added in its middle gives way within itself.
    const halved = outlineOf(withCornerAdded(L_ROOM, 0, { x: 9, y: 0 }));
    expect(wallLengthsM(outlineOf(withWallLength(halved, 0, 10))).slice(0, 3)).toEqual([10, 8, 8]);
  });

  it('with no wall parallel to it only its second corner moves', () => {
    const triangle = [
      { x: 0, y: 0 },
      { x: 6, y: 0 },
      { x: 0, y: 8 },
    ];
    expect(outlineOf(withWallLength(triangle, 0, 9))).toEqual([
      { x: 0, y: 0 },
      { x: 9, y: 0 },
      { x: 0, y: 8 },
    ]);
    expect(outlineOf(withWallLength(triangle, 2, 4))).toEqual([
      { x: 0, y: 4 },
      { x: 6, y: 0 },
      { x: 0, y: 8 },
    ]);
  });

  it('says why a length cannot be', () => {
    const refused: [OutlineOutcome, RegExp][] = [
      [withWallLength(L_ROOM, 0, 0), /length is 0 m/],
      [withWallLength(L_ROOM, 0, Number.NaN), /not a number/],
      [withWallLength(L_ROOM, 0, 400), /400 m long/],
      [withWallLength(L_ROOM, 0, 5), /along wall 1 can give 13 m/],
      [withWallLength(L_ROOM, 6, 4), /no wall 7; the room has 6/],
      [withWallLength(L_ROOM.slice(0, 2), 0, 4), /three corners/],
    ];
    for (const [outcome, words] of refused) {
      expect(outcome).toEqual({ reason: expect.stringMatching(words) });
    }
  });
});

describe('corners', () => {
  it('a corner is where it was put, and the others where they were', () => {
    fc.assert(
      fc.property(
        fc.nat(5),
        fc.double({ min: -0.9, max: 0.9 }),
        fc.double({ min: -0.9, max: 0.9 }),
        (index, dx, dy) => {
          fc.pre(!Number.isNaN(dx) && !Number.isNaN(dy));
          const from = L_ROOM[index];
          if (!from) throw new Error('no corner');
          const spot = add(from, { x: dx, y: dy });
          const edited = outlineOf(withCornerAt(Object.freeze([...L_ROOM]), index, spot));
          expect(edited).toEqual(L_ROOM.map((one, at) => (at === index ? spot : one)));
        },
      ),
    );
  });

  it('a corner added to a wall and taken out again leaves the room as it was', () => {
    fc.assert(
      fc.property(fc.nat(5), fc.double({ min: 0.1, max: 0.9, noNaN: true }), (wall, along) => {
        const edge = edgesOf(L_ROOM)[wall];
        if (!edge) throw new Error('no wall');
        const way = subtract(edge[1], edge[0]);
        const spot = { x: edge[0].x + way.x * along, y: edge[0].y + way.y * along };
        const added = outlineOf(withCornerAdded(Object.freeze([...L_ROOM]), wall, spot));
        expect(added[wall + 1]).toEqual(spot);
        expect(areaOf(added)).toBeCloseTo(areaOf(L_ROOM), 9);
        expect(outlineOf(withoutCorner(Object.freeze([...added]), wall + 1))).toEqual(L_ROOM);
      }),
    );
  });

  it('a wall pulled out by a new corner is a bay', () => {
    const bay = outlineOf(withCornerAdded(L_ROOM, 0, { x: 9, y: -3 }));
    expect(areaOf(bay)).toBeCloseTo(192 + (18 * 3) / 2, 9);
    const lengths = wallLengthsM(bay);
    expect(lengths[0]).toBeCloseTo(distance({ x: 0, y: 0 }, { x: 9, y: -3 }), 9);
  });

  it('refuses what would be no room, with the reason', () => {
    const triangle = L_ROOM.slice(0, 3);
    const [a, b] = triangle;
    if (!a || !b) throw new Error('no corners');
    const refused: [OutlineOutcome, RegExp][] = [
      [withCornerAt(L_ROOM, 1, { x: 6, y: 20 }), /cross/],
      [withCornerAt(L_ROOM, 0, { x: 18, y: 0 }), /Wall 1 would have no length/],
      [withCornerAt(L_ROOM, 0, { x: Number.NaN, y: 0 }), /Corner 1 is nowhere/],
      [withCornerAt(L_ROOM, 0, { x: -900, y: 0 }), /918 m long/],
      [withCornerAt(L_ROOM, 9, a), /no corner 10; the room has 6/],
      [withCornerAdded(L_ROOM, 0, { x: 9, y: 14 }), /cross/],
      [withCornerAdded(L_ROOM, -1, a), /no wall 0/],
      [withoutCorner(triangle, 0), /three corners; this would have 2/],
      [withoutCorner(triangle, 3), /no corner 4/],
      [withCornerAt(triangle, 2, midpoint(a, b)), /0 m²/],
    ];
    for (const [outcome, words] of refused) expect(outcome).toEqual({ reason: expect.stringMatching(words) });
  });
});
