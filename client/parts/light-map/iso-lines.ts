import { contours } from 'd3-contour';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { LevelMap } from '../../../core/light/report/light-report.ts';

/** A line of one level over the plan, m. */
export interface IsoLine {
  readonly stops: number;
  readonly points: readonly Spot[];
}

/**
 * Fills what lies outside the room from the nearest points inside, ring by ring, so that no line runs along a wall
 * only because the numbers end there. What is drawn is cut at the walls.
 */
function filled({ columns, rows, stops, inside }: LevelMap): number[] {
  const values = Array.from(stops, (level, place) => (inside[place] ? level : Number.NaN));
  const at = (column: number, row: number): number =>
    column >= 0 && row >= 0 && column < columns && row < rows
      ? (values[row * columns + column] ?? Number.NaN)
      : Number.NaN;
  for (let open = values.some(Number.isNaN); open; ) {
    const found: [number, number][] = [];
    for (let index = 0; index < values.length; index++) {
      if (!Number.isNaN(values[index])) continue;
      const [column, row] = [index % columns, Math.floor(index / columns)];
      const beside = [at(column - 1, row), at(column + 1, row), at(column, row - 1), at(column, row + 1)];
      const known = beside.filter((value) => !Number.isNaN(value));
      if (known.length > 0) found.push([index, known.reduce((sum, value) => sum + value, 0) / known.length]);
    }
    for (const [index, value] of found) values[index] = value;
    open = found.length > 0 && values.some(Number.isNaN);
  }
  return values;
}

/**
 * Lines of equal level, one for each threshold that the room holds.
 *
 * @param thresholds in stops
 */
export function isoLines(grid: LevelMap, thresholds: readonly number[]): IsoLine[] {
  if (grid.columns < 2 || grid.rows < 2 || !grid.inside.includes(1)) return [];
  const shapes = contours()
    .size([grid.columns, grid.rows])
    .thresholds([...thresholds])(filled(grid));
  return shapes.flatMap((shape) =>
    shape.coordinates.flat().map((ring) => ({
      stops: shape.value,
      // A value of the grid lies at the middle of its cell.
      points: ring.map(([x = 0, y = 0]) => ({
        x: grid.left + (x - 0.5) * grid.stepM,
        y: grid.top + (y - 0.5) * grid.stepM,
      })),
    })),
  );
}
