import { isSimple } from '../geometry/polygon.ts';
import type { Spot } from '../geometry/spot.ts';
import type { Pixel } from './traced.ts';

/** Maps a picture taken at a slant to the plan, and back; null for what lies on or beyond the horizon. */
export type Homography = {
  readonly toPlan: (pixel: Pixel) => Spot | null;
  readonly toPicture: (spot: Spot) => Pixel | null;
};

type Matrix = readonly [number, number, number, number, number, number, number, number, number];
type Quad = readonly [Spot, Spot, Spot, Spot];

/** A triangle of three of the four corners with less than this share of the box's area is a line. @source own-rule */
const LEAST_TRIANGLE = 1e-3;
/** Points whose divisor is smaller than this, 1 being the first corner's, are the horizon. */
const HORIZON = 1e-9;
/** Pixels and metres beyond this are no picture and no plan. @source own-rule */
const MOST_SIZE = 1e6;

function quadOf(points: readonly Spot[]): Quad | null {
  const [a, b, c, d] = points;
  return a && b && c && d && points.length === 4 ? [a, b, c, d] : null;
}

function turnAt(a: Spot, b: Spot, c: Spot): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

/** Twice the signed areas of the four corner triangles. */
function turnsOf([a, b, c, d]: Quad): number[] {
  return [turnAt(a, b, c), turnAt(b, c, d), turnAt(c, d, a), turnAt(d, a, b)];
}

function quadFault(quad: Quad, where: string): string | null {
  if (!quad.every(({ x, y }) => Math.max(Math.abs(x), Math.abs(y)) <= MOST_SIZE)) {
    return `A corner ${where} is not a number that can be used.`;
  }
  const [xs, ys] = [quad.map(({ x }) => x), quad.map(({ y }) => y)];
  const size = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const turns = turnsOf(quad);
  if (!turns.every((turn) => Math.abs(turn) > LEAST_TRIANGLE * size * size)) {
    return `Three of the corners ${where} lie on one line.`;
  }
  if (!isSimple(quad)) return `The corners ${where} cross over: take them in order round the floor.`;
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)
    ? null
    : `One corner ${where} lies inside the other three.`;
}

/** The unit square onto a quad, corners in order. @source heckbert-projective */
function fromUnitSquare([a, b, c, d]: Quad): Matrix {
  const [sx, sy] = [a.x - b.x + c.x - d.x, a.y - b.y + c.y - d.y];
  const [ux, uy, vx, vy] = [b.x - c.x, b.y - c.y, d.x - c.x, d.y - c.y];
  const area = ux * vy - vx * uy;
  const g = (sx * vy - vx * sy) / area;
  const h = (ux * sy - sx * uy) / area;
  const [gb, hd] = [g * b.x, h * d.x];
  return [b.x - a.x + gb, d.x - a.x + hd, a.x, b.y - a.y + g * b.y, d.y - a.y + h * d.y, a.y, g, h, 1];
}

/** The adjugate: the inverse but for a factor, which a projective map does not feel. */
function adjugate([a, b, c, d, e, f, g, h, i]: Matrix): Matrix {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}

function product(l: Matrix, r: Matrix): Matrix {
  return [
    l[0] * r[0] + l[1] * r[3] + l[2] * r[6],
    l[0] * r[1] + l[1] * r[4] + l[2] * r[7],
    l[0] * r[2] + l[1] * r[5] + l[2] * r[8],
    l[3] * r[0] + l[4] * r[3] + l[5] * r[6],
    l[3] * r[1] + l[4] * r[4] + l[5] * r[7],
    l[3] * r[2] + l[4] * r[5] + l[5] * r[8],
    l[6] * r[0] + l[7] * r[3] + l[8] * r[6],
    l[6] * r[1] + l[7] * r[4] + l[8] * r[7],
    l[6] * r[2] + l[7] * r[5] + l[8] * r[8],
  ];
}

function divisorAt(m: Matrix, { x, y }: Spot): number {
  return m[6] * x + m[7] * y + m[8];
}

/** The map of one quad onto another, its divisor taken as 1 at the first corner. */
function mapBetween(from: Quad, to: Quad): (spot: Spot) => Spot | null {
  const m = product(fromUnitSquare(to), adjugate(fromUnitSquare(from)));
  const first = divisorAt(m, from[0]);
  return (spot) => {
    const w = divisorAt(m, spot);
    if (!(w / first > HORIZON)) return null;
    const mapped = {
      x: (m[0] * spot.x + m[1] * spot.y + m[2]) / w,
      y: (m[3] * spot.x + m[4] * spot.y + m[5]) / w,
    };
    return Number.isFinite(mapped.x) && Number.isFinite(mapped.y) ? mapped : null;
  };
}

/**
 * The map between a picture of the floor taken at a slant and the plan, from four corners. For a rectangle of
 * two known lengths, `onPlan` is what `rectangleOutline` gives.
 *
 * ASSUMPTION: straight walls are straight in the picture (a lens without distortion), and all four corners lie
 * on the floor.
 *
 * @param inPicture four corners in order round the floor [px]
 * @param onPlan the same corners on the plan, in the same order [m]
 * @returns the map; else the reason: not four corners, three on one line, crossed, one inside the others, or
 *   one list clockwise and the other not
 * @source heckbert-projective
 */
export function createHomography(
  inPicture: readonly Pixel[],
  onPlan: readonly Spot[],
): Homography | { readonly reason: string } {
  const [from, to] = [quadOf(inPicture), quadOf(onPlan)];
  if (!from || !to) {
    return { reason: `Four corners are needed; there are ${inPicture.length} and ${onPlan.length}.` };
  }
  const fault = quadFault(from, 'in the picture') ?? quadFault(to, 'on the plan');
  if (fault !== null) return { reason: fault };
  if (Math.sign(turnsOf(from)[0] ?? 0) !== Math.sign(turnsOf(to)[0] ?? 0)) {
    return { reason: 'The corners in the picture run the other way round than those on the plan.' };
  }
  return { toPlan: mapBetween(from, to), toPicture: mapBetween(to, from) };
}
