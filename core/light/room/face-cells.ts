import { areaOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import type { Face } from './face.ts';
import { clipToSide, convexPieces, reflexCorners } from './outline.ts';

/** Cells with less than this share of a whole one are left out: they would cost as much and change nothing. */
const LEAST_SHARE = 0.003;

/** Cells in a row at most: patches of 0 m must not run without end. */
const MOST_LINES = 200;

/** Lines of the grid along one axis: evenly spaced, but through every inner corner, so that patches are convex. */
function gridLines(fromM: number, toM: number, inner: readonly number[], cellM: number): number[] {
  const stops = [fromM, toM];
  for (const at of [...inner].sort((a, b) => a - b)) {
    if (stops.every((stop) => Math.abs(at - stop) > 0.2 * cellM) && at > fromM && at < toM) stops.push(at);
  }
  stops.sort((a, b) => a - b);
  return stops.flatMap((start, index) => {
    const end = stops[index + 1];
    if (end === undefined) return [start];
    const count = Math.max(1, Math.min(MOST_LINES, Math.round((end - start) / cellM)));
    return Array.from({ length: count }, (_, step) => start + ((end - start) * step) / count);
  });
}

function clipAlong(polygon: readonly Spot[], axis: 'x' | 'y', fromM: number, toM: number): Spot[] {
  const above = clipToSide(polygon, (spot) => spot[axis] - fromM);
  return clipToSide(above, (spot) => toM - spot[axis]);
}

/** Corners without those that repeat the one before. */
function withoutRepeats(polygon: readonly Spot[]): Spot[] {
  return polygon.filter((corner, index) => {
    const before = polygon[(index + polygon.length - 1) % polygon.length];
    return !before || Math.hypot(corner.x - before.x, corner.y - before.y) > 1e-9;
  });
}

/**
 * A face cut by a grid into convex cells, in its own coordinates [m].
 *
 * @param patchM side that a cell should have [m]
 * @source sutherland-hodgman
 */
export function cellsOf({ polygon, half, stretch }: Face, patchM: number): Spot[][] {
  const inner = reflexCorners(polygon);
  const xs = polygon.map(({ x }) => x);
  const ys = polygon.map(({ y }) => y);
  const lowest = half ? 0 : Math.min(...ys);
  const columns = gridLines(
    Math.min(...xs),
    Math.max(...xs),
    inner.map(({ x }) => x),
    patchM,
  );
  const rows = gridLines(
    lowest,
    Math.max(...ys),
    inner.map(({ y }) => y),
    patchM * stretch,
  );
  const triangles = inner.length > 0 ? convexPieces(polygon) : [];
  return columns.slice(1).flatMap((right, column) => {
    const strip = (corners: readonly Spot[]) => clipAlong(corners, 'x', columns[column] ?? right, right);
    const whole = strip(polygon);
    const inPieces = triangles.map(strip);
    return rows.slice(1).flatMap((top, row) => {
      const cell = (corners: readonly Spot[]) =>
        withoutRepeats(clipAlong(corners, 'y', rows[row] ?? top, top));
      const one = cell(whole);
      const cells = inner.length > 0 && reflexCorners(one).length > 0 ? inPieces.map(cell) : [one];
      const least = LEAST_SHARE * patchM * patchM * stretch;
      return cells.filter((corners) => corners.length >= 3 && areaOf(corners) > least);
    });
  });
}
