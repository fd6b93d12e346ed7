import type { Vec3 } from '../../geometry/vec3.ts';
import { isPositive, keepFinite } from '../../units/finite.ts';
import type { Lamp } from '../lamp.ts';
import { NEAREST_TO_LIGHT_M } from '../umbrella.ts';
import { DARK_LOBE, type Lobe } from './lobe.ts';

/**
 * A flat disc that shines to one side or to both.
 * - at: its centre [m]
 * - axis: unit vector toward its front
 * - radiusM: 0 is a point that shines like a small flat piece
 * - front, back: what leaves it on either side
 */
export type Disc = {
  readonly at: Vec3;
  readonly axis: Vec3;
  readonly radiusM: number;
  readonly front: Lobe;
  readonly back?: Lobe | undefined;
};

/** Factor of an element parallel to a Lambertian disc over the square of its radius [1/m²]. */
function alongAxis(heightM: number, sum: number, root: number, square: number): number {
  const away = sum - 2 * square;
  // As in discFactor: on either side the form that loses no digits.
  return away > 0 ? (2 * heightM * heightM) / ((root + away) * root) : (root - away) / (2 * root * square);
}

/**
 * A disc as a lamp, near and far: the exact light vector of a Lambertian disc (its factors parallel to the
 * disc and square to it) dotted with the element's normal, weighted with (cos φ)^(m−1) for a narrower lobe.
 * That is exact for a Lambertian disc and an element that sees all of it, and for any lobe far away; on the axis
 * it is I/(d² + R²). An element whose own plane cuts the disc gets a little too little.
 * Nearer than 0.1 m to the centre counts as 0.1 m.
 *
 * @returns the lamp at full power
 * @source howell-element-disc
 * @source cosine-power-lobe
 */
export function discLamp({ at, axis, radiusM, front, back = DARK_LOBE }: Disc): Lamp {
  const radius = isPositive(radiusM) ? radiusM : 0;
  const square = radius * radius;
  const { x: atX, y: atY, z: atZ } = at;
  const { x: axisX, y: axisY, z: axisZ } = axis;
  /** n is the element's inward normal, or with `faces` the way to the disc's centre. */
  const light = (x: number, y: number, z: number, nx: number, ny: number, nz: number, faces: boolean) => {
    let rx = x - atX;
    let ry = y - atY;
    let rz = z - atZ;
    let distance = Math.sqrt(rx * rx + ry * ry + rz * rz);
    if (!(distance > 0)) return 0;
    if (distance < NEAREST_TO_LIGHT_M) {
      const farther = NEAREST_TO_LIGHT_M / distance;
      rx *= farther;
      ry *= farther;
      rz *= farther;
      distance = NEAREST_TO_LIGHT_M;
    }
    const signed = rx * axisX + ry * axisY + rz * axisZ;
    const lobe = signed > 0 ? front : back;
    const height = Math.abs(signed);
    if (height === 0 || lobe.intensity === 0) return 0;
    // −n·r, whole and its part along the axis.
    const facing = faces ? distance : -(nx * rx + ny * ry + nz * rz);
    const level = faces ? (height * height) / distance : -(nx * axisX + ny * axisY + nz * axisZ) * signed;
    const aside2 = Math.max(0, distance * distance - height * height);
    const sum = distance * distance + square;
    const root = Math.sqrt(Math.max(0, sum * sum - 4 * aside2 * square));
    const parallel = (level / height) * alongAxis(height, sum, root, square);
    const across = ((facing - level) * 2 * height) / ((sum + root) * root);
    const narrower = lobe.exponent === 1 ? 1 : Math.exp((lobe.exponent - 1) * Math.log(height / distance));
    return Math.max(0, keepFinite(lobe.intensity * narrower * (parallel + across)));
  };
  return {
    ...at,
    radiusM: radius,
    flux: keepFinite(front.flux + back.flux),
    on: (x, y, z, nx, ny, nz) => light(x, y, z, nx, ny, nz, false),
    toward: (x, y, z) => light(x, y, z, 0, 0, 0, true),
  };
}
