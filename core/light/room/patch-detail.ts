import { type Cover, createCover } from './cover.ts';
import type { Patches } from './exchange.ts';
import type { RoomModel } from './room-model.ts';
import { quadCount, type Spread, spreadOver } from './spread.ts';

/** What is often asked about patches and follows from them. */
export type PatchDetail = {
  /** Greatest width through the centre over √2 [m]: the side of a square one */
  readonly spans: Float64Array;
  /** Share of the corners' area that is open [1]: below 1 where a thing covers a part */
  readonly litShares: Float64Array;
  /** Four points of each patch [m], spread over what of it is open, as x, y, z triples */
  readonly looks: Float64Array;
};

/** Points per patch from which one looks whether another is hidden. */
export const LOOKS_PER_PATCH = 4;

const known = new WeakMap<Patches, PatchDetail>();

function areaOfCorners(corners: Float64Array): number {
  const spread: Spread = { x: 0, y: 0, z: 0, weightM2: 0 };
  let area = 0;
  for (let quad = 0; quad < quadCount(corners); quad += 1) {
    // The weight is linear over the square: its value in the middle is its mean.
    spreadOver(corners, quad, 0.5, 0.5, spread);
    area += spread.weightM2;
  }
  return area;
}

/** A look under or inside a thing would see nothing: it moves to the centre, which is open. */
function putLooks(patches: Patches, cover: Cover, index: number, looks: Float64Array): void {
  const corners = patches.corners[index] as Float64Array;
  const surface = patches.surfaces[index];
  const own = surface?.kind === 'blocker' ? surface.blocker : -1;
  const level = Math.abs(patches.normals[3 * index + 2] as number) > 0.1;
  const quads = quadCount(corners);
  const spread: Spread = { x: 0, y: 0, z: 0, weightM2: 0 };
  for (let k = 0; k < LOOKS_PER_PATCH; k += 1) {
    spreadOver(corners, k % quads, k & 1 ? 0.75 : 0.25, k & 2 ? 0.75 : 0.25, spread);
    const at = 3 * (LOOKS_PER_PATCH * index + k);
    const open = !level || cover.open({ x: spread.x, y: spread.y }, spread.z, own);
    looks[at] = open ? spread.x : (patches.centres[3 * index] as number);
    looks[at + 1] = open ? spread.y : (patches.centres[3 * index + 1] as number);
    looks[at + 2] = open ? spread.z : (patches.centres[3 * index + 2] as number);
  }
}

/**
 * Sizes, open shares and looks of a room's patches; made once for a set of patches and kept with it.
 *
 * @source own-rule
 */
export function patchDetail(room: RoomModel, patches: Patches): PatchDetail {
  const before = known.get(patches);
  if (before) return before;
  const { count, centres, corners, areas } = patches;
  const detail: PatchDetail = {
    spans: new Float64Array(count),
    litShares: new Float64Array(count),
    looks: new Float64Array(3 * LOOKS_PER_PATCH * count),
  };
  const cover = createCover(room);
  for (let i = 0; i < count; i += 1) {
    const around = corners[i] as Float64Array;
    let square = 0;
    for (let k = 0; k < around.length; k += 3) {
      const dx = (around[k] as number) - (centres[3 * i] as number);
      const dy = (around[k + 1] as number) - (centres[3 * i + 1] as number);
      const dz = (around[k + 2] as number) - (centres[3 * i + 2] as number);
      square = Math.max(square, dx * dx + dy * dy + dz * dz);
    }
    detail.spans[i] = Math.sqrt(2 * square);
    const share = (areas[i] as number) / areaOfCorners(around);
    // Rounding must not make a whole patch one that is covered in part.
    detail.litShares[i] = share > 1 - 1e-6 ? 1 : share;
    putLooks(patches, cover, i, detail.looks);
  }
  known.set(patches, detail);
  return detail;
}
