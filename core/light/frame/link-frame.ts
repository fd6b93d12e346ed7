import { centroidOf } from '../../geometry/polygon.ts';
import type { Patches, Surface } from '../room/exchange.ts';
import type { Sight } from '../room/sight.ts';
import type { FrameRays } from './cast-frame.ts';
import { HIT_KINDS } from './shell.ts';
import { type Middle, viewRows } from './six-views.ts';

/**
 * Where each ray gets the room's returned light from: once per cast, whatever the lights do.
 * - patches, weights: three patches under ray i with weights that sum to 1, at [3i…]; weight 0 for none
 * - cubes: which six rows of `rows` ray i takes, counted in sixes; −1 when it has patches
 * - rows: what an element at a thing's middle sees of each patch, `patchCount` to a row, each row summing
 *   to 1, facing +x, −x, +y, −y, +z, −z in turn
 */
export type FrameLinks = {
  readonly rays: FrameRays;
  readonly patchCount: number;
  readonly patches: Int32Array;
  readonly weights: Float64Array;
  readonly cubes: Int32Array;
  readonly rows: Float64Array;
};

/** Patches mixed for one ray; the next nearest sets how far the mixing reaches, so that nothing jumps. */
const MIXED = 3;
/** Patches turned farther away than this (cosine) belong to another side of a thing [1]. */
const SAME_SIDE = 0.5;
/** One number per surface, the same for a ray and for the patches it lies on; −1 for none. */
function rayKey({ kinds, indices, solids }: FrameRays, ray: number): number {
  const kind = kinds[ray];
  const index = indices[ray] ?? 0;
  if (kind === HIT_KINDS.floor) return 0;
  if (kind === HIT_KINDS.ceiling) return 1;
  if (kind === HIT_KINDS.wall) return 2 + 2 * index;
  if (kind !== HIT_KINDS.solid) return -1;
  const blocker = solids[index]?.blocker ?? null;
  return blocker === null ? -1 : 3 + 2 * blocker;
}

function patchKey(surface: Surface): number {
  if (surface.kind === 'wall') return 2 + 2 * surface.wall;
  if (surface.kind === 'blocker') return 3 + 2 * surface.blocker;
  return surface.kind === 'floor' ? 0 : 1;
}

function patchesByKey({ surfaces }: Patches): Map<number, number[]> {
  const map = new Map<number, number[]>();
  for (const [patch, surface] of surfaces.entries()) {
    const list = map.get(patchKey(surface));
    if (list) list.push(patch);
    else map.set(patchKey(surface), [patch]);
  }
  return map;
}

/** The nearest patches of a surface, as squares of distances and numbers, nearest first. */
type Nearest = { readonly squares: Float64Array; readonly found: Int32Array };

function findNearest(
  { positions, normals }: FrameRays,
  ray: number,
  patches: Patches,
  list: readonly number[],
  nearest: Nearest,
): void {
  const { squares, found } = nearest;
  squares.fill(Number.POSITIVE_INFINITY);
  found.fill(-1);
  const { centres, normals: turns } = patches;
  const a = 3 * ray;
  const [x, y, z] = [positions[a] ?? 0, positions[a + 1] ?? 0, positions[a + 2] ?? 0];
  const [nx, ny, nz] = [normals[a] ?? 0, normals[a + 1] ?? 0, normals[a + 2] ?? 0];
  for (const patch of list) {
    const p = 3 * patch;
    const dx = (centres[p] ?? 0) - x;
    const dy = (centres[p + 1] ?? 0) - y;
    const dz = (centres[p + 2] ?? 0) - z;
    const square = dx * dx + dy * dy + dz * dz;
    if (square >= (squares[MIXED] ?? 0)) continue;
    if (nx * (turns[p] ?? 0) + ny * (turns[p + 1] ?? 0) + nz * (turns[p + 2] ?? 0) < SAME_SIDE) continue;
    let place = MIXED;
    for (; place > 0 && square < (squares[place - 1] ?? 0); place -= 1) {
      squares[place] = squares[place - 1] ?? 0;
      found[place] = found[place - 1] ?? -1;
    }
    squares[place] = square;
    found[place] = patch;
  }
}

/** Writes the mixing weights of one ray. @returns false when its surface has no patch */
function mix(
  links: Pick<FrameLinks, 'patches' | 'weights'>,
  ray: number,
  { squares, found }: Nearest,
): boolean {
  if ((found[0] ?? -1) < 0) return false;
  // A patch fades out as it becomes the next nearest: weight (1 − d²/r²)², 0 at the distance r of the fourth.
  const reach = squares[MIXED] ?? 0;
  let sum = 0;
  for (let place = 0; place < MIXED; place += 1) {
    const patch = found[place] ?? -1;
    if (patch < 0) continue;
    const fade = Number.isFinite(reach) ? 1 - (squares[place] ?? 0) / (reach * 1.0001) : 1;
    links.patches[3 * ray + place] = patch;
    links.weights[3 * ray + place] = fade * fade;
    sum += fade * fade;
  }
  for (let place = 0; place < MIXED; place += 1) {
    links.weights[3 * ray + place] = (links.weights[3 * ray + place] ?? 0) / sum;
  }
  return true;
}

/** The things that have no patches of their own, by kind and number, with their middles. */
function middleOf({ kinds, indices, solids, person }: FrameRays, ray: number): [key: number, Middle] {
  const kind = kinds[ray];
  if (kind === HIT_KINDS.head) return [-1, [person.x, person.y, person.eyeM, person.eyeM]];
  if (kind === HIT_KINDS.body) return [-2, [person.x, person.y, person.eyeM / 2, person.highM]];
  const index = indices[ray] ?? 0;
  const solid = solids[index];
  const at = centroidOf(solid?.outline ?? []);
  const heightM = solid?.heightM ?? 0;
  return [index, [at.x, at.y, heightM / 2, heightM]];
}

/**
 * Links the rays of a frame to the patches of the room: on the room's own surfaces and on blockers the three
 * nearest patches of the same surface, mixed; on everything else (tables, the subject) six views from its
 * middle. ASSUMPTION: a thing without patches takes no light away from the room.
 *
 * @param patches those of the room that the rays were cast in
 * @param sight of that room; null when nothing hides anything from the things in it
 * @returns see the type
 * @source own-rule
 */
export function linkFrame(rays: FrameRays, patches: Patches, sight: Sight | null = null): FrameLinks {
  const { count, kinds } = rays;
  const links = {
    rays,
    patchCount: patches.count,
    patches: new Int32Array(3 * count),
    weights: new Float64Array(3 * count),
    cubes: new Int32Array(count).fill(-1),
  };
  const byKey = patchesByKey(patches);
  const nearest = { squares: new Float64Array(MIXED + 1), found: new Int32Array(MIXED + 1) };
  const middles: Middle[] = [];
  const cubeOf = new Map<number, number>();
  for (let ray = 0; ray < count; ray += 1) {
    if (kinds[ray] === HIT_KINDS.nothing) continue;
    const list = byKey.get(rayKey(rays, ray));
    if (list) {
      findNearest(rays, ray, patches, list, nearest);
      if (mix(links, ray, nearest)) continue;
    }
    const [key, middle] = middleOf(rays, ray);
    const cube = cubeOf.get(key) ?? middles.push(middle) - 1;
    cubeOf.set(key, cube);
    links.cubes[ray] = cube;
  }
  return { ...links, rows: viewRows(middles, patches, sight) };
}
