import type { Spot } from '../../core/geometry/spot.ts';
import type { Ellipse } from './curves.ts';

const DEG = 180 / Math.PI;

/**
 * An arc command of a path by its centre (SVG 1.1, appendix F.6.5 and F.6.6; the symbols are the standard's).
 *
 * @param numbers rx, ry, turn [°], large-arc flag, sweep flag
 * @returns the ellipse and which part of it; null where the standard wants a straight line
 */
export function svgArc(
  from: Spot,
  [givenRx = 0, givenRy = 0, phiDeg = 0, large = 0, sweep = 0]: readonly number[],
  to: Spot,
): { readonly ellipse: Ellipse; readonly fromDeg: number; readonly sweepDeg: number } | null {
  let rx = Math.abs(givenRx);
  let ry = Math.abs(givenRy);
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return null;
  const cos = Math.cos(phiDeg / DEG);
  const sin = Math.sin(phiDeg / DEG);
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [x1, y1] = [cos * hx + sin * hy, -sin * hx + cos * hy]; // (F.6.5.1)
  const lambda = (x1 / rx) ** 2 + (y1 / ry) ** 2; // (F.6.6.2)
  if (lambda > 1) {
    rx *= Math.sqrt(lambda);
    ry *= Math.sqrt(lambda);
  }
  const under = 1 / ((x1 / rx) ** 2 + (y1 / ry) ** 2) - 1; // (F.6.5.2), divided by rx²ry²
  const factor = Math.sqrt(Math.max(0, under)) * (Boolean(large) === Boolean(sweep) ? -1 : 1);
  const [cx, cy] = [(factor * rx * y1) / ry, (-factor * ry * x1) / rx];
  const fromDeg = Math.atan2((y1 - cy) / ry, (x1 - cx) / rx) * DEG; // (F.6.5.5)
  const toDeg = Math.atan2((-y1 - cy) / ry, (-x1 - cx) / rx) * DEG;
  const turned = (((toDeg - fromDeg) % 360) + 360) % 360;
  return {
    ellipse: {
      centre: {
        x: cos * cx - sin * cy + (from.x + to.x) / 2, // (F.6.5.3)
        y: sin * cx + cos * cy + (from.y + to.y) / 2,
      },
      across: rx,
      along: ry,
      turnDeg: phiDeg,
    },
    fromDeg,
    sweepDeg: sweep ? turned : turned - 360,
  };
}
