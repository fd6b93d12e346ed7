import type { Patches } from './exchange.ts';
import { meanFactor } from './form-factor.ts';
import { LOOKS_PER_PATCH, type PatchDetail } from './patch-detail.ts';
import type { Sight } from './sight.ts';

/** Up to so many spans apart, patches are taken as the polygons they are; farther off, as points. */
const NEAR_SPANS = 5;
/** Up to so many spans apart they may touch, and one averages over more points. */
const TOUCHING_SPANS = 1.6;

/** Share of four lines between two patches that nothing cuts: 0, ¼ … 1. */
function visibleShare(sight: Sight, looks: Float64Array, i: number, j: number): number {
  let clear = 0;
  for (let k = 0; k < LOOKS_PER_PATCH; k += 1) {
    const a = 3 * (LOOKS_PER_PATCH * i + k);
    // Another corner of the other one: parallel lines would all pass or all miss a thing.
    const b = 3 * (LOOKS_PER_PATCH * j + ((k + 1) % LOOKS_PER_PATCH));
    const seen = sight.clear(
      looks[a] as number,
      looks[a + 1] as number,
      looks[a + 2] as number,
      looks[b] as number,
      looks[b + 1] as number,
      looks[b + 2] as number,
    );
    if (seen) clear += 1;
  }
  return clear / LOOKS_PER_PATCH;
}

/** Mean of both directions of A·F for two patches that are near each other [m²]. */
function nearExchange(patches: Patches, detail: PatchDetail, i: number, j: number, pieces: number): number {
  const { areas, normals, corners } = patches;
  const [a, b] = [corners[i] as Float64Array, corners[j] as Float64Array];
  const toJ = meanFactor(
    a,
    normals[3 * i] as number,
    normals[3 * i + 1] as number,
    normals[3 * i + 2] as number,
    b,
    pieces,
  );
  const toI = meanFactor(
    b,
    normals[3 * j] as number,
    normals[3 * j + 1] as number,
    normals[3 * j + 2] as number,
    a,
    pieces,
  );
  const fromI = (areas[i] as number) * toJ * (detail.litShares[j] as number);
  const fromJ = (areas[j] as number) * toI * (detail.litShares[i] as number);
  return (fromI + fromJ) / 2;
}

/**
 * Puts the exchange S = A·F of patch i with all later ones into both triangles of a matrix: exact polygon
 * factors, averaged over points of both, where they are near; cos·cos·A·A/(π r²) where they are far.
 *
 * @param i which row
 * @param exchange row-major count × count [m²], written in place
 * @source radiosity
 */
export function putExchangeRow(
  patches: Patches,
  detail: PatchDetail,
  sight: Sight | null,
  i: number,
  exchange: Float64Array,
): void {
  const { count, centres, normals, areas } = patches;
  const [x, y, z] = [centres[3 * i] as number, centres[3 * i + 1] as number, centres[3 * i + 2] as number];
  const [nx, ny, nz] = [normals[3 * i] as number, normals[3 * i + 1] as number, normals[3 * i + 2] as number];
  const span = detail.spans[i] as number;
  for (let j = i + 1; j < count; j += 1) {
    const dx = (centres[3 * j] as number) - x;
    const dy = (centres[3 * j + 1] as number) - y;
    const dz = (centres[3 * j + 2] as number) - z;
    const mx = normals[3 * j] as number;
    const my = normals[3 * j + 1] as number;
    const mz = normals[3 * j + 2] as number;
    const square = dx * dx + dy * dy + dz * dz;
    const fromI = nx * dx + ny * dy + nz * dz;
    const fromJ = -(mx * dx + my * dy + mz * dz);
    const reach = Math.max(span, detail.spans[j] as number);
    const isNear = square < NEAR_SPANS * NEAR_SPANS * reach * reach;
    let value = 0;
    if (isNear) {
      // Wholly behind each other's plane, as patches of one face are, nothing passes.
      if (fromI > -reach && fromJ > -reach && !(fromI < 1e-9 && fromJ < 1e-9)) {
        const touching = square < TOUCHING_SPANS * TOUCHING_SPANS * reach * reach;
        value = nearExchange(patches, detail, i, j, touching ? 2 : 1);
      }
    } else if (fromI > 0 && fromJ > 0) {
      value = (fromI * fromJ * (areas[i] as number) * (areas[j] as number)) / (Math.PI * square * square);
    }
    if (value > 0 && sight) value *= visibleShare(sight, detail.looks, i, j);
    exchange[i * count + j] = value;
    exchange[j * count + i] = value;
  }
}
