import { dot, type Spot, subtract } from './spot.ts';

/** Where a ray first meets an outline: how far along the ray [m], and which edge it met. */
export type RayHit = { readonly distanceM: number; readonly edge: number };

/** Distance along a ray (unit direction) to a segment [m]; null when it misses. */
function rayToSegment(from: Spot, direction: Spot, a: Spot, b: Spot): number | null {
  const edge = subtract(b, a);
  const across = direction.x * edge.y - direction.y * edge.x;
  if (Math.abs(across) < 1e-12) return null;
  const way = subtract(a, from);
  const along = (way.x * edge.y - way.y * edge.x) / across;
  const part = (way.x * direction.y - way.y * direction.x) / across;
  return along >= 0 && part >= -1e-9 && part <= 1 + 1e-9 ? along : null;
}

/** Distance along a ray to a circle met from outside [m]; null when it misses. */
function rayToCircle(from: Spot, direction: Spot, centre: Spot, radiusM: number): number | null {
  const way = subtract(centre, from);
  const along = dot(way, direction);
  const asideSquare = dot(way, way) - along * along;
  const half = radiusM * radiusM - asideSquare;
  if (along < 0 || half < 0) return null;
  const near = along - Math.sqrt(half);
  return near >= 0 ? near : null;
}

/** The edge a–b moved sideways by so much. */
function shifted(a: Spot, b: Spot, byM: number): [Spot, Spot] | null {
  const lengthM = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(lengthM > 0)) return null;
  const normal = { x: (-(b.y - a.y) / lengthM) * byM, y: ((b.x - a.x) / lengthM) * byM };
  return [
    { x: a.x + normal.x, y: a.y + normal.y },
    { x: b.x + normal.x, y: b.y + normal.y },
  ];
}

const nearer = (one: number | null, other: number | null): number | null =>
  one === null ? other : other === null ? one : Math.min(one, other);

function rayToEdge(from: Spot, direction: Spot, a: Spot, b: Spot, inflateM: number): number | null {
  if (!(inflateM > 0)) return rayToSegment(from, direction, a, b);
  const toEnds = nearer(rayToCircle(from, direction, a, inflateM), rayToCircle(from, direction, b, inflateM));
  const left = shifted(a, b, inflateM);
  const right = shifted(a, b, -inflateM);
  const toSides = nearer(
    left && rayToSegment(from, direction, left[0], left[1]),
    right && rayToSegment(from, direction, right[0], right[1]),
  );
  return nearer(toEnds, toSides);
}

/**
 * First meeting of a ray with an outline, which may be grown outward by a rounded rim.
 *
 * @param from start [m], outside the grown outline (or inside, for a room: then inflateM must be 0)
 * @param direction unit vector on the plan
 * @param inflateM rim around the outline [m], 0 for none
 * @returns distance along the ray [m] and number of the edge; null when the ray misses
 */
export function rayToOutline(
  from: Spot,
  direction: Spot,
  outline: readonly Spot[],
  inflateM: number,
): RayHit | null {
  let best: RayHit | null = null;
  // No list of edges: this runs some hundred times for every move of a finger.
  for (let edge = 0; edge < outline.length; edge++) {
    const a = outline[edge];
    const b = outline[(edge + 1) % outline.length];
    if (!a || !b) continue;
    const distanceM = rayToEdge(from, direction, a, b, inflateM);
    if (distanceM === null || !Number.isFinite(distanceM)) continue;
    if (best === null || distanceM < best.distanceM) best = { distanceM, edge };
  }
  return best;
}
