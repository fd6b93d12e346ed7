import { distance } from '../../geometry/spot.ts';
import type { Vec3 } from '../../geometry/vec3.ts';
import { keepFinite } from '../../units/finite.ts';

/** ASSUMPTION: a dancer takes a circle of this radius, arms at the sides [m]. */
export const BODY_RADIUS_M = 0.25;
/** ASSUMPTION: heads of a crowd reach this high [m]. */
export const HEAD_HEIGHT_M = 1.75;
/** ASSUMPTION: raised hands reach this high [m]. */
export const RAISED_HANDS_M = 2.1;

/** A dancing crowd around the subject. */
export type Crowd = {
  /** Persons on each square metre of floor [1/m²] */
  readonly personsPerM2: number;
  /** How high it blocks light [m]: HEAD_HEIGHT_M or RAISED_HANDS_M */
  readonly topM: number;
  readonly bodyRadiusM: number;
};

/**
 * Part of the straight way from a light to a face that runs below the top of a crowd, as drawn on the plan.
 *
 * @param topM top of the crowd [m]
 * @returns plan length x [m]
 * @source shadow-geometry
 */
export function wayThroughCrowdM(light: Vec3, face: Vec3, topM: number): number {
  const planM = distance(light, face);
  const low = Math.min(light.z, face.z);
  const high = Math.max(light.z, face.z);
  if (low >= topM) return 0;
  if (high <= topM) return planM;
  return keepFinite(planM * ((topM - low) / (high - low)));
}

/**
 * Chance that nobody stands between a light and a face: exp(−2·r·n·x), the chance that a strip of twice the
 * body radius holds none of n persons/m².
 *
 * ASSUMPTION: people stand independently of each other (Poisson), as upright cylinders. Bodies whose middle
 * lies beyond the ends of the strip are left out: at the face stands the subject. The half circle where the
 * ray rises over the heads would lower the chance by the factor exp(−n·πr²/2) more, 0.91 at 1 person/m².
 *
 * @param light, face places [m]
 * @param crowd density [1/m²], top [m], body radius [m]; not above zero means nobody is in the way
 * @returns chance, 0 to 1
 * @source poisson-crowd
 */
export function clearFaceChance(light: Vec3, face: Vec3, crowd: Crowd): number {
  const { personsPerM2, bodyRadiusM, topM } = crowd;
  const expected = 2 * Math.max(0, bodyRadiusM) * Math.max(0, personsPerM2);
  return keepFinite(Math.exp(-keepFinite(keepFinite(expected) * wayThroughCrowdM(light, face, topM))));
}
