import { keepFinite } from '../units/finite.ts';
import type { Spot } from './spot.ts';

/** A place or a direction in the room [m]: x and y as on the plan (y DOWN), z up from the floor. */
export type Vec3 = { readonly x: number; readonly y: number; readonly z: number };

/** @returns the place over a spot at a height [m] */
export function above(spot: Spot, heightM: number): Vec3 {
  return { x: spot.x, y: spot.y, z: heightM };
}

/** @returns a − b: the way from b to a [m] */
export function from(b: Vec3, a: Vec3): Vec3 {
  return { x: keepFinite(a.x - b.x), y: keepFinite(a.y - b.y), z: keepFinite(a.z - b.z) };
}

/** @returns dot product [m²] */
export function dot3(a: Vec3, b: Vec3): number {
  return keepFinite(a.x * b.x + a.y * b.y + a.z * b.z);
}

/** How long a vector is. @returns length [m] */
export function length3(a: Vec3): number {
  return keepFinite(Math.hypot(a.x, a.y, a.z));
}

/**
 * The vector of length 1 in the same direction.
 *
 * @returns unit vector [1]; null for a vector without length
 */
export function unit3(a: Vec3): Vec3 | null {
  const largest = Math.max(Math.abs(a.x), Math.abs(a.y), Math.abs(a.z));
  if (!(largest > 0) || !Number.isFinite(largest)) return null;
  const [x, y, z] = [a.x / largest, a.y / largest, a.z / largest];
  const length = Math.hypot(x, y, z);
  return { x: x / length, y: y / length, z: z / length };
}

/**
 * Where a head points.
 *
 * @param facingDeg bearing, clockwise from plan-up [°]
 * @param tiltDeg downward from level [°]
 * @returns unit vector [1]
 */
export function pointing(facingDeg: number, tiltDeg: number): Vec3 {
  const facing = ((facingDeg % 360) * Math.PI) / 180;
  const tilt = ((tiltDeg % 360) * Math.PI) / 180;
  return {
    x: Math.sin(facing) * Math.cos(tilt) + 0,
    y: -Math.cos(facing) * Math.cos(tilt) + 0,
    z: -Math.sin(tilt) + 0,
  };
}
