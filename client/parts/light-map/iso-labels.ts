import { contains } from '../../../core/geometry/polygon.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { IsoLine } from './iso-lines.ts';

export interface IsoLabel {
  readonly stops: number;
  /** Which of its level's numbers this is, from 0. */
  readonly nth: number;
  /** Point of the screen, px. */
  readonly at: Spot;
}

/** Two numbers nearer than this cannot be told apart in the dark. */
const APART_PX = 34;
/** A line shorter than this on the screen gets none. */
const SHORTEST_PX = 26;
const MOST_PER_LEVEL = 2;

const between = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y);

/** How long a line is on the screen, px. */
function lengthPx(points: readonly Spot[]): number {
  return points.slice(1).reduce((sum, point, index) => sum + between(point, points[index] ?? point), 0);
}

/**
 * Where the numbers of the lines go: on their lines, inside the room, apart from each other and from what is drawn
 * already; a level whose line finds no place gets no number.
 *
 * @param toScreen from a spot of the plan to a point of the screen, px
 * @param taken points of the screen that are in use, px
 */
export function isoLabels(
  lines: readonly IsoLine[],
  room: readonly Spot[],
  toScreen: (spot: Spot) => Spot,
  taken: readonly Spot[],
): IsoLabel[] {
  const labels: IsoLabel[] = [];
  const count = new Map<number, number>();
  for (const { stops, points } of lines) {
    const inside = points.filter((point) => contains(room, point)).map(toScreen);
    if (lengthPx(inside) < SHORTEST_PX) continue;
    for (const start of [0.5, 0.15, 0.85, 0.3, 0.7]) {
      const nth = count.get(stops) ?? 0;
      if (nth >= MOST_PER_LEVEL) break;
      const at = inside[Math.floor(start * (inside.length - 1))];
      if (!at) continue;
      const near = (other: Spot) => between(at, other) < APART_PX;
      if (taken.some(near) || labels.some((label) => near(label.at))) continue;
      labels.push({ stops, nth, at });
      count.set(stops, nth + 1);
    }
  }
  return labels;
}
