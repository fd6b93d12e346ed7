import fc from 'fast-check';
import type { Vec3 } from '../../../core/geometry/vec3.ts';
import type { Lamp } from '../../../core/light/lamp.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const head = fc.record({
  guideNumberM: real(8, 80),
  zoomMm: real(20, 105),
  leastPowerStops: fc.constant(-7),
});
export const umbrella = fc.record({
  diameterM: real(0.5, 1.8),
  forwardFraction: real(0.2, 0.6),
  backFraction: fc.option(real(0, 0.4), { nil: undefined }),
  lossStops: fc.option(real(-2, 5), { nil: undefined }),
});
export const card = fc.record({ widthM: real(0, 0.3), lossStops: real(0, 5), upFraction: real(0, 1) });
export const place = fc.record({ x: real(-20, 20), y: real(-20, 20), z: real(0, 6) });
export const facingDeg = real(-360, 360);
export const tiltDeg = real(-90, 90);
/** Any direction, as a unit vector. */
export const direction: fc.Arbitrary<Vec3> = fc.tuple(real(-1, 1), real(0, 2 * Math.PI)).map(([z, turn]) => ({
  x: Math.sqrt(1 - z * z) * Math.cos(turn),
  y: Math.sqrt(1 - z * z) * Math.sin(turn),
  z,
}));

/** Light on an element at a place that looks along a normal. */
export function onAt(lamp: Lamp, at: Vec3, normal: Vec3): number {
  return lamp.on(at.x, at.y, at.z, normal.x, normal.y, normal.z);
}

/** So far from a place along a direction. */
export function along(from: Vec3, way: Vec3, byM: number): Vec3 {
  return { x: from.x + way.x * byM, y: from.y + way.y * byM, z: from.z + way.z * byM };
}

/** All light that arrives on the inside of a cube about a lamp: the plain sum over small squares. */
export function throughCube(lamp: Lamp, halfM: number, cells: number): number {
  const side = (2 * halfM) / cells;
  let sum = 0;
  for (const sign of [-1, 1]) {
    for (let i = 0; i < cells; i += 1) {
      for (let j = 0; j < cells; j += 1) {
        const a = (i + 0.5) * side - halfM;
        const b = (j + 0.5) * side - halfM;
        const h = sign * halfM;
        sum += lamp.on(lamp.x + h, lamp.y + a, lamp.z + b, -sign, 0, 0);
        sum += lamp.on(lamp.x + a, lamp.y + h, lamp.z + b, 0, -sign, 0);
        sum += lamp.on(lamp.x + a, lamp.y + b, lamp.z + h, 0, 0, -sign);
      }
    }
  }
  return sum * side * side;
}
