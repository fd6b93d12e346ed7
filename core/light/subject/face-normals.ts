import { cameraFrame } from '../../geometry/camera-frame.ts';
import { dot, type Spot, subtract } from '../../geometry/spot.ts';
import type { Vec3 } from '../../geometry/vec3.ts';

/** Two small flat pieces of a face, by the directions they look in (unit vectors, level). */
export type FaceNormals = { readonly keySide: Vec3; readonly shadowSide: Vec3 };

/**
 * Where the two sides of a face look, for the light on each.
 *
 * ASSUMPTION: the face looks at the camera, and each side of it is one level element, 45° off the camera
 * axis: the key side toward the key, the shadow side mirrored. A key exactly on the axis has no side and
 * counts as camera-right.
 *
 * @param camera, subject, light places on the plan [m]
 * @returns unit vectors; null when the camera stands on the subject
 * @source assumption-face
 */
export function faceNormals({
  camera,
  subject,
  light,
}: {
  readonly camera: Spot;
  readonly subject: Spot;
  readonly light: Spot;
}): FaceNormals | null {
  const frame = cameraFrame(camera, subject);
  if (!frame) return null;
  const side = dot(subtract(light, subject), frame.right) < 0 ? -Math.SQRT1_2 : Math.SQRT1_2;
  const toward = (aside: number): Vec3 => ({
    x: frame.nearer.x * Math.SQRT1_2 + frame.right.x * aside,
    y: frame.nearer.y * Math.SQRT1_2 + frame.right.y * aside,
    z: 0,
  });
  return { keySide: toward(side), shadowSide: toward(-side) };
}
