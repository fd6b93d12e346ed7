import type { Vec3 } from '../../geometry/vec3.ts';
import { keepFinite } from '../../units/finite.ts';
import type { RoomExchange } from './exchange.ts';
import { pointFactor, sphereFactor } from './form-factor.ts';
import { LOOKS_PER_PATCH, type PatchDetail, patchDetail } from './patch-detail.ts';
import type { Sight } from './sight.ts';

/** Up to so many spans off, a patch is taken as the polygon that it is; farther off, as a point. */
const NEAR_SPANS = 4;
/** Less than this of the view found means a point outside the room or inside a thing. */
const LEAST_VIEW = 0.05;

/** Share of a patch that a point sees: its four looks when near, its centre when far. */
function seenShare(
  exchange: RoomExchange,
  detail: PatchDetail,
  sight: Sight,
  { x, y, z }: Vec3,
  j: number,
  isNear: boolean,
) {
  if (!sight.hides) return 1;
  const { centres } = exchange.patches;
  if (!isNear) {
    const at = 3 * j;
    return sight.clear(x, y, z, centres[at] as number, centres[at + 1] as number, centres[at + 2] as number)
      ? 1
      : 0;
  }
  let clear = 0;
  for (let k = 0; k < LOOKS_PER_PATCH; k += 1) {
    const at = 3 * (LOOKS_PER_PATCH * j + k);
    const { looks } = detail;
    if (sight.clear(x, y, z, looks[at] as number, looks[at + 1] as number, looks[at + 2] as number))
      clear += 1;
  }
  return clear / LOOKS_PER_PATCH;
}

/** What one patch of exitance 1, wholly seen, gives at a point, on an element with a normal or on a small sphere. */
function openWeight(
  exchange: RoomExchange,
  detail: PatchDetail,
  point: Vec3,
  normal: Vec3 | null,
  j: number,
  isNear: boolean,
) {
  const { centres, normals, areas, corners } = exchange.patches;
  if (isNear) {
    const around = corners[j] as Float64Array;
    const whole = normal
      ? pointFactor(point.x, point.y, point.z, normal.x, normal.y, normal.z, around)
      : sphereFactor(point.x, point.y, point.z, around);
    return whole * (detail.litShares[j] as number);
  }
  const dx = (centres[3 * j] as number) - point.x;
  const dy = (centres[3 * j + 1] as number) - point.y;
  const dz = (centres[3 * j + 2] as number) - point.z;
  const square = dx * dx + dy * dy + dz * dz;
  const leaving = -(
    (normals[3 * j] as number) * dx +
    (normals[3 * j + 1] as number) * dy +
    (normals[3 * j + 2] as number) * dz
  );
  if (leaving <= 0) return 0;
  const solidAngle = ((areas[j] as number) * leaving) / (square * Math.sqrt(square));
  if (!normal) return solidAngle / (4 * Math.PI);
  const arriving = (normal.x * dx + normal.y * dy + normal.z * dz) / Math.sqrt(square);
  return arriving > 0 ? (solidAngle * arriving) / Math.PI : 0;
}

/** Puts the weights of all patches at one point into a row; they sum to 1, or are all 0. */
function putWeights(
  exchange: RoomExchange,
  sight: Sight,
  point: Vec3,
  normal: Vec3 | null,
  row: Float64Array,
): void {
  const { count, centres } = exchange.patches;
  const detail = patchDetail(exchange.room, exchange.patches);
  let sum = 0;
  for (let j = 0; j < count; j += 1) {
    const dx = (centres[3 * j] as number) - point.x;
    const dy = (centres[3 * j + 1] as number) - point.y;
    const dz = (centres[3 * j + 2] as number) - point.z;
    const reach = NEAR_SPANS * (detail.spans[j] as number);
    const isNear = dx * dx + dy * dy + dz * dz < reach * reach;
    const weight = openWeight(exchange, detail, point, normal, j, isNear);
    const seen = weight > 0 ? weight * seenShare(exchange, detail, sight, point, j, isNear) : 0;
    row[j] = seen;
    sum += seen;
  }
  // The room is closed: whichever way one looks there is a surface, and uniform exitance M gives M.
  const scale = sum > LEAST_VIEW ? 1 / sum : 0;
  for (let j = 0; j < count; j += 1) row[j] = keepFinite((row[j] as number) * scale);
}

/**
 * Weights with which the exitances of all patches make the returned light at points: one row per point, one
 * column per patch, so that a map of many points is one product. Exact for the polygon of a near patch, as a
 * point far off; hidden patches count nothing; rows sum to 1, since a room is closed all round.
 *
 * @param points [m]; a point outside the room or inside a thing gets a row of zeros
 * @param normals one unit vector per point, for light on a flat element; null for the mean over a small sphere
 * (solid angle / 4π), as light on a head from all round
 * @returns row-major points × patches [1]
 * @source lambert-contour
 * @source van-oosterom
 */
export function gatherWeights(
  exchange: RoomExchange,
  sight: Sight,
  points: readonly Vec3[],
  normals: readonly Vec3[] | null,
): Float64Array {
  const { count } = exchange.patches;
  const weights = new Float64Array(points.length * count);
  for (const [index, point] of points.entries()) {
    const row = weights.subarray(index * count, (index + 1) * count);
    putWeights(exchange, sight, point, normals?.[index] ?? null, row);
  }
  return weights;
}

/**
 * Light on a flat element from all the room's surfaces.
 *
 * @param exitance of every patch [lm·s/m²]
 * @param point [m]
 * @param normal unit vector, out of the element's lit side; null for the mean over a small sphere
 * @returns returned light [lx·s]; 0 for a point outside the room or inside a thing
 * @source lambert-contour
 */
export function returnedAt(
  exchange: RoomExchange,
  sight: Sight,
  exitance: Float64Array,
  point: Vec3,
  normal: Vec3 | null,
): number {
  const weights = gatherWeights(exchange, sight, [point], normal ? [normal] : null);
  return keepFinite(weights.reduce((sum, weight, j) => sum + weight * (exitance[j] as number), 0));
}
