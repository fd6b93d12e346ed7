import { keepFinite } from '../../units/finite.ts';
import type { Patches } from '../room/exchange.ts';
import type { Sight } from '../room/sight.ts';

/** The middle of a thing [m], and the height of its top. */
export type Middle = readonly [x: number, y: number, z: number, topM: number];

/** The six ways an element at a thing's middle looks. */
const WAYS = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
] as const;

/** Which patches a thing's middle sees: 1 for those, 0 for hidden ones. */
function seenFrom(patches: Patches, sight: Sight | null, [x, y, , topM]: Middle): Uint8Array {
  const { centres, count } = patches;
  const seen = new Uint8Array(count).fill(1);
  if (!sight?.hides) return seen;
  let any = false;
  for (let patch = 0; patch < count; patch += 1) {
    const p = 3 * patch;
    const clear = sight.clear(x, y, topM, centres[p] ?? 0, centres[p + 1] ?? 0, centres[p + 2] ?? 0);
    seen[patch] = clear ? 1 : 0;
    if (clear) any = true;
  }
  // The middle of a thing built round a pillar is inside it: then it is taken to see everything.
  return any ? seen : seen.fill(1);
}

/**
 * What an element at a middle sees of each patch, facing one way: cosθ·cosθ′·A/(πd² + A), made to sum to 1
 * since the room is closed.
 */
function fillRow(
  patches: Patches,
  seen: Uint8Array,
  [x, y, z, topM]: Middle,
  [wx, wy, wz]: (typeof WAYS)[number],
  row: Float64Array,
): void {
  const { centres, normals, areas, count } = patches;
  let sum = 0;
  for (let patch = 0; patch < count; patch += 1) {
    if (seen[patch] === 0) continue;
    const p = 3 * patch;
    const dx = (centres[p] ?? 0) - x;
    const dy = (centres[p + 1] ?? 0) - y;
    // A top is lit as its own height sees the room, the sides as half of it does.
    const dz = (centres[p + 2] ?? 0) - (wz > 0 ? topM : z);
    const square = dx * dx + dy * dy + dz * dz;
    const here = wx * dx + wy * dy + wz * dz;
    const there = -((normals[p] ?? 0) * dx + (normals[p + 1] ?? 0) * dy + (normals[p + 2] ?? 0) * dz);
    if (here <= 0 || there <= 0) continue;
    const area = areas[patch] ?? 0;
    const weight = keepFinite((here * there * area) / (square * (Math.PI * square + area)));
    row[patch] = weight;
    sum += weight;
  }
  if (sum > 0) for (let patch = 0; patch < count; patch += 1) row[patch] = (row[patch] ?? 0) / sum;
}

/**
 * What the middles of things see of every patch of the room, looking along +x, −x, +y, −y, +z, −z in turn: so
 * that one product with what the patches send out gives the light on each. Cheap and rough, for things that are
 * small in the room. ASSUMPTION: patches count as points, softened near by their own size.
 *
 * @param sight of the room; null when nothing hides anything
 * @returns row-major, six rows to a middle, a column per patch; every row sums to 1 (or is 0 where it sees none)
 * @source own-rule
 */
export function viewRows(middles: readonly Middle[], patches: Patches, sight: Sight | null): Float64Array {
  const { count } = patches;
  const rows = new Float64Array(middles.length * WAYS.length * count);
  for (const [cube, middle] of middles.entries()) {
    const seen = seenFrom(patches, sight, middle);
    for (const [way, direction] of WAYS.entries()) {
      const start = (cube * WAYS.length + way) * count;
      fillRow(patches, seen, middle, direction, rows.subarray(start, start + count));
    }
  }
  return rows;
}
