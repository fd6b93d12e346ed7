import type { FrameScene } from './scene.ts';
import type { Hit } from './solid.ts';

/** ASSUMPTION: the subject's head is a ball of this radius about the eyes [m]. */
const HEAD_RADIUS_M = 0.12;
/** ASSUMPTION: the body is an upright capsule of this radius [m]: shoulders 0.44 m wide. */
const BODY_RADIUS_M = 0.22;
/** ASSUMPTION: the body ends so far under the eyes [m], just above the chin, so that no gap shows. */
const EYES_ABOVE_BODY_M = 0.14;
/** Nearer than this a ray meets what it starts from [m]. */
const NEAREST_M = 1e-6;

/** Square of a ray's part on the plan under which it runs straight up or down [1]. */
const UPRIGHT = 1e-12;

/** The subject as a solid: a ball on a capsule that stands on the floor; bodyRadiusM 0 for no body. */
export type Person = {
  readonly x: number;
  readonly y: number;
  readonly eyeM: number;
  readonly headRadiusM: number;
  readonly bodyRadiusM: number;
  /** Centres of the two round ends of the body [m] */
  readonly lowM: number;
  readonly highM: number;
};

/**
 * The subject of a scene as a solid.
 *
 * @returns sizes [m]; without a body for eyes less than about 0.2 m over the floor
 * @source assumption-person
 */
export function personOf(subject: FrameScene['subject']): Person {
  const bodyM = Math.max(0, subject.eyeM - EYES_ABOVE_BODY_M);
  const bodyRadiusM = Math.min(BODY_RADIUS_M, bodyM / 2);
  return {
    x: subject.spot.x,
    y: subject.spot.y,
    eyeM: subject.eyeM,
    headRadiusM: HEAD_RADIUS_M,
    bodyRadiusM,
    lowM: bodyRadiusM,
    highM: bodyM - bodyRadiusM,
  };
}

/** Meets a ball about (x, y, z). @returns whether it was nearer than `hit` */
function meetBall(
  x: number,
  y: number,
  z: number,
  radiusM: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): boolean {
  const wx = ox - x;
  const wy = oy - y;
  const wz = oz - z;
  const along = wx * dx + wy * dy + wz * dz;
  const under = along * along - (wx * wx + wy * wy + wz * wz - radiusM * radiusM);
  if (!(under > 0)) return false;
  const distanceM = -along - Math.sqrt(under);
  if (distanceM <= NEAREST_M || distanceM >= hit.distanceM) return false;
  hit.distanceM = distanceM;
  hit.nx = (wx + distanceM * dx) / radiusM;
  hit.ny = (wy + distanceM * dy) / radiusM;
  hit.nz = (wz + distanceM * dz) / radiusM;
  return true;
}

/**
 * Meets a ray with the subject's head.
 *
 * @param ox, oy, oz start of the ray [m]
 * @param dx, dy, dz unit vector
 * @returns whether it was nearer than `hit.distanceM`; then distance and normal are in `hit`
 * @source textbook-geometry
 */
export function meetHead(
  person: Person,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): boolean {
  return meetBall(person.x, person.y, person.eyeM, person.headRadiusM, ox, oy, oz, dx, dy, dz, hit);
}

/**
 * Meets a ray with the subject's body.
 *
 * @param ox, oy, oz start of the ray [m]
 * @param dx, dy, dz unit vector
 * @returns whether it was nearer than `hit.distanceM`; then distance and normal are in `hit`
 * @source textbook-geometry
 */
export function meetBody(
  person: Person,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): boolean {
  const { x, y, bodyRadiusM, lowM, highM } = person;
  if (!(bodyRadiusM > 0)) return false;
  let found = false;
  const wx = ox - x;
  const wy = oy - y;
  const square = dx * dx + dy * dy;
  const along = wx * dx + wy * dy;
  const under = along * along - square * (wx * wx + wy * wy - bodyRadiusM * bodyRadiusM);
  // A ray that misses the endless cylinder misses the round ends, too; one along its axis has no side to meet.
  if (!(under > 0) && square > UPRIGHT) return false;
  const distanceM = (-along - Math.sqrt(under)) / square;
  const z = oz + distanceM * dz;
  if (distanceM > NEAREST_M && distanceM < hit.distanceM && z >= lowM && z <= highM) {
    hit.distanceM = distanceM;
    hit.nx = (wx + distanceM * dx) / bodyRadiusM;
    hit.ny = (wy + distanceM * dy) / bodyRadiusM;
    hit.nz = 0;
    found = true;
  }
  if (meetBall(x, y, highM, bodyRadiusM, ox, oy, oz, dx, dy, dz, hit)) found = true;
  if (meetBall(x, y, lowM, bodyRadiusM, ox, oy, oz, dx, dy, dz, hit)) found = true;
  return found;
}
