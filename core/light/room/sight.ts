import { edgesOf } from '../../geometry/polygon.ts';
import { convexPieces, plainOutline, positiveOrder, reflexCorners } from './outline.ts';
import type { Blocker, RoomModel } from './room-model.ts';

/** What can be seen from where in a room. */
export interface Sight {
  /** Can anything in this room be hidden at all? Not in a convex one without blockers */
  readonly hides: boolean;
  /** Nothing between a and b [m]? Points ON a wall, the floor, the roof or a blocker's side see away from it. */
  clear(ax: number, ay: number, az: number, bx: number, by: number, bz: number): boolean;
}

/** An upright prism: circle around it, height, and its sides as (point x, y, outward normal x, y). */
type Prism = {
  readonly x: number;
  readonly y: number;
  readonly squareRadius: number;
  readonly heightM: number;
  readonly sides: Float64Array;
};

/** Less than this of a prism or beyond a wall [m] is rounding, not something in the way. */
const GRAZE_M = 1e-5;

function prismsOf({ outline, heightM }: Blocker): Prism[] {
  return convexPieces(plainOutline(outline)).map((corners) => {
    const x = corners.reduce((sum, corner) => sum + corner.x / corners.length, 0);
    const y = corners.reduce((sum, corner) => sum + corner.y / corners.length, 0);
    const squares = corners.map((corner) => (corner.x - x) ** 2 + (corner.y - y) ** 2);
    const sides = edgesOf(corners).flatMap(([a, b]) => {
      const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      return [a.x, a.y, (b.y - a.y) / length, (a.x - b.x) / length];
    });
    return { x, y, squareRadius: Math.max(0, ...squares), heightM, sides: Float64Array.from(sides) };
  });
}

/** Does the way from a by d pass through the prism? `squareM2` is the square of its length on the plan. */
function isStopped(
  prism: Prism,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
  squareM2: number,
): boolean {
  const wayX = prism.x - ax;
  const wayY = prism.y - ay;
  const aside = wayX * dy - wayY * dx;
  if (aside * aside > prism.squareRadius * squareM2 && squareM2 > 0) return false;
  const along = wayX * dx + wayY * dy;
  if (along < 0 && wayX * wayX + wayY * wayY > prism.squareRadius) return false;
  if (along > squareM2 && (wayX - dx) ** 2 + (wayY - dy) ** 2 > prism.squareRadius) return false;
  let enter = 0;
  let leave = 1;
  const { sides } = prism;
  for (let k = 0; k < sides.length; k += 4) {
    const nx = sides[k + 2] as number;
    const ny = sides[k + 3] as number;
    const outside = nx * (ax - (sides[k] as number)) + ny * (ay - (sides[k + 1] as number));
    const speed = nx * dx + ny * dy;
    if (Math.abs(speed) < 1e-12) {
      if (outside > -1e-7) return false;
    } else if (speed < 0) {
      enter = Math.max(enter, -outside / speed);
    } else {
      leave = Math.min(leave, -outside / speed);
    }
    if (leave <= enter) return false;
  }
  if ((leave - enter) ** 2 * (squareM2 + dz * dz) < GRAZE_M * GRAZE_M) return false;
  return Math.min(az + enter * dz, az + leave * dz) < prism.heightM - GRAZE_M;
}

/** Does the way from a by d cross a wall? Its ends may lie on walls: a little of both is left out. */
function crossesWall(walls: Float64Array, ax: number, ay: number, dx: number, dy: number): boolean {
  const skip = 1e-6;
  const sx = ax + skip * dx;
  const sy = ay + skip * dy;
  const ex = ax + (1 - skip) * dx;
  const ey = ay + (1 - skip) * dy;
  for (let k = 0; k < walls.length; k += 4) {
    const px = walls[k] as number;
    const py = walls[k + 1] as number;
    const qx = walls[k + 2] as number;
    const qy = walls[k + 3] as number;
    const ofS = (qx - px) * (sy - py) - (qy - py) * (sx - px) >= 0;
    const ofE = (qx - px) * (ey - py) - (qy - py) * (ex - px) >= 0;
    if (ofS === ofE) continue;
    const ofP = dx * (py - sy) - dy * (px - sx) >= 0;
    const ofQ = dx * (qy - sy) - dy * (qx - sx) >= 0;
    if (ofP !== ofQ) return true;
  }
  return false;
}

/**
 * Makes the test of what stands between two points of a room: its own walls (they go up to the roof, so the
 * plan decides; a convex outline hides nothing) and the blockers, as upright prisms on the floor. A point
 * inside a blocker sees nothing but the air over it.
 *
 * @returns the test; a convex room without blockers answers at once
 * @source textbook-geometry
 */
export function createSight(room: RoomModel): Sight {
  const outline = positiveOrder(room.outline);
  const bent = reflexCorners(outline).length > 0;
  const walls = Float64Array.from(bent ? edgesOf(outline).flatMap(([a, b]) => [a.x, a.y, b.x, b.y]) : []);
  const prisms = room.blockers.flatMap(prismsOf);
  if (!bent && prisms.length === 0) return { hides: false, clear: () => true };
  return {
    hides: true,
    clear(ax, ay, az, bx, by, bz) {
      const dx = bx - ax;
      const dy = by - ay;
      if (bent && crossesWall(walls, ax, ay, dx, dy)) return false;
      const squareM2 = dx * dx + dy * dy;
      const lowestM = Math.min(az, bz);
      for (let k = 0; k < prisms.length; k += 1) {
        const prism = prisms[k] as Prism;
        if (lowestM < prism.heightM && isStopped(prism, ax, ay, az, dx, dy, bz - az, squareM2)) return false;
      }
      return true;
    },
  };
}
