import { subtract, unit } from '../../geometry/spot.ts';
import type { FrameScene } from './scene.ts';

/** Where the camera looks: unit vectors ahead, to the right and up the picture, and the frame's half sizes. */
export type FrameBasis = {
  readonly ahead: readonly [number, number, number];
  readonly right: readonly [number, number, number];
  readonly up: readonly [number, number, number];
  /** Half width and half height of the picture at distance 1 [1] */
  readonly halfAcross: number;
  readonly halfUp: number;
};

/**
 * Where the camera of a scene looks: at the subject's eyes, held level (no roll), rectilinear lens.
 *
 * @returns unit vectors [1] and tangents of half the angles of view; null when the camera stands on the subject
 * @source angle-of-view
 */
export function frameBasis({ camera, subject, frame }: FrameScene): FrameBasis | null {
  const forward = unit(subtract(subject.spot, camera.spot));
  if (!forward) return null;
  const planM = Math.hypot(subject.spot.x - camera.spot.x, subject.spot.y - camera.spot.y);
  const pitch = Math.atan2(subject.eyeM - camera.heightM, planM);
  const [cos, sin] = [Math.cos(pitch), Math.sin(pitch)];
  const widthMm = frame.upright ? frame.sensorHeightMm : frame.sensorWidthMm;
  const heightMm = frame.upright ? frame.sensorWidthMm : frame.sensorHeightMm;
  const halfAcross = widthMm / 2 / frame.focalMm;
  const halfUp = heightMm / 2 / frame.focalMm;
  if (!Number.isFinite(halfAcross) || !Number.isFinite(halfUp)) return null;
  return {
    ahead: [forward.x * cos, forward.y * cos, sin],
    // Forward turned a quarter clockwise on the plan as drawn: the camera's right.
    right: [-forward.y, forward.x, 0],
    up: [-forward.x * sin, -forward.y * sin, cos],
    halfAcross,
    halfUp,
  };
}
