/** A point of a patch and the area that it stands for. */
export type Spread = { x: number; y: number; z: number; weightM2: number };

type Corners = Float64Array | readonly number[];

/**
 * @returns in how many four-sided parts (the last perhaps a triangle) points are spread over a convex polygon
 * @source own-rule
 */
export function quadCount(corners: Corners): number {
  return Math.ceil(Math.max(0, corners.length / 3 - 2) / 2);
}

/**
 * Puts a point of the unit square onto one four-sided part of a convex polygon (bilinear map), with the area
 * per unit of the square: the mean of the weights over evenly placed points is the area of the part.
 *
 * @param quad which part, from 0
 * @param across, along where in it, each 0 to 1
 * @param into the result is written here: this runs too often to make new objects
 * @source own-rule
 */
export function spreadOver(
  corners: Corners,
  quad: number,
  across: number,
  along: number,
  into: Spread,
): void {
  const b = 6 * quad + 3;
  const c = b + 3;
  const d = Math.min(c + 3, corners.length - 3);
  const ax = corners[0] as number;
  const ay = corners[1] as number;
  const az = corners[2] as number;
  const bx = corners[b] as number;
  const by = corners[b + 1] as number;
  const bz = corners[b + 2] as number;
  const cx = corners[c] as number;
  const cy = corners[c + 1] as number;
  const cz = corners[c + 2] as number;
  const dx = corners[d] as number;
  const dy = corners[d + 1] as number;
  const dz = corners[d + 2] as number;
  // The two directions in which the map grows, at this point.
  const acrossX = (1 - along) * (bx - ax) + along * (cx - dx);
  const acrossY = (1 - along) * (by - ay) + along * (cy - dy);
  const acrossZ = (1 - along) * (bz - az) + along * (cz - dz);
  const alongX = (1 - across) * (dx - ax) + across * (cx - bx);
  const alongY = (1 - across) * (dy - ay) + across * (cy - by);
  const alongZ = (1 - across) * (dz - az) + across * (cz - bz);
  into.x = ax + across * acrossX + along * (dx - ax);
  into.y = ay + across * acrossY + along * (dy - ay);
  into.z = az + across * acrossZ + along * (dz - az);
  const wx = acrossY * alongZ - acrossZ * alongY;
  const wy = acrossZ * alongX - acrossX * alongZ;
  const wz = acrossX * alongY - acrossY * alongX;
  into.weightM2 = Math.sqrt(wx * wx + wy * wy + wz * wz);
}

/** Gauss–Legendre points of two on [0, 1], both of weight one half. */
const FIRST_GAUSS = 0.5 - Math.sqrt(3) / 6;

/**
 * Where the points of an even spread lie along a line of length 1: two Gauss–Legendre points in each of its
 * parts, all of the same weight.
 *
 * @param line which point, 0 to 2·parts − 1
 * @param parts 1 or more
 * @returns 0 to 1
 * @source gauss-legendre
 */
export function gaussPoint(line: number, parts: number): number {
  return ((line >> 1) + (line & 1 ? 1 - FIRST_GAUSS : FIRST_GAUSS)) / Math.max(1, parts);
}
