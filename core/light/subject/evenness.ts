import { cameraFrame } from '../../geometry/camera-frame.ts';
import { add, type Spot, scale } from '../../geometry/spot.ts';
import { isPositive } from '../../units/finite.ts';

/** How evenly a group is lit. Places are those of the list asked about, counted from 0. */
export type Evenness = {
  /** From the darkest to the brightest [stops] */
  readonly spreadStops: number;
  readonly brightestAt: number;
  readonly darkestAt: number;
};

/**
 * Places across a group that stands in one row square to the camera axis, from camera-left to camera-right.
 *
 * @param camera, subject places on the plan [m]; the subject is the middle of the group
 * @param widthM from the first person to the last [m]
 * @param count how many places, rounded, 2 to 50
 * @returns places [m]; only the middle for a group without width, null when the camera stands on the subject
 * @source own-rule
 */
export function groupSpots({
  camera,
  subject,
  widthM,
  count,
}: {
  readonly camera: Spot;
  readonly subject: Spot;
  readonly widthM: number;
  readonly count: number;
}): Spot[] | null {
  const frame = cameraFrame(camera, subject);
  if (!frame) return null;
  if (!isPositive(widthM)) return [subject];
  const gaps = Math.max(1, Math.min(49, Math.round(count) - 1));
  return Array.from({ length: gaps + 1 }, (_, index) =>
    add(subject, scale(frame.right, widthM * (index / gaps - 0.5))),
  );
}

/**
 * How evenly light falls on a group.
 *
 * @param luxSeconds light on each person [lx·s]
 * @returns null for an empty list, or when somebody gets no light (no number of stops is large enough)
 * @source iso2720
 */
export function evenness(luxSeconds: readonly number[]): Evenness | null {
  let [brightestAt, darkestAt] = [0, 0];
  let [most, least] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [index, light] of luxSeconds.entries()) {
    if (!isPositive(light)) return null;
    if (light > most) [most, brightestAt] = [light, index];
    if (light < least) [least, darkestAt] = [light, index];
  }
  if (luxSeconds.length === 0) return null;
  return { spreadStops: Math.log2(most) - Math.log2(least), brightestAt, darkestAt };
}
