import { keepFinite } from '../units/finite.ts';

/** A place on the plan [m]: x to the right, y DOWN the plan. Also used for vectors on the plan. */
export type Spot = { readonly x: number; readonly y: number };

/** @returns distance on the plan [m] */
export function distance(a: Spot, b: Spot): number {
  return keepFinite(Math.hypot(b.x - a.x, b.y - a.y));
}

/** @returns a + b, component by component [m] */
export function add(a: Spot, b: Spot): Spot {
  return { x: keepFinite(a.x + b.x), y: keepFinite(a.y + b.y) };
}

/** @returns a − b, component by component: the way from b to a [m] */
export function subtract(a: Spot, b: Spot): Spot {
  return { x: keepFinite(a.x - b.x), y: keepFinite(a.y - b.y) };
}

/** @returns the vector times a factor [m] */
export function scale(vector: Spot, factor: number): Spot {
  return { x: keepFinite(vector.x * factor), y: keepFinite(vector.y * factor) };
}

/** @returns the point half-way between two spots [m] */
export function midpoint(a: Spot, b: Spot): Spot {
  return { x: a.x / 2 + b.x / 2, y: a.y / 2 + b.y / 2 };
}

/**
 * A vector turned about the origin.
 *
 * @param turnDeg clockwise on the plan as drawn (y down) [°]
 * @returns vector of the same length [m]
 */
export function rotate(vector: Spot, turnDeg: number): Spot {
  const turn = ((turnDeg % 360) * Math.PI) / 180;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  // With y down, the usual rotation matrix turns clockwise as seen.
  return {
    x: keepFinite(vector.x * cos - vector.y * sin),
    y: keepFinite(vector.x * sin + vector.y * cos),
  };
}

/**
 * The vector of length 1 in the same direction.
 *
 * @returns unit vector [1]; null for a vector without length
 */
export function unit(vector: Spot): Spot | null {
  const largest = Math.max(Math.abs(vector.x), Math.abs(vector.y));
  if (!(largest > 0) || !Number.isFinite(largest)) return null;
  // Scaled first, so that neither very long nor very short vectors over- or underflow.
  const x = vector.x / largest;
  const y = vector.y / largest;
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}

/** @returns dot product of two vectors [m²] */
export function dot(a: Spot, b: Spot): number {
  return keepFinite(a.x * b.x + a.y * b.y);
}
