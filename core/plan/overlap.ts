import { boxesNear, boxOf } from '../geometry/box.ts';
import { centroidOf, contains, edgesOf, nearestOnOutline } from '../geometry/polygon.ts';
import { distance, midpoint, type Spot } from '../geometry/spot.ts';

/** How far along a–b, from 0 to 1, the segment c–d crosses it; null when it does not or they are parallel. */
function crossingAt(a: Spot, b: Spot, c: Spot, d: Spot): number | null {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const area = ux * vy - uy * vx;
  const along = ((c.x - a.x) * vy - (c.y - a.y) * vx) / area;
  const across = ((c.x - a.x) * uy - (c.y - a.y) * ux) / area;
  return along >= 0 && along <= 1 && across >= 0 && across <= 1 ? along : null;
}

/** Do two outlines meet or cross anywhere? One inside the other does not count; parallel edges do not either. */
export function outlinesCross(one: readonly Spot[], other: readonly Spot[]): boolean {
  const walls = edgesOf(other);
  return edgesOf(one).some(([a, b]) => walls.some(([c, d]) => crossingAt(a, b, c, d) !== null));
}

/** The edges of an outline that come near another one; the rest cannot meet it. */
function edgesNear(outline: readonly Spot[], other: readonly Spot[]): [Spot, Spot][] {
  const box = boxOf(other);
  return edgesOf(outline).filter((edge) => boxesNear(boxOf(edge), box, 0));
}

/** The first corner of each edge, and the middle of each piece into which the other outline cuts it. */
function piecePoints(edges: readonly [Spot, Spot][], other: readonly Spot[]): Spot[] {
  const walls = edgesOf(other);
  return edges.flatMap(([a, b]) => {
    const cuts = walls.flatMap(([c, d]) => crossingAt(a, b, c, d) ?? []);
    const stops = [0, ...cuts.sort((x, y) => x - y), 1].map((part) => ({
      x: a.x + part * (b.x - a.x),
      y: a.y + part * (b.y - a.y),
    }));
    return [a, ...stops.slice(1).map((stop, index) => midpoint(stops[index] ?? a, stop))];
  });
}

/** @returns how deep a spot lies inside an outline [m]; 0 outside */
function depthM(outline: readonly Spot[], spot: Spot): number {
  const nearest = contains(outline, spot) ? nearestOnOutline(outline, spot) : null;
  return nearest ? distance(nearest, spot) : 0;
}

/** @returns how far a spot lies outside an outline [m]; 0 inside */
function outsideM(outline: readonly Spot[], spot: Spot): number {
  const nearest = contains(outline, spot) ? null : nearestOnOutline(outline, spot);
  return nearest ? distance(nearest, spot) : 0;
}

/**
 * How deep two outlines lie in each other.
 *
 * @returns the greatest depth found at a corner, a piece between two crossings or a middle of one that lies
 *   in the other [m]; 0 when they are apart or only touch
 */
export function overlapM(one: readonly Spot[], other: readonly Spot[]): number {
  let most = 0;
  for (const [inner, outer] of [
    [one, other],
    [other, one],
  ] as const) {
    const middle = centroidOf(inner);
    const points = piecePoints(edgesNear(inner, outer), outer);
    // Two equal outlines have all their corners on each other's edges: only the middle tells.
    if (contains(inner, middle)) points.push(middle);
    for (const point of points) most = Math.max(most, depthM(outer, point));
  }
  return most;
}

/**
 * How far an outline reaches out of a room.
 *
 * @returns the greatest distance found past the walls, or of an inward corner of the room into the outline
 *   [m]; 0 when it lies inside
 */
export function beyondM(outline: readonly Spot[], room: readonly Spot[]): number {
  let most = 0;
  for (const point of piecePoints(edgesOf(outline), room)) most = Math.max(most, outsideM(room, point));
  for (const corner of room) most = Math.max(most, depthM(outline, corner));
  return most;
}
