import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  areaOf,
  centroidOf,
  contains,
  distanceToOutline,
  isSimple,
  nearestOnOutline,
} from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { add, distance, rotate, type Spot } from '../../../core/geometry/spot.ts';

const L_ROOM: Spot[] = [
  { x: 0, y: 0 },
  { x: 18, y: 0 },
  { x: 18, y: 8 },
  { x: 12, y: 8 },
  { x: 12, y: 12 },
  { x: 0, y: 12 },
];

const coordinate = fc.double({ min: -30, max: 30, noNaN: true });
const spot = fc.record({ x: coordinate, y: coordinate });
const turn = fc.double({ min: 0, max: 360, noNaN: true });
const size = fc.double({ min: 0.2, max: 10, noNaN: true });

describe('polygons', () => {
  it('an L-shaped room: area, centre, inside and outside', () => {
    expect(areaOf(L_ROOM)).toBe(18 * 12 - 6 * 4);
    // Two rectangles: 18 × 8 about (9, 4) and 12 × 4 about (6, 10).
    expect(centroidOf(L_ROOM).x).toBeCloseTo((144 * 9 + 48 * 6) / 192, 9);
    expect(centroidOf(L_ROOM).y).toBeCloseTo((144 * 4 + 48 * 10) / 192, 9);
    expect(contains(L_ROOM, { x: 6, y: 10 })).toBe(true);
    expect(contains(L_ROOM, { x: 15, y: 10 })).toBe(false);
    expect(distanceToOutline(L_ROOM, { x: 15, y: 10 })).toBeCloseTo(2, 9);
    expect(distanceToOutline(L_ROOM, { x: 6, y: 10 })).toBe(0);
  });

  it('a turned box contains what the unturned one does', () => {
    fc.assert(
      fc.property(spot, turn, size, size, spot, (at, turnDeg, widthM, depthM, inside) => {
        const outline = outlineOf({ at, turnDeg, shape: { kind: 'box', widthM, depthM } });
        const offM = Math.max(Math.abs(inside.x) - widthM / 2, Math.abs(inside.y) - depthM / 2);
        fc.pre(Math.abs(offM) > 1e-6);
        const there = add(at, rotate(inside, turnDeg));
        expect(contains(outline, there)).toBe(offM < 0);
        // Distance to a box, from its own formula.
        const [dx, dy] = [Math.abs(inside.x) - widthM / 2, Math.abs(inside.y) - depthM / 2];
        const outside = Math.hypot(Math.max(0, dx), Math.max(0, dy));
        expect(distanceToOutline(outline, there)).toBeCloseTo(outside, 6);
        expect(areaOf(outline)).toBeCloseTo(widthM * depthM, 6);
        expect(distance(centroidOf(outline), at)).toBeLessThan(1e-6);
      }),
    );
  });

  it('no corner is nearer than the nearest point, and the nearest point lies on the outline', () => {
    fc.assert(
      fc.property(spot, (from) => {
        const nearest = nearestOnOutline(L_ROOM, from);
        if (!nearest) throw new Error('no nearest point');
        for (const corner of L_ROOM) {
          expect(distance(from, nearest)).toBeLessThanOrEqual(distance(from, corner) + 1e-9);
        }
        const around = nearestOnOutline(L_ROOM, nearest);
        expect(around && distance(around, nearest)).toBeLessThan(1e-9);
      }),
    );
  });

  it('nothing has no outline', () => {
    expect(nearestOnOutline([], { x: 0, y: 0 })).toBeNull();
    expect(distanceToOutline([], { x: 0, y: 0 })).toBeNull();
    expect(centroidOf([])).toEqual({ x: 0, y: 0 });
  });

  it('knows a simple polygon from a crossed, flat or folded one', () => {
    const bow = [
      { x: 0, y: 0 },
      { x: 2, y: 2 },
      { x: 2, y: 0 },
      { x: 0, y: 3 },
    ];
    const spike = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 4 },
      { x: 4, y: 1 },
      { x: 0, y: 4 },
    ];
    const touching = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 4 },
      { x: 2, y: 0 },
      { x: 0, y: 4 },
    ];
    const flat = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 2, y: 0 },
    ];
    expect(isSimple(L_ROOM)).toBe(true);
    expect(isSimple([...L_ROOM].reverse())).toBe(true);
    for (const wrong of [
      bow,
      spike,
      touching,
      flat,
      [],
      L_ROOM.slice(0, 2),
      [...L_ROOM.slice(0, 1), ...L_ROOM],
    ]) {
      expect(isSimple(wrong)).toBe(false);
    }
    const round = outlineOf({ at: { x: 0, y: 0 }, turnDeg: 0, shape: { kind: 'round', radiusM: 1 } });
    expect(isSimple(round)).toBe(true);
  });
});
