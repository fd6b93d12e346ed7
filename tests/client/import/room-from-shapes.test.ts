import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanShape } from '../../../client/import/plan-file.ts';
import { type FoundRoom, roomFromShapes } from '../../../client/import/room-from-shapes.ts';
import { shapeFromRing } from '../../../client/import/shape-from-ring.ts';
import { tidyRing } from '../../../client/import/tidy-ring.ts';
import { areaOf, distanceToOutline, isSimple } from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { add, rotate, type Spot } from '../../../core/geometry/spot.ts';

const box = (x: number, y: number, width: number, depth: number, name = ''): PlanShape => ({
  outline: [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + depth },
    { x, y: y + depth },
  ],
  closed: true,
  name,
});

const ringOf = (count: number, radius: number, at: Spot): Spot[] =>
  Array.from({ length: count }, (_, index) => add(at, rotate({ x: radius, y: 0 }, (index * 360) / count)));

function found(shapes: readonly PlanShape[], metresPerUnit = 1, rank = 0): FoundRoom {
  const room = roomFromShapes(shapes, metresPerUnit, rank);
  if (room.kind === 'trouble') throw new Error(room.reason);
  return room;
}

const HALL = box(100, 200, 18, 12, 'hall');

describe('a room from the shapes of a drawing', () => {
  it('begins at (0, 0), wherever the drawing has it; things keep their place in it', () => {
    const room = found([box(101, 203, 2, 1, 'bar'), HALL]);
    expect(room.outline).toEqual(
      [
        { x: 18, y: 12 },
        { x: 0, y: 12 },
        { x: 0, y: 0 },
        { x: 18, y: 0 },
      ].map((corner) => expect.objectContaining(corner)),
    );
    expect(room.features).toEqual([
      { name: 'bar', at: { x: 2, y: 3.5 }, turnDeg: 0, shape: { kind: 'box', widthM: 2, depthM: 1 } },
    ]);
  });

  it('counts what it leaves out, each for its reason', () => {
    const bow: PlanShape = {
      outline: [
        { x: 102, y: 202 },
        { x: 104, y: 204 },
        { x: 104, y: 202 },
        { x: 102, y: 204 },
      ],
      closed: true,
      name: '',
    };
    const room = found([
      HALL,
      box(100.2, 200.2, 17.6, 11.6),
      box(101, 201, 0.1, 0.1),
      box(90, 190, 2, 2),
      box(105, 205, 2, 1, 'kept'),
      box(105.01, 205, 2, 1),
      bow,
      {
        outline: [
          { x: 101, y: 201 },
          { x: 105, y: 209 },
        ],
        closed: false,
        name: '',
      },
      ...Array.from({ length: 205 }, (_, index) =>
        box(101 + (index % 16), 206 + Math.floor(index / 16) * 0.4, 0.35, 0.35),
      ),
    ]);
    expect(room.leftOut).toEqual({
      open: 1,
      tangled: 1,
      outside: 1,
      likeRoom: 1,
      tiny: 1,
      twice: 1,
      beyondMost: 6,
    });
    expect(room.words).toBe(
      'A room of 18 × 12 m with 200 things; left out: 1 with open ends, 1 crossing themselves, 6 beyond what a plan holds, 1 outside the room, 1 as large as the room, 1 too small, 1 drawn twice',
    );
    expect(found([HALL, box(101, 203, 2, 1)]).words).toBe('A room of 18 × 12 m with 1 thing');
    expect(room.features).toHaveLength(200);
    expect(room.features[0]?.name).toBe('kept');
  });

  it('takes the next ring when the largest is the frame of the sheet', () => {
    const room = found([box(95, 195, 30, 21), HALL, box(101, 203, 2, 1, 'bar')], 1, 1);
    expect(room).toMatchObject({ widthM: 18, depthM: 12, choices: 3, leftOut: { outside: 1 } });
    expect(room.features.map(({ name }) => name)).toEqual(['bar']);
  });

  it('says why there is none', () => {
    const reason = (shapes: readonly PlanShape[], metresPerUnit: number) => {
      const read = roomFromShapes(shapes, metresPerUnit);
      return read.kind === 'trouble' ? read.reason : 'no trouble';
    };
    expect(reason([HALL], 0.01)).toMatch(/would be 0.18 × 0.12 m/);
    expect(reason([HALL], 1000)).toMatch(/would be 18000 × 12000 m/);
    for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(reason([HALL], wrong)).toMatch(/above nothing/);
    expect(reason([], 1)).toMatch(/No closed outline/);
    expect(reason([{ ...HALL, closed: false }], 1)).toMatch(/No closed outline/);
  });

  it('whatever is drawn: a room that the night document takes, or a reason', () => {
    const spot = fc.record({
      x: fc.double({ min: -60, max: 60, noNaN: true }),
      y: fc.double({ min: -60, max: 60, noNaN: true }),
    });
    const shape = fc.record({
      outline: fc.array(spot, { minLength: 2, maxLength: 9 }),
      closed: fc.boolean(),
      name: fc.constantFrom('a', 'b'),
    });
    fc.assert(
      fc.property(
        fc.array(shape, { maxLength: 12 }),
        fc.constantFrom(0.3048, 1, 2),
        (shapes, metresPerUnit) => {
          const room = roomFromShapes(shapes, metresPerUnit);
          if (room.kind === 'trouble') {
            expect(room.reason.length).toBeGreaterThan(10);
            return;
          }
          expect(isSimple(room.outline)).toBe(true);
          expect(room.outline.length).toBeLessThanOrEqual(200);
          expect(Math.min(...room.outline.map(({ x }) => x))).toBe(0);
          expect(Math.min(...room.outline.map(({ y }) => y))).toBe(0);
          for (const { turnDeg } of room.features) expect(Math.abs(turnDeg)).toBeLessThanOrEqual(45);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('what a ring is meant to be', () => {
  it('a box comes back as the same box, however it lies', () => {
    const size = fc.double({ min: 0.4, max: 6, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: -360, max: 360, noNaN: true }), (widthM, depthM, turnDeg) => {
        const at = { x: 7, y: 5 };
        const ring = outlineOf({ at, turnDeg, shape: { kind: 'box', widthM, depthM } });
        const placed = shapeFromRing(ring);
        expect(placed.shape.kind).toBe('box');
        expect(Math.abs(placed.turnDeg)).toBeLessThanOrEqual(45);
        for (const corner of outlineOf(placed))
          expect(Math.min(...ring.map(({ x, y }) => Math.hypot(x - corner.x, y - corner.y)))).toBeLessThan(
            1e-6,
          );
      }),
    );
  });

  it('a ring of eight corners or more on a circle is round; half a circle and an L are outlines', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 60 }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (count, radiusM) => {
          const placed = shapeFromRing(ringOf(count, radiusM, { x: 3, y: 4 }));
          expect(placed.shape.kind === 'round' && placed.shape.radiusM).toBeCloseTo(radiusM, 9);
          expect(placed.at.x).toBeCloseTo(3, 9);
        },
      ),
    );
    expect(shapeFromRing(ringOf(40, 2, { x: 0, y: 0 }).slice(0, 20)).shape.kind).toBe('outline');
    const ell = [
      [0, 0],
      [4, 0],
      [4, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ].map(([x = 0, y = 0]) => ({ x: x + 9, y: y + 9 }));
    const placed = shapeFromRing(ell);
    expect(placed.shape.kind).toBe('outline');
    for (const [index, corner] of outlineOf(placed).entries()) {
      expect(corner.x).toBeCloseTo(ell[index]?.x ?? 0, 9);
      expect(corner.y).toBeCloseTo(ell[index]?.y ?? 0, 9);
    }
  });

  it('a table with rounded corners is a box', () => {
    const corners = [
      [2, 1, 0],
      [-2, 1, 90],
      [-2, -1, 180],
      [2, -1, 270],
    ] as const;
    const ring = corners.flatMap(([x, y, from]) =>
      [0, 30, 60, 90].map((step) => add({ x: x * 0.9, y: y * 0.8 }, rotate({ x: 0.2, y: 0 }, from + step))),
    );
    expect(shapeFromRing(ring)).toMatchObject({ turnDeg: 0, shape: { kind: 'box' } });
  });
});

describe('corners that say nothing', () => {
  it('go, and every corner of the ring stays within the tolerance of what is left', () => {
    const blob = fc
      .array(fc.double({ min: 2, max: 8, noNaN: true }), { minLength: 3, maxLength: 60 })
      .map((radii) =>
        radii.map((radius, index) => rotate({ x: radius, y: 0 }, (index * 360) / radii.length)),
      );
    fc.assert(
      fc.property(blob, fc.constantFrom(0.001, 0.01, 0.3), (ring, toleranceM) => {
        const tidy = tidyRing(ring, toleranceM);
        expect(tidy.length).toBeLessThanOrEqual(ring.length);
        for (const corner of ring) {
          const nearM = Math.min(
            ...tidy.map((a, index) => {
              const b = tidy[(index + 1) % tidy.length] ?? a;
              return distanceToOutline([a, b, a], corner) ?? Infinity;
            }),
          );
          expect(nearM).toBeLessThanOrEqual(toleranceM + 1e-9);
        }
      }),
    );
  });

  it('a wall drawn in a hundred pieces is one wall, and a ring of 50 000 corners stays near its area', () => {
    const pieces = Array.from({ length: 400 }, (_, index) => {
      const along = (index % 100) / 100;
      return (
        [
          { x: along, y: 0 },
          { x: 1, y: along },
          { x: 1 - along, y: 1 },
          { x: 0, y: 1 - along },
        ][Math.floor(index / 100)] ?? { x: 0, y: 0 }
      );
    });
    expect(tidyRing(pieces, 0.001)).toHaveLength(4);
    const tidy = tidyRing(ringOf(50_000, 10, { x: 0, y: 0 }), 0.0001);
    expect(tidy.length).toBeLessThanOrEqual(200);
    expect(Math.abs(areaOf(tidy) / (100 * Math.PI) - 1)).toBeLessThan(0.01);
  });
});
