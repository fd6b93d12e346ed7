import { contains, distanceToOutline, nearestOnOutline } from '../../../core/geometry/polygon.ts';
import { distance, type Spot } from '../../../core/geometry/spot.ts';
import type { WalkObstacle } from '../../../core/guidance/walk-floor.ts';

export type Plan = { readonly outline: readonly Spot[]; readonly obstacles: readonly WalkObstacle[] };

/** From a spot to the nearest outline [m]; negative on a thing or outside the room. By another way than core's. */
export function clearanceM({ outline, obstacles }: Plan, spot: Spot): number {
  if (!contains(outline, spot)) return -1;
  const wall = nearestOnOutline(outline, spot);
  let least = wall ? distance(wall, spot) : -1;
  for (const thing of obstacles) {
    const awayM = distanceToOutline(thing.outline, spot);
    if (awayM === 0) return -1;
    if (awayM !== null) least = Math.min(least, awayM);
  }
  return least;
}

/** Least clearance along a leg, looked at every so many metres. */
export function leastAlongM(plan: Plan, from: Spot, to: Spot, everyM = 0.02): number {
  const parts = Math.max(1, Math.ceil(distance(from, to) / everyM));
  let least = Number.MAX_VALUE;
  for (let part = 0; part <= parts; part += 1) {
    const x = from.x + ((to.x - from.x) * part) / parts;
    const y = from.y + ((to.y - from.y) * part) / parts;
    least = Math.min(least, clearanceM(plan, { x, y }));
  }
  return least;
}

/** Straight, diagonal and knight's moves: a way on the grid is then at most 2.8 % longer than it need be. */
const MOVES = [-2, -1, 0, 1, 2].flatMap((x) =>
  [-2, -1, 0, 1, 2].flatMap((y) =>
    Math.max(Math.abs(x), Math.abs(y)) === 1 || Math.abs(x * y) === 2 ? [{ x, y }] : [],
  ),
);

/**
 * Length of the shortest way on a grid [m], by Dijkstra's plain method; null when the grid has none. A way
 * keeps bodyM from everything at each grid spot and half-way between two; the ends join spots close by.
 */
export function gridWayM(plan: Plan, from: Spot, to: Spot, bodyM: number, gridM: number): number | null {
  const left = Math.min(...plan.outline.map(({ x }) => x));
  const top = Math.min(...plan.outline.map(({ y }) => y));
  const columns = Math.ceil((Math.max(...plan.outline.map(({ x }) => x)) - left) / gridM) + 1;
  const rows = Math.ceil((Math.max(...plan.outline.map(({ y }) => y)) - top) / gridM) + 1;
  // The spots of half the grid's width are known too, for what lies half-way.
  const known = new Map<number, boolean>();
  const isFree = (halfColumn: number, halfRow: number): boolean => {
    const key = halfRow * (2 * columns + 1) + halfColumn;
    const spot = { x: left + (halfColumn * gridM) / 2, y: top + (halfRow * gridM) / 2 };
    const free = known.get(key) ?? clearanceM(plan, spot) >= bodyM;
    known.set(key, free);
    return free;
  };
  const spotAt = (cell: number): Spot => ({
    x: left + (cell % columns) * gridM,
    y: top + Math.floor(cell / columns) * gridM,
  });
  const cellsNear = (spot: Spot): number[] =>
    Array.from({ length: columns * rows }, (_, cell) => cell).filter(
      (cell) =>
        distance(spotAt(cell), spot) < 1.6 * gridM &&
        leastAlongM(plan, spotAt(cell), spot, gridM / 4) >= bodyM,
    );
  const walkM = new Float64Array(columns * rows).fill(Number.POSITIVE_INFINITY);
  const waiting = new Set<number>();
  for (const cell of cellsNear(from)) {
    walkM[cell] = distance(spotAt(cell), from);
    waiting.add(cell);
  }
  const relax = (cell: number): void => {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    for (const { x, y } of MOVES) {
      const [toColumn, toRow] = [column + x, row + y];
      if (toColumn < 0 || toRow < 0 || toColumn >= columns || toRow >= rows) continue;
      const thereM = (walkM[cell] ?? 0) + gridM * Math.hypot(x, y);
      const there = toRow * columns + toColumn;
      if (thereM >= (walkM[there] ?? 0)) continue;
      if (!isFree(2 * toColumn, 2 * toRow) || !isFree(2 * column + x, 2 * row + y)) continue;
      walkM[there] = thereM;
      waiting.add(there);
    }
  };
  // Cells whose walk was bettered wait again; with lengths above zero that ends.
  for (const cell of waiting) {
    waiting.delete(cell);
    relax(cell);
  }
  const ends = cellsNear(to).map(
    (cell) => (walkM[cell] ?? Number.POSITIVE_INFINITY) + distance(spotAt(cell), to),
  );
  const bestM = Math.min(...ends);
  return Number.isFinite(bestM) ? bestM : null;
}
