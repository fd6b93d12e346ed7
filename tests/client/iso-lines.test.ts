import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoLabels } from '../../client/parts/light-map/iso-labels.ts';
import { isoLines } from '../../client/parts/light-map/iso-lines.ts';
import type { LevelMap } from '../../core/light/report/light-report.ts';

/** A grid of a known field over a square of 10 m; outside a radius there is nothing, if one is given. */
function grid(level: (x: number, y: number) => number, withinM = Number.POSITIVE_INFINITY): LevelMap {
  const [columns, rows, stepM] = [41, 41, 0.25];
  const stops = new Float64Array(columns * rows);
  const inside = new Uint8Array(columns * rows);
  for (let index = 0; index < stops.length; index++) {
    const x = (index % columns) * stepM;
    const y = Math.floor(index / columns) * stepM;
    inside[index] = Math.hypot(x - 5, y - 5) > withinM ? 0 : 1;
    stops[index] = inside[index] ? level(x, y) : -99;
  }
  return { columns, rows, left: 0, top: 0, stepM, stops, inside };
}

const SQUARE = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];
const asDrawn = (spot: { x: number; y: number }) => ({ x: spot.x * 40, y: spot.y * 40 });

describe('lines of equal light', () => {
  it('lie where an inverse square law has that level', () => {
    // 0 stops at 2 m from the middle, so the line for s stops is a circle of radius 2·2^(−s/2).
    const field = grid((x, y) => -2 * Math.log2(Math.max(0.2, Math.hypot(x - 5, y - 5)) / 2));
    for (const { stops, points } of isoLines(field, [1, 0, -1, -2])) {
      for (const { x, y } of points) {
        expect(Math.hypot(x - 5, y - 5)).toBeCloseTo(2 * 2 ** (-stops / 2), 1);
      }
    }
  });

  it('separate what is above from what is below, wherever the field slopes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (a, b) => {
          const lines = isoLines(
            grid((x, y) => a * (x - 5) + b * (y - 5)),
            [0],
          );
          const inside = lines.flatMap(({ points }) =>
            points.filter(({ x, y }) => x > 0.1 && x < 9.9 && y > 0.1 && y < 9.9),
          );
          expect(inside.length).toBeGreaterThan(0);
          for (const { x, y } of inside) expect(a * (x - 5) + b * (y - 5)).toBeCloseTo(0, 6);
        },
      ),
    );
  });

  it('run on past where the room ends, instead of along its wall', () => {
    const lines = isoLines(
      grid((x) => x - 5, 4),
      [0],
    );
    const onWall = lines.flatMap(({ points }) =>
      points.filter(({ x, y }) => Math.hypot(x - 5, y - 5) < 3.9 && Math.abs(x - 5) > 0.3),
    );
    expect(onWall).toEqual([]);
  });

  it('are none where there is no light at all, and in a grid too small to have any', () => {
    const dark = grid(() => -99);
    expect(isoLines(dark, [0, -1])).toEqual([]);
    expect(
      isoLines(
        grid(() => 0, -1),
        [0, -1],
      ),
    ).toEqual([]);
    expect(isoLines({ ...dark, columns: 1, rows: 1, stops: new Float64Array(1) }, [0])).toEqual([]);
  });

  it('have their numbers on the line, inside the room, apart from each other and from signs', () => {
    const lines = isoLines(
      grid((x, y) => -2 * Math.log2(Math.max(0.2, Math.hypot(x - 5, y - 5)) / 2)),
      [1, 0, -1, -2],
    );
    const signs = [asDrawn({ x: 5, y: 3 })];
    const labels = isoLabels(lines, SQUARE, asDrawn, signs);
    expect(new Set(labels.map(({ stops }) => stops))).toEqual(new Set([1, 0, -1, -2]));
    const spots = [...labels.map(({ at }) => at), ...signs];
    for (const [index, one] of spots.entries()) {
      for (const other of spots.slice(index + 1)) {
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(34);
      }
    }
    for (const { stops, at } of labels) {
      expect(Math.hypot(at.x / 40 - 5, at.y / 40 - 5)).toBeCloseTo(2 * 2 ** (-stops / 2), 1);
    }
  });
});
