import { frameBasis } from './frame-basis.ts';
import { frameProblem } from './frame-problem.ts';
import { meetBody, meetHead, type Person, personOf } from './person.ts';
import type { CannotFrame, FrameScene } from './scene.ts';
import { HIT_KINDS, meetShell, type Shell, shellOf } from './shell.ts';
import { type Hit, meetSolid, type Solid, solidsOf } from './solid.ts';

/**
 * What the camera sees, ray by ray: row by row from the top left, `columns` in a row. Ray i meets
 * positions[3i…] [m] with the unit normal normals[3i…] on the camera's side. Depends on camera, room,
 * features and subject alone, never on light: keep it while a stand is dragged.
 */
export type FrameRays = {
  readonly kind: 'rays';
  readonly columns: number;
  readonly rows: number;
  readonly count: number;
  /** One of HIT_KINDS */
  readonly kinds: Uint8Array;
  /** Number of the wall or of the solid, by kind */
  readonly indices: Uint16Array;
  readonly positions: Float64Array;
  readonly normals: Float64Array;
  readonly reflectances: Float64Array;
  /** From the lens [m] */
  readonly distancesM: Float64Array;
  readonly scene: FrameScene;
  readonly solids: readonly Solid[];
  readonly person: Person;
};

/** ASSUMPTION: fair to medium skin gives back about a third of the light; clothes count as mid-grey [1]. */
const SKIN_REFLECTANCE = 0.3;
const CLOTHES_REFLECTANCE = 0.18;
/** No ray is longer [m]; the room ends it before. */
const LONGEST_M = 1e6;
/** Own rule: a picture has no more rays than this each way. */
const MOST_RAYS = 512;

type Target = { readonly shell: Shell; readonly solids: readonly Solid[]; readonly person: Person };

function meetAll(
  target: Target,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): void {
  hit.distanceM = LONGEST_M;
  hit.kind = HIT_KINDS.nothing;
  hit.index = 0;
  meetShell(target.shell, ox, oy, oz, dx, dy, dz, hit);
  for (let index = 0; index < target.solids.length; index += 1) {
    const solid = target.solids[index];
    if (solid && meetSolid(solid, ox, oy, oz, dx, dy, dz, hit)) {
      hit.kind = HIT_KINDS.solid;
      hit.index = index;
    }
  }
  if (meetBody(target.person, ox, oy, oz, dx, dy, dz, hit)) hit.kind = HIT_KINDS.body;
  if (meetHead(target.person, ox, oy, oz, dx, dy, dz, hit)) hit.kind = HIT_KINDS.head;
}

function reflectanceOf({ room }: FrameScene, solids: readonly Solid[], hit: Hit): number {
  if (hit.kind === HIT_KINDS.floor) return room.finishes.floor;
  if (hit.kind === HIT_KINDS.ceiling) return room.finishes.ceiling;
  if (hit.kind === HIT_KINDS.wall) return room.finishes.walls;
  if (hit.kind === HIT_KINDS.solid) return solids[hit.index]?.reflectance ?? 0;
  if (hit.kind === HIT_KINDS.head) return SKIN_REFLECTANCE;
  return hit.kind === HIT_KINDS.body ? CLOTHES_REFLECTANCE : 0;
}

function emptyRays(scene: FrameScene, columns: number, rows: number): FrameRays {
  const count = columns * rows;
  return {
    kind: 'rays',
    columns,
    rows,
    count,
    kinds: new Uint8Array(count),
    indices: new Uint16Array(count),
    positions: new Float64Array(3 * count),
    normals: new Float64Array(3 * count),
    reflectances: new Float64Array(count),
    distancesM: new Float64Array(count),
    scene,
    solids: solidsOf(scene),
    person: personOf(scene.subject),
  };
}

function castAll(rays: FrameRays, basis: NonNullable<ReturnType<typeof frameBasis>>): void {
  const { scene, solids, person, columns, rows } = rays;
  const target = { shell: shellOf(scene.room), solids, person };
  const { x: ox, y: oy } = scene.camera.spot;
  const oz = scene.camera.heightM;
  const { ahead, right, up } = basis;
  const hit: Hit = { distanceM: 0, kind: 0, index: 0, nx: 0, ny: 0, nz: 0 };
  for (let row = 0; row < rows; row += 1) {
    const v = basis.halfUp * (1 - (2 * row + 1) / rows);
    for (let column = 0; column < columns; column += 1) {
      const u = basis.halfAcross * ((2 * column + 1) / columns - 1);
      const length = Math.sqrt(1 + u * u + v * v);
      const dx = (ahead[0] + u * right[0] + v * up[0]) / length;
      const dy = (ahead[1] + u * right[1] + v * up[1]) / length;
      const dz = (ahead[2] + u * right[2] + v * up[2]) / length;
      meetAll(target, ox, oy, oz, dx, dy, dz, hit);
      const i = row * columns + column;
      rays.kinds[i] = hit.kind;
      // The person is met after the solids: a number left over from one of them means nothing.
      rays.indices[i] = hit.index;
      rays.distancesM[i] = hit.distanceM;
      rays.positions[3 * i] = ox + hit.distanceM * dx;
      rays.positions[3 * i + 1] = oy + hit.distanceM * dy;
      rays.positions[3 * i + 2] = oz + hit.distanceM * dz;
      rays.normals[3 * i] = hit.nx;
      rays.normals[3 * i + 1] = hit.ny;
      rays.normals[3 * i + 2] = hit.nz;
      rays.reflectances[i] = reflectanceOf(scene, solids, hit);
    }
  }
}

/**
 * Casts rays through the frame of a scene: the first surface that each one meets. A ray goes through the
 * middle of each of columns × rows equal parts of the picture. Every feature with a height is met, table
 * tops too. ASSUMPTION: the subject is a ball on a capsule.
 *
 * @param columns, rows whole numbers, 1 to 512
 * @returns the rays, or 'cannot' with a reason in plain words
 * @source angle-of-view
 * @source assumption-person
 */
export function castFrame(scene: FrameScene, columns: number, rows: number): FrameRays | CannotFrame {
  const problem = frameProblem(scene);
  if (problem !== null) return { kind: 'cannot', reason: problem };
  for (const size of [columns, rows]) {
    if (!Number.isInteger(size) || size < 1 || size > MOST_RAYS) {
      return { kind: 'cannot', reason: `A picture is 1 to ${MOST_RAYS} rays wide and high, not ${size}.` };
    }
  }
  const basis = frameBasis(scene);
  if (!basis) return { kind: 'cannot', reason: 'The camera looks nowhere.' };
  const rays = emptyRays(scene, columns, rows);
  castAll(rays, basis);
  return rays;
}
