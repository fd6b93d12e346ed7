import { keepFinite } from '../units/finite.ts';
import { distance, type Spot } from './spot.ts';

/** The edges of a closed polygon, each from one corner to the next. */
export function edgesOf(polygon: readonly Spot[]): [Spot, Spot][] {
  return polygon.map((corner, index) => [corner, polygon[(index + 1) % polygon.length] ?? corner]);
}

/**
 * Even-odd test: is the spot inside the polygon? Points exactly on an edge may fall either way.
 *
 * @param polygon corners in order [m]; fewer than three contain nothing
 */
export function contains(polygon: readonly Spot[], spot: Spot): boolean {
  if (polygon.length < 3) return false;
  let inside = false;
  for (const [a, b] of edgesOf(polygon)) {
    if (a.y > spot.y === b.y > spot.y) continue;
    if (spot.x < ((b.x - a.x) * (spot.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

/** Signed area, shoelace formula; positive when the corners run clockwise on the plan (y down). */
function signedAreaOf(polygon: readonly Spot[]): number {
  let twice = 0;
  for (const [a, b] of edgesOf(polygon)) twice += a.x * b.y - b.x * a.y;
  return keepFinite(twice / 2);
}

/** @returns area [m²], never negative; 0 for fewer than three corners */
export function areaOf(polygon: readonly Spot[]): number {
  return Math.abs(signedAreaOf(polygon));
}

function meanOf(polygon: readonly Spot[]): Spot {
  const count = Math.max(1, polygon.length);
  const sum = polygon.reduce((s, p) => ({ x: s.x + p.x / count, y: s.y + p.y / count }), { x: 0, y: 0 });
  return { x: keepFinite(sum.x), y: keepFinite(sum.y) };
}

/**
 * Centre of area.
 *
 * @returns centroid [m]; the mean of the corners when the polygon has no area; (0, 0) when it is empty
 */
export function centroidOf(polygon: readonly Spot[]): Spot {
  const mean = meanOf(polygon);
  let twice = 0;
  let x = 0;
  let y = 0;
  // Taken about the mean corner: far from the origin the products would lose their digits.
  for (const [a, b] of edgesOf(polygon)) {
    const [ax, ay, bx, by] = [a.x - mean.x, a.y - mean.y, b.x - mean.x, b.y - mean.y];
    const cross = ax * by - bx * ay;
    twice += cross;
    x += (ax + bx) * cross;
    y += (ay + by) * cross;
  }
  const centre = { x: mean.x + x / (3 * twice), y: mean.y + y / (3 * twice) };
  return Number.isFinite(centre.x) && Number.isFinite(centre.y) ? centre : mean;
}

/** @returns the point of the segment a–b nearest to the spot [m] */
export function nearestOnSegment(a: Spot, b: Spot, spot: Spot): Spot {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const along = ((spot.x - a.x) * dx + (spot.y - a.y) * dy) / square;
  if (!Number.isFinite(along)) return a;
  const part = Math.max(0, Math.min(1, along));
  return { x: keepFinite(a.x + part * dx), y: keepFinite(a.y + part * dy) };
}

/**
 * The point of the outline nearest to a spot, from inside or outside.
 *
 * @returns spot on the outline [m]; null for a polygon without corners
 */
export function nearestOnOutline(polygon: readonly Spot[], spot: Spot): Spot | null {
  let best: Spot | null = null;
  let bestM = Number.POSITIVE_INFINITY;
  for (const [a, b] of edgesOf(polygon)) {
    const candidate = nearestOnSegment(a, b, spot);
    const awayM = distance(candidate, spot);
    if (best === null || awayM < bestM) {
      best = candidate;
      bestM = awayM;
    }
  }
  return best;
}

/**
 * How far a spot is outside a polygon.
 *
 * @returns distance to the outline [m]; 0 inside; null for a polygon without corners
 */
export function distanceToOutline(polygon: readonly Spot[], spot: Spot): number | null {
  if (contains(polygon, spot)) return 0;
  const nearest = nearestOnOutline(polygon, spot);
  return nearest ? distance(nearest, spot) : null;
}

/** Twice the signed area of the triangle a, b, c: which side of a–b the point c lies on. */
function sideOf(a: Spot, b: Spot, c: Spot): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function segmentsTouch(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  const abc = Math.sign(sideOf(a, b, c));
  const abd = Math.sign(sideOf(a, b, d));
  const cda = Math.sign(sideOf(c, d, a));
  const cdb = Math.sign(sideOf(c, d, b));
  if (abc !== abd && cda !== cdb) return true;
  const onSegment = (p: Spot, q: Spot, r: Spot) =>
    Math.min(p.x, q.x) <= r.x &&
    r.x <= Math.max(p.x, q.x) &&
    Math.min(p.y, q.y) <= r.y &&
    r.y <= Math.max(p.y, q.y);
  return (
    (abc === 0 && onSegment(a, b, c)) ||
    (abd === 0 && onSegment(a, b, d)) ||
    (cda === 0 && onSegment(c, d, a)) ||
    (cdb === 0 && onSegment(c, d, b))
  );
}

/**
 * Is this a polygon that a room or feature may have: three corners or more, an area, and no edge that
 * touches another (neighbours share their corner only)?
 */
export function isSimple(polygon: readonly Spot[]): boolean {
  if (polygon.length < 3 || !(areaOf(polygon) > 0)) return false;
  const edges = edgesOf(polygon);
  for (const [i, [a, b]] of edges.entries()) {
    for (const [j, [c, d]] of edges.entries()) {
      if (j <= i + 1 || (i === 0 && j === edges.length - 1)) continue;
      if (segmentsTouch(a, b, c, d)) return false;
    }
  }
  return !hasSpike(edges);
}

/** An edge of no length, or one that runs back over the edge before it. */
function hasSpike(edges: readonly [Spot, Spot][]): boolean {
  return edges.some(([a, b], index) => {
    const next = edges[(index + 1) % edges.length];
    if (!next) return false;
    if (a.x === b.x && a.y === b.y) return true;
    const turnsBack = (b.x - a.x) * (next[1].x - b.x) + (b.y - a.y) * (next[1].y - b.y) < 0;
    return turnsBack && sideOf(a, b, next[1]) === 0;
  });
}
