import { keepFinite } from '../../units/finite.ts';
import { gaussPoint, quadCount, type Spread, spreadOver } from './spread.ts';

/** Corners of a convex polygon in space, as x, y, z triples [m], in positive order about its normal. */
export type Corners = Float64Array | readonly number[];

/** Corners of the polygon cut at the horizon of the element, relative to it. Reused: this runs very often. */
const cut = new Float64Array(3 * 40);
const MOST_CORNERS = 38;

/** Cuts a polygon at the plane through p with normal n, into `cut`. @returns number of corners kept */
function cutAtHorizon(x: number, y: number, z: number, nx: number, ny: number, nz: number, corners: Corners) {
  const last = Math.min(corners.length / 3, MOST_CORNERS) - 1;
  let ax = (corners[3 * last] as number) - x;
  let ay = (corners[3 * last + 1] as number) - y;
  let az = (corners[3 * last + 2] as number) - z;
  let upA = nx * ax + ny * ay + nz * az;
  let count = 0;
  for (let k = 0; k <= last; k += 1) {
    const bx = (corners[3 * k] as number) - x;
    const by = (corners[3 * k + 1] as number) - y;
    const bz = (corners[3 * k + 2] as number) - z;
    const upB = nx * bx + ny * by + nz * bz;
    if (upA > 0 !== upB > 0) {
      const part = upA / (upA - upB);
      cut[3 * count] = ax + part * (bx - ax);
      cut[3 * count + 1] = ay + part * (by - ay);
      cut[3 * count + 2] = az + part * (bz - az);
      count += 1;
    }
    if (upB > 0) {
      cut[3 * count] = bx;
      cut[3 * count + 1] = by;
      cut[3 * count + 2] = bz;
      count += 1;
    }
    ax = bx;
    ay = by;
    az = bz;
    upA = upB;
  }
  return count;
}

/**
 * Share of what a small flat element sends out diffusely that reaches the front of a polygon, nothing between
 * (equally: light on the element from the polygon of exitance 1). Lambert's contour formula,
 * F = 1/(2π) · Σ over the edges of angle × (n · unit vector at right angles to edge and element), with the
 * polygon cut at the element's horizon.
 *
 * @param x, y, z the element [m]
 * @param nx, ny, nz its unit normal
 * @param corners up to 38 corners
 * @returns 0 to 1; 0 from behind the polygon and for a polygon behind the element
 * @source lambert-contour
 */
export function pointFactor(
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  corners: Corners,
): number {
  const count = cutAtHorizon(x, y, z, nx, ny, nz, corners);
  if (count < 3) return 0;
  let sum = 0;
  let ax = cut[3 * count - 3] as number;
  let ay = cut[3 * count - 2] as number;
  let az = cut[3 * count - 1] as number;
  for (let k = 0; k < count; k += 1) {
    const bx = cut[3 * k] as number;
    const by = cut[3 * k + 1] as number;
    const bz = cut[3 * k + 2] as number;
    const cx = ay * bz - az * by;
    const cy = az * bx - ax * bz;
    const cz = ax * by - ay * bx;
    const sine = Math.sqrt(cx * cx + cy * cy + cz * cz);
    if (sine > 0)
      sum += (Math.atan2(sine, ax * bx + ay * by + az * bz) / sine) * (nx * cx + ny * cy + nz * cz);
    ax = bx;
    ay = by;
    az = bz;
  }
  // Seen from its front, a polygon in positive order runs the other way round.
  return Math.max(0, Math.min(1, keepFinite(-sum / (2 * Math.PI))));
}

/** Parts each way at most: beyond, nothing gets better. */
const MOST_PARTS = 64;

const spread: Spread = { x: 0, y: 0, z: 0, weightM2: 0 };

/**
 * Mean of the point factor over a polygon A: the view factor from A to B with nothing between.
 *
 * @param parts A is taken in parts × parts parts (per four of its corners), each with 2 × 2 Gauss points
 * @param nx, ny, nz unit normal of A
 * @source lambert-contour
 */
export function meanFactor(
  a: Corners,
  nx: number,
  ny: number,
  nz: number,
  b: Corners,
  parts: number,
): number {
  let sum = 0;
  let area = 0;
  const lines = 2 * Math.max(1, Math.min(MOST_PARTS, Math.round(keepFinite(parts))));
  for (let quad = 0; quad < quadCount(a); quad += 1) {
    for (let i = 0; i < lines; i += 1) {
      for (let j = 0; j < lines; j += 1) {
        spreadOver(a, quad, gaussPoint(i, lines / 2), gaussPoint(j, lines / 2), spread);
        sum += spread.weightM2 * pointFactor(spread.x, spread.y, spread.z, nx, ny, nz, b);
        area += spread.weightM2;
      }
    }
  }
  return area > 0 ? keepFinite(sum / area) : 0;
}

/**
 * View factor from a convex polygon A to a convex polygon B, nothing between them.
 *
 * @param parts 1 to 64; more where they touch
 * @returns share of what A sends out diffusely that reaches B, 0 to 1; 0 when A has no area
 * @source lambert-contour
 */
export function polygonViewFactor(a: Corners, b: Corners, parts: number): number {
  let [nx, ny, nz] = [0, 0, 0];
  for (let k = 3; k + 5 < a.length; k += 3) {
    const [ux, uy, uz] = [0, 1, 2].map((axis) => (a[k + axis] ?? 0) - (a[axis] ?? 0)) as [
      number,
      number,
      number,
    ];
    const [vx, vy, vz] = [3, 4, 5].map((axis) => (a[k + axis] ?? 0) - (a[axis - 3] ?? 0)) as [
      number,
      number,
      number,
    ];
    nx += uy * vz - uz * vy;
    ny += uz * vx - ux * vz;
    nz += ux * vy - uy * vx;
  }
  const length = Math.hypot(nx, ny, nz);
  if (!(length > 0) || !Number.isFinite(length)) return 0;
  return Math.max(0, Math.min(1, meanFactor(a, nx / length, ny / length, nz / length, b, parts)));
}

/**
 * Solid angle of a polygon seen from a point, from its front, as a share of the whole sphere around the point:
 * what a small sphere there receives per area from the polygon of exitance 1.
 *
 * @returns 0 to 1; 0 from behind
 * @source van-oosterom
 */
export function sphereFactor(x: number, y: number, z: number, corners: Corners): number {
  let solidAngle = 0;
  const ax = (corners[0] as number) - x;
  const ay = (corners[1] as number) - y;
  const az = (corners[2] as number) - z;
  const a = Math.sqrt(ax * ax + ay * ay + az * az);
  for (let k = 3; k + 5 < corners.length; k += 3) {
    const bx = (corners[k] as number) - x;
    const by = (corners[k + 1] as number) - y;
    const bz = (corners[k + 2] as number) - z;
    const cx = (corners[k + 3] as number) - x;
    const cy = (corners[k + 4] as number) - y;
    const cz = (corners[k + 5] as number) - z;
    const b = Math.sqrt(bx * bx + by * by + bz * bz);
    const c = Math.sqrt(cx * cx + cy * cy + cz * cz);
    const volume = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const under =
      a * b * c +
      (ax * bx + ay * by + az * bz) * c +
      (ax * cx + ay * cy + az * cz) * b +
      (bx * cx + by * cy + bz * cz) * a;
    solidAngle -= 2 * Math.atan2(volume, under);
  }
  return Math.max(0, Math.min(1, keepFinite(solidAngle / (4 * Math.PI))));
}
