import type { Spot } from '../../geometry/spot.ts';
import type { Vec3 } from '../../geometry/vec3.ts';
import { keepFinite } from '../../units/finite.ts';
import type { Surface } from './exchange.ts';

/**
 * A flat face of the room, in a frame of its own: a point is origin + x·u + y·v, the inward normal is u × v
 * (u, v of length 1, at right angles; × taken on the numbers x, y, z as they are).
 */
export type Face = {
  readonly surface: Surface;
  readonly reflectance: number;
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** Corners in (u, v) [m], in positive order; where `half`, only its part with v ≥ 0 is the face */
  readonly polygon: readonly Spot[];
  readonly half: boolean;
  /** How many patch sizes long its patches may be along v [1] */
  readonly stretch: number;
};

/**
 * @returns the place [m] of a point of a face
 * @source textbook-geometry
 */
export function placeOn({ origin, u, v }: Face, { x, y }: Spot): Vec3 {
  return {
    x: keepFinite(origin.x + x * u.x + y * v.x),
    y: keepFinite(origin.y + x * u.y + y * v.y),
    z: keepFinite(origin.z + x * u.z + y * v.z),
  };
}

/**
 * @returns the inward unit normal of a face
 * @source textbook-geometry
 */
export function normalOf({ u, v }: Face): Vec3 {
  return {
    x: keepFinite(u.y * v.z - u.z * v.y),
    y: keepFinite(u.z * v.x - u.x * v.z),
    z: keepFinite(u.x * v.y - u.y * v.x),
  };
}
