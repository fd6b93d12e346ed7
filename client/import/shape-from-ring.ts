import { areaOf, centroidOf, edgesOf } from '../../core/geometry/polygon.ts';
import type { Shape } from '../../core/geometry/shape.ts';
import { distance, rotate, type Spot, subtract } from '../../core/geometry/spot.ts';

/** Fewer corners than this make no round thing; an octagon fills a circle to nine tenths. */
const ROUND_CORNERS = 8;
/** Own rule: corners that lie this near to one circle, as a part of its radius, are meant to be on it. */
const ROUND_WITHIN = 0.04;
/** Own rule: a ring that fills this much of the box around it is a box, so a table with rounded corners is one. */
const BOX_FILLED = 0.95;

/** A thing as the night document holds it: its shape around its own place. */
export interface PlacedShape {
  readonly at: Spot;
  readonly turnDeg: number;
  readonly shape: Shape;
}

function round(ring: readonly Spot[]): PlacedShape | null {
  if (ring.length < ROUND_CORNERS) return null;
  const at = centroidOf(ring);
  const radii = ring.map((corner) => distance(at, corner));
  const radiusM = radii.reduce((sum, radius) => sum + radius, 0) / radii.length;
  const isRound = radii.every((radius) => Math.abs(radius - radiusM) <= ROUND_WITHIN * radiusM);
  // Corners on one side only would be a half circle.
  const isWhole = areaOf(ring) > 0.85 * Math.PI * radiusM ** 2;
  return isRound && isWhole ? { at, turnDeg: 0, shape: { kind: 'round', radiusM } } : null;
}

/** The box around a ring that lies along one of its edges. */
function boxAlong(
  [from, to]: readonly [Spot, Spot],
  ring: readonly Spot[],
): PlacedShape & { areaM2: number } {
  const way = subtract(to, from);
  // A box turned by a quarter is the same box with its sides changed over: of the four turns the smallest.
  const angleDeg = (Math.atan2(way.y, way.x) * 180) / Math.PI;
  const turnDeg = angleDeg - 90 * Math.round(angleDeg / 90);
  const level = ring.map((corner) => rotate(corner, -turnDeg));
  const [xs, ys] = [level.map(({ x }) => x), level.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const [widthM, depthM] = [right - left, bottom - top];
  return {
    at: rotate({ x: (left + right) / 2, y: (top + bottom) / 2 }, turnDeg),
    turnDeg: turnDeg + 0,
    shape: { kind: 'box', widthM, depthM },
    areaM2: widthM * depthM,
  };
}

function box(ring: readonly Spot[]): PlacedShape | null {
  let best: (PlacedShape & { areaM2: number }) | null = null;
  for (const edge of edgesOf(ring)) {
    const candidate = boxAlong(edge, ring);
    if (!best || candidate.areaM2 < best.areaM2) best = candidate;
  }
  if (!best || areaOf(ring) < BOX_FILLED * best.areaM2) return null;
  return { at: best.at, turnDeg: best.turnDeg, shape: best.shape };
}

/**
 * What a ring of a drawing is meant to be: round (all corners about as far from the middle), a box with its turn
 * (it fills the box around it), or else its own outline about its middle.
 *
 * @param ring corners in order, at least three [m]
 * @returns the place [m], the turn from −45 to 45 [°], clockwise, and the shape
 */
export function shapeFromRing(ring: readonly Spot[]): PlacedShape {
  const plain = round(ring) ?? box(ring);
  if (plain) return plain;
  const at = centroidOf(ring);
  return { at, turnDeg: 0, shape: { kind: 'outline', points: ring.map((corner) => subtract(corner, at)) } };
}
