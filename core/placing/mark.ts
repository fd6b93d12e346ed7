import { degFromRad, wrap360 } from '../geometry/angle.ts';
import { contains, edgesOf, nearestOnSegment } from '../geometry/polygon.ts';
import { add, distance, type Spot, scale, subtract, unit } from '../geometry/spot.ts';
import { keepFinite } from '../units/finite.ts';

/**
 * A place where a stand belongs.
 * - spot: on the plan [m]
 * - heightM: of the head [m]
 * - facingDeg: bearing the head points to, clockwise from plan-up [°]
 * - tiltDeg: downward from level [°]; up is negative
 * - powerStops: log2 of the power fraction [stops]
 */
export type Mark = {
  readonly spot: Spot;
  readonly heightM: number;
  readonly facingDeg: number;
  readonly tiltDeg: number;
  readonly powerStops: number;
};

/** A mark is kept this far from the walls: the legs need some floor [m]. */
const WALL_GAP_M = 0.3;
/** Rounds of pushing away from walls; a corner needs two, an odd niche a few more. */
const PUSHES = 12;

/**
 * Facing and tilt that point a head at the subject's eyes.
 *
 * @returns facingDeg, a bearing in [0, 360) [°], and tiltDeg, + is down [°]; straight over the subject
 *   facing is 0 and tilt 90
 */
export function aimAt(
  spot: Spot,
  heightM: number,
  subject: Spot,
  subjectEyeM: number,
): { readonly facingDeg: number; readonly tiltDeg: number } {
  const way = subtract(subject, spot);
  const dropM = keepFinite(heightM - subjectEyeM);
  const planM = distance(subject, spot);
  return {
    facingDeg: planM > 0 ? wrap360(degFromRad(Math.atan2(way.x, -way.y))) : 0,
    tiltDeg: planM > 0 || dropM !== 0 ? degFromRad(Math.atan2(dropM, planM)) : 0,
  };
}

type Wall = { readonly nearest: Spot; readonly inward: Spot; readonly awayM: number };

/** The nearest wall, with the direction that leads away from it into the room. */
function nearestWall(room: readonly Spot[], spot: Spot): Wall | null {
  let best: Wall | null = null;
  for (const [a, b] of edgesOf(room)) {
    const along = unit(subtract(b, a));
    if (!along) continue;
    const nearest = nearestOnSegment(a, b, spot);
    const awayM = distance(nearest, spot);
    if (best !== null && awayM >= best.awayM) continue;
    const normal = { x: -along.y, y: along.x };
    const middle = { x: a.x / 2 + b.x / 2, y: a.y / 2 + b.y / 2 };
    const inward = contains(room, add(middle, scale(normal, 1e-4))) ? normal : scale(normal, -1);
    best = { nearest, inward, awayM };
  }
  return best;
}

/**
 * The spot itself when it lies in the room and 0.3 m from every wall, else the nearest such spot that
 * pushing it square off the walls finds.
 *
 * @param room outline [m]; with fewer than three corners the spot is returned as it is
 * @returns spot [m]; in a niche narrower than 0.6 m it may stay nearer to a wall than 0.3 m
 */
export function clampToRoom(spot: Spot, room: readonly Spot[]): Spot {
  let at = spot;
  for (let push = 0; push < PUSHES && room.length >= 3; push += 1) {
    const wall = nearestWall(room, at);
    const inside = contains(room, at);
    if (!wall || (inside && wall.awayM >= WALL_GAP_M - 1e-9)) break;
    // Inside, keep the distance along the wall; outside, start from the wall.
    const depthM = inside ? WALL_GAP_M - wall.awayM : WALL_GAP_M;
    at = add(inside ? at : wall.nearest, scale(wall.inward, depthM));
  }
  return at;
}
