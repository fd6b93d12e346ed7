import { nearestOnSegment } from '../../core/geometry/polygon.ts';
import { distance, type Spot } from '../../core/geometry/spot.ts';

/** The night document takes no more corners of a room or a thing. */
const MOST_CORNERS = 200;
/** A ring of more corners is thinned first: the exact way would take the square of their number. */
const THINNED_ABOVE = 2_000;

/** The corners between two that are needed, so that none of the rest is further than the tolerance from the line. */
function needed(points: readonly Spot[], toleranceM: number): Spot[] {
  const keep = new Set([0, points.length - 1]);
  const open: [number, number][] = [[0, points.length - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [from, to] = span;
    const [a, b] = [points[from], points[to]];
    let farthest = -1;
    let farthestM = toleranceM;
    for (let index = from + 1; a && b && index < to; index++) {
      const point = points[index];
      const awayM = point ? distance(nearestOnSegment(a, b, point), point) : 0;
      if (awayM > farthestM) [farthest, farthestM] = [index, awayM];
    }
    if (farthest < 0) continue;
    keep.add(farthest);
    open.push([from, farthest], [farthest, to]);
  }
  return points.filter((_, index) => keep.has(index));
}

function farthestFrom(origin: Spot, ring: readonly Spot[]): number {
  let best = 0;
  for (const [index, spot] of ring.entries())
    if (distance(origin, spot) > distance(origin, ring[best] ?? origin)) best = index;
  return best;
}

/**
 * A ring without corners that say nothing: repeated ones, and those on a straight wall. The tolerance grows
 * where that still leaves more corners than a night document takes.
 *
 * @param ring corners in order, not closed [m]
 * @returns the corners that are left, 200 at most [m]
 */
export function tidyRing(ring: readonly Spot[], toleranceM: number): Spot[] {
  const step = Math.ceil(ring.length / THINNED_ABOVE);
  const thin = step > 1 ? ring.filter((_, index) => index % step === 0) : ring;
  const [first] = thin;
  if (!first || thin.length < 3) return [...thin];
  // Cut at two corners that are surely needed: the one farthest from any corner, and the one farthest from that.
  const start = farthestFrom(first, thin);
  const turned = [...thin.slice(start), ...thin.slice(0, start)];
  const opposite = farthestFrom(turned[0] ?? first, turned);
  const there = turned.slice(0, opposite + 1);
  const back = [...turned.slice(opposite), turned[0] ?? first];
  for (let allowedM = toleranceM; ; allowedM *= 2) {
    const kept = [...needed(there, allowedM).slice(0, -1), ...needed(back, allowedM).slice(0, -1)];
    if (kept.length <= MOST_CORNERS) return kept;
  }
}
