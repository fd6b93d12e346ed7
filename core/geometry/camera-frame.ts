import { type Spot, scale, subtract, unit } from './spot.ts';

/** Unit vectors on the plan in the camera's own sense; nearer is toward the camera. */
export type CameraFrame = {
  readonly left: Spot;
  readonly right: Spot;
  readonly nearer: Spot;
  readonly farther: Spot;
};

/**
 * The camera's own directions on the plan. Camera-left is the viewer's left, not the subject's.
 *
 * @param camera where the camera is [m]
 * @param aim what it looks at [m]
 * @returns unit vectors; null when camera and aim are one spot (no direction)
 * @source camera-left
 */
export function cameraFrame(camera: Spot, aim: Spot): CameraFrame | null {
  const farther = unit(subtract(aim, camera));
  if (!farther) return null;
  // y runs down the plan: a quarter turn clockwise of (x, y) is (−y, x).
  const right = { x: -farther.y + 0, y: farther.x };
  return { left: scale(right, -1), right, nearer: scale(farther, -1), farther };
}
