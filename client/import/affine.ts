import type { Spot } from '../../core/geometry/spot.ts';

/** A map of the plane: x' = a·x + c·y + e, y' = b·x + d·y + f (the letters of SVG's `matrix`). */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** Everything stays where it is. */
export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** @returns where the map takes a point */
export function apply({ a, b, c, d, e, f }: Affine, { x, y }: Spot): Spot {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** @returns the map that does `inner` first and `outer` then */
export function compose(outer: Affine, inner: Affine): Affine {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** A shift. */
export const shift = (x: number, y: number): Affine => ({ ...IDENTITY, e: x, f: y });

/** A stretch along each axis about the origin. */
export const stretch = (x: number, y: number): Affine => ({ ...IDENTITY, a: x, d: y });

/** A turn about the origin, from +x toward +y [°]. */
export function turn(angleDeg: number): Affine {
  const angle = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}
