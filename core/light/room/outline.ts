import { areaOf, centroidOf, edgesOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import { keepFinite } from '../../units/finite.ts';

function turnAt(a: Spot, b: Spot, c: Spot): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

/**
 * The corners in the sense in which the shoelace formula is positive.
 *
 * @source textbook-geometry
 */
export function positiveOrder(polygon: readonly Spot[]): readonly Spot[] {
  let twice = 0;
  for (const [a, b] of edgesOf(polygon)) twice += a.x * b.y - b.x * a.y;
  return twice >= 0 ? polygon : [...polygon].reverse();
}

/**
 * Corners that turn inward, of a polygon in positive order.
 *
 * @source textbook-geometry
 */
export function reflexCorners(polygon: readonly Spot[]): Spot[] {
  const longest = edgesOf(polygon).reduce(
    (most, [a, b]) => Math.max(most, Math.hypot(b.x - a.x, b.y - a.y)),
    0,
  );
  return polygon.filter((corner, index) => {
    const before = polygon[(index + polygon.length - 1) % polygon.length] ?? corner;
    const after = polygon[(index + 1) % polygon.length] ?? corner;
    return turnAt(before, corner, after) < -1e-9 * longest * longest;
  });
}

function insideTriangle(spot: Spot, a: Spot, b: Spot, c: Spot): boolean {
  return turnAt(a, b, spot) >= 0 && turnAt(b, c, spot) >= 0 && turnAt(c, a, spot) >= 0;
}

function isEar(rest: readonly Spot[], index: number): boolean {
  const a = rest[(index + rest.length - 1) % rest.length];
  const b = rest[index];
  const c = rest[(index + 1) % rest.length];
  if (!a || !b || !c || turnAt(a, b, c) <= 0) return false;
  return !rest.some((spot) => spot !== a && spot !== b && spot !== c && insideTriangle(spot, a, b, c));
}

/**
 * The polygon as convex pieces: itself when it is convex, else triangles (ear clipping). All in positive order.
 *
 * @source textbook-geometry
 */
export function convexPieces(polygon: readonly Spot[]): Spot[][] {
  const rest = [...positiveOrder(polygon)];
  if (reflexCorners(rest).length === 0) return rest.length >= 3 ? [rest] : [];
  const pieces: Spot[][] = [];
  while (rest.length > 3) {
    const found = rest.findIndex((_, index) => isEar(rest, index));
    const ear = Math.max(0, found);
    const piece = [-1, 0, 1].map((step) => rest[(ear + step + rest.length) % rest.length]);
    const corners = piece.filter((corner) => corner !== undefined);
    // Without an ear (a polygon that crosses itself) one corner is given up, so that this always ends.
    if (found >= 0) pieces.push(corners);
    rest.splice(ear, 1);
  }
  return [...pieces, rest];
}

/** Corners that a round thing keeps. */
const ROUND_CORNERS = 8;

/**
 * A thing's outline with few sides: a convex one with more than 8 corners (a round pillar) becomes one of 8
 * corners and the same area. ASSUMPTION: what that moves of its shadow's edge, 4 % of its radius, does not
 * matter to the room.
 *
 * @returns corners in positive order [m]
 * @source own-rule
 */
export function plainOutline(outline: readonly Spot[]): readonly Spot[] {
  const corners = positiveOrder(outline);
  if (corners.length <= ROUND_CORNERS || reflexCorners(corners).length > 0) return corners;
  const kept = Array.from(
    { length: ROUND_CORNERS },
    (_, index) => corners[Math.floor((index * corners.length) / ROUND_CORNERS)] ?? { x: 0, y: 0 },
  );
  const centre = centroidOf(kept);
  const grow = Math.sqrt(areaOf(corners) / areaOf(kept));
  if (!Number.isFinite(grow)) return corners;
  return kept.map(({ x, y }) => ({
    x: keepFinite(centre.x + (x - centre.x) * grow),
    y: keepFinite(centre.y + (y - centre.y) * grow),
  }));
}

/**
 * What of a polygon lies on one side of a line (Sutherland–Hodgman, one edge). Area and centroid of the
 * result are exact for any polygon; its shape is a simple polygon when the given one is convex.
 *
 * @param side signed distance from the line [m]; kept where it is not below zero
 * @source sutherland-hodgman
 */
export function clipToSide(polygon: readonly Spot[], side: (spot: Spot) => number): Spot[] {
  const kept: Spot[] = [];
  for (const [a, b] of edgesOf(polygon)) {
    const [sideA, sideB] = [side(a), side(b)];
    if (sideA >= 0) kept.push(a);
    if (sideA >= 0 === sideB >= 0) continue;
    const part = sideA / (sideA - sideB);
    kept.push({ x: keepFinite(a.x + part * (b.x - a.x)), y: keepFinite(a.y + part * (b.y - a.y)) });
  }
  return kept;
}
