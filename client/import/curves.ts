import type { Spot } from '../../core/geometry/spot.ts';

/** A curve becomes straight pieces of this turn: with 7.5° they lie within 0.3 % of the radius. */
const PIECE_DEG = 7.5;
/** Pieces of a curve that is given by control points. */
const BEZIER_PIECES = 16;

const RAD = Math.PI / 180;

/** An ellipse: centre, half-axes, and the turn of the first one. Angles grow from +x toward +y. */
export interface Ellipse {
  readonly centre: Spot;
  readonly across: number;
  readonly along: number;
  readonly turnDeg: number;
}

/**
 * Points on an ellipse from one angle on, both ends included.
 *
 * @param fromDeg angle of the first point, as in the ellipse's own axes [°]
 * @param sweepDeg how far the arc goes, negative the other way [°]
 */
export function arcPoints(ellipse: Ellipse, fromDeg: number, sweepDeg: number): Spot[] {
  const sweep = Math.max(-360, Math.min(360, Number.isFinite(sweepDeg) ? sweepDeg : 0));
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / PIECE_DEG - 1e-9));
  const cos = Math.cos(ellipse.turnDeg * RAD);
  const sin = Math.sin(ellipse.turnDeg * RAD);
  return Array.from({ length: pieces + 1 }, (_, index) => {
    const angle = (fromDeg + (sweep * index) / pieces) * RAD;
    const x = ellipse.across * Math.cos(angle);
    const y = ellipse.along * Math.sin(angle);
    return { x: ellipse.centre.x + x * cos - y * sin, y: ellipse.centre.y + x * sin + y * cos };
  });
}

/** A whole ellipse as a ring; the first corner is not repeated. */
export function ellipseRing(ellipse: Ellipse): Spot[] {
  return arcPoints(ellipse, 0, 360).slice(0, -1);
}

/**
 * The arc between two corners of a polyline, without its ends, from its bulge: the tangent of a quarter of the angle that
 * it spans, positive when it runs from +x toward +y (DXF reference, group code 42).
 */
export function bulgePoints(from: Spot, to: Spot, bulge: number): Spot[] {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const chord = Math.hypot(dx, dy);
  if (!(chord > 0) || !Number.isFinite(bulge) || Math.abs(bulge) < 1e-6) return [];
  const spanDeg = (4 * Math.atan(bulge)) / RAD;
  // From the middle of the chord to the centre, as parts of the chord, to the left of the way from → to.
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + to.x) / 2 - dy * off, y: (from.y + to.y) / 2 + dx * off };
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const fromDeg = Math.atan2(from.y - centre.y, from.x - centre.x) / RAD;
  return arcPoints({ centre, across: radius, along: radius, turnDeg: 0 }, fromDeg, spanDeg).slice(1, -1);
}

/** A cubic Bézier curve without its first point. */
export function cubicPoints(from: Spot, first: Spot, second: Spot, to: Spot): Spot[] {
  return Array.from({ length: BEZIER_PIECES }, (_, index) => {
    const t = (index + 1) / BEZIER_PIECES;
    const u = 1 - t;
    const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    return {
      x: a * from.x + b * first.x + c * second.x + d * to.x,
      y: a * from.y + b * first.y + c * second.y + d * to.y,
    };
  });
}

/** A quadratic Bézier curve without its first point. */
export function quadraticPoints(from: Spot, control: Spot, to: Spot): Spot[] {
  const toward = (end: Spot): Spot => ({
    x: end.x + (2 / 3) * (control.x - end.x),
    y: end.y + (2 / 3) * (control.y - end.y),
  });
  return cubicPoints(from, toward(from), toward(to), to);
}
