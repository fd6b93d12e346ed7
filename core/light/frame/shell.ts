import { centroidOf, edgesOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import { keepFinite } from '../../units/finite.ts';
import { ridgeOver } from '../room/roof.ts';
import type { RoomModel } from '../room/room-model.ts';
import type { Hit } from './solid.ts';

/** What a ray can meet, as small numbers for typed arrays. */
export const HIT_KINDS = { nothing: 0, floor: 1, ceiling: 2, wall: 3, solid: 4, head: 5, body: 6 } as const;

/** Nearer than this a ray meets what it starts from [m]. */
const NEAREST_M = 1e-6;
/** Part of a wall beyond its ends that still counts, so that no ray slips through a corner [1]. */
const OVER_THE_EDGE = 1e-9;

/** A plane nx·x + ny·y + nz·z = d with its normal into the room. */
type Plane = { readonly nx: number; readonly ny: number; readonly nz: number; readonly d: number };

/** The inside of a room, made ready for rays: its outline, and the planes that it lies under everywhere. */
export type Shell = { readonly outline: readonly Spot[]; readonly slopes: readonly Plane[] };

/** The slope z = heightM + gx·(x − at.x) + gy·(y − at.y), seen from below. */
function slopeThrough(at: Spot, heightM: number, gx: number, gy: number): Plane {
  const length = Math.hypot(gx, gy, 1);
  const foot = keepFinite(gx * at.x + gy * at.y - heightM);
  return {
    nx: keepFinite(gx / length),
    ny: keepFinite(gy / length),
    nz: keepFinite(-1 / length),
    d: keepFinite(foot / length),
  };
}

function ridgeSlopes({ outline, ceilingM }: RoomModel, peakM: number, ridgeDeg: number): Plane[] {
  const { centre, aside, reachM } = ridgeOver(outline, ridgeDeg);
  const fall = reachM > 0 ? (peakM - ceilingM) / reachM : 0;
  return [-fall, fall].map((rise) => slopeThrough(centre, peakM, rise * aside.x, rise * aside.y));
}

/** One slope from each wall to the peak over the middle, as `createRoof` has it. */
function pyramidSlopes({ outline, ceilingM }: RoomModel, peakM: number): Plane[] {
  const centre = centroidOf(outline);
  return edgesOf(outline).flatMap(([a, b]) => {
    const [nx, ny] = [b.y - a.y, a.x - b.x];
    const whole = nx * (a.x - centre.x) + ny * (a.y - centre.y);
    if (whole === 0) return [];
    const fall = (ceilingM - peakM) / whole;
    return [slopeThrough(centre, peakM, fall * nx, fall * ny)];
  });
}

/**
 * The inside of a room, made ready for rays. The roof is that of `createRoof`, as planes.
 *
 * @source textbook-geometry
 */
export function shellOf(room: RoomModel): Shell {
  const { roof, outline, ceilingM } = room;
  const middle = outline[0] ?? { x: 0, y: 0 };
  if (roof.kind === 'flat') return { outline, slopes: [slopeThrough(middle, ceilingM, 0, 0)] };
  const slopes =
    roof.kind === 'ridge' ? ridgeSlopes(room, roof.peakM, roof.ridgeDeg) : pyramidSlopes(room, roof.peakM);
  return { outline, slopes };
}

function keep(hit: Hit, distanceM: number, kind: number, index: number, normal: Plane): void {
  hit.distanceM = distanceM;
  hit.kind = kind;
  hit.index = index;
  hit.nx = normal.nx;
  hit.ny = normal.ny;
  hit.nz = normal.nz;
}

const FLOOR: Plane = { nx: 0, ny: 0, nz: 1, d: 0 };

function meetRoof(
  shell: Shell,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): void {
  for (const slope of shell.slopes) {
    const toward = slope.nx * dx + slope.ny * dy + slope.nz * dz;
    const along = (slope.d - slope.nx * ox - slope.ny * oy - slope.nz * oz) / toward;
    if (toward < 0 && along >= 0 && along < hit.distanceM) keep(hit, along, HIT_KINDS.ceiling, 0, slope);
  }
}

function meetWalls(shell: Shell, ox: number, oy: number, dx: number, dy: number, hit: Hit): void {
  const { outline } = shell;
  for (let wall = 0; wall < outline.length; wall += 1) {
    const a = outline[wall];
    const b = outline[wall + 1] ?? outline[0];
    if (!a || !b) continue;
    const ex = b.x - a.x;
    const ey = b.y - a.y;
    const across = dx * ey - dy * ex;
    const along = ((a.x - ox) * ey - (a.y - oy) * ex) / across;
    if (!(along > NEAREST_M && along < hit.distanceM)) continue;
    const part = ((a.x - ox) * dy - (a.y - oy) * dx) / across;
    if (part < -OVER_THE_EDGE || part > 1 + OVER_THE_EDGE) continue;
    const turn = (across > 0 ? -1 : 1) / Math.hypot(ex, ey);
    hit.distanceM = along;
    hit.kind = HIT_KINDS.wall;
    hit.index = wall;
    hit.nx = turn * ey;
    hit.ny = -turn * ex;
    hit.nz = 0;
  }
}

/**
 * Meets a ray from inside a room with its floor, roof and walls. When one is nearer than `hit.distanceM`, it
 * goes into `hit` whole; `index` is the number of the wall.
 *
 * @param ox, oy, oz start of the ray [m], inside the room
 * @param dx, dy, dz unit vector
 * @source textbook-geometry
 */
export function meetShell(
  shell: Shell,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): void {
  if (dz < 0 && -oz / dz < hit.distanceM) keep(hit, Math.max(0, -oz / dz), HIT_KINDS.floor, 0, FLOOR);
  meetRoof(shell, ox, oy, oz, dx, dy, dz, hit);
  meetWalls(shell, ox, oy, dx, dy, hit);
}
