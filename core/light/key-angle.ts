import { degFromRad } from '../geometry/angle.ts';
import { cameraFrame } from '../geometry/camera-frame.ts';
import { distance, dot, type Spot, subtract, unit } from '../geometry/spot.ts';
import { keepFinite } from '../units/finite.ts';

export type CameraSide = 'camera-left' | 'camera-right' | 'on-axis';

/** Where a light stands in the camera's eyes, seen from the subject. */
export type KeyAngle = {
  /** From the axis subject → camera to the light, on the plan [°]; + is camera-right; |…| ≤ 180 */
  readonly azimuthDeg: number;
  readonly side: CameraSide;
  /** Of the light above the subject's eyes [°]; below them negative */
  readonly elevationDeg: number;
  /** From eyes to light in space [m] */
  readonly distanceM: number;
};

/** Within this of the axis a side would be a matter of centimetres [°]. */
const ON_AXIS_DEG = 1;

function sideOf(azimuthDeg: number): CameraSide {
  const offDeg = Math.min(Math.abs(azimuthDeg), 180 - Math.abs(azimuthDeg));
  if (offDeg < ON_AXIS_DEG) return 'on-axis';
  return azimuthDeg > 0 ? 'camera-right' : 'camera-left';
}

/**
 * Azimuth to the camera axis and elevation of a light, at the subject.
 *
 * @param camera, subject, light places on the plan [m]
 * @param subjectEyeM height of the eyes [m]
 * @param lightHeightM height of the light [m]
 * @returns the angles; azimuth 0 for a light straight overhead; null when the camera stands on the subject
 *   or the light is in the subject's eyes
 * @source portrait-patterns
 */
export function keyAngle({
  camera,
  subject,
  subjectEyeM,
  light,
  lightHeightM,
}: {
  readonly camera: Spot;
  readonly subject: Spot;
  readonly subjectEyeM: number;
  readonly light: Spot;
  readonly lightHeightM: number;
}): KeyAngle | null {
  const frame = cameraFrame(camera, subject);
  if (!frame) return null;
  const planM = distance(subject, light);
  const riseM = lightHeightM - subjectEyeM;
  const distanceM = keepFinite(Math.hypot(planM, riseM));
  if (!(distanceM > 0)) return null;
  const toLight = unit(subtract(light, subject));
  const azimuthDeg = toLight
    ? degFromRad(Math.atan2(dot(toLight, frame.right), dot(toLight, frame.nearer))) + 0
    : 0;
  return {
    azimuthDeg,
    side: sideOf(azimuthDeg),
    elevationDeg: degFromRad(Math.atan2(riseM, planM)),
    distanceM,
  };
}
