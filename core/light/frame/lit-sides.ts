import { radFromDeg } from '../../geometry/angle.ts';
import { ratioFromStops } from '../../units/stops.ts';
import { type Exposure, flashStops } from '../exposure.ts';
import { type CameraSide, type KeyAngle, keyAngle } from '../key-angle.ts';
import type { Sight } from '../room/sight.ts';
import { frameProblem } from './frame-problem.ts';
import type { StandLamp } from './lights-in-frame.ts';
import type { FrameScene } from './scene.ts';

/**
 * Where one light falls on the subject's head, in the camera's eyes:
 * - front: it lights what the camera sees of the head, on `side`
 * - rim: it comes from behind and lights an edge of the head, on `side` (on-axis: all round)
 */
export type LitSide = {
  readonly standId: string;
  readonly from: 'front' | 'rim';
  readonly side: CameraSide;
  /** Light on a surface at the head that faces the light [stops over what a meter calls correct] */
  readonly litStops: number;
  /** Share of the visible half of the head that it reaches [1] */
  readonly litFraction: number;
};

/** More than a quarter turn off the camera axis, a light comes from behind [°]. */
const BEHIND_DEG = 90;

/** Share of a ball's visible half that is lit: the lune between two half balls, 1 − phase angle/180°. */
function litFraction({ azimuthDeg, elevationDeg }: KeyAngle): number {
  const cosine = Math.cos(radFromDeg(azimuthDeg)) * Math.cos(radFromDeg(elevationDeg));
  return 1 - Math.acos(Math.max(-1, Math.min(1, cosine))) / Math.PI;
}

/**
 * Which side of the subject's head each light reaches, as the camera sees it, and how strong. For drawing
 * the subject: numbers only. The returned light of the room is not in it.
 *
 * @param sight of the scene's room: a light behind a wall or a tall thing does not reach the head
 * @returns an entry per lamp that reaches the head, strongest first; empty when there is no picture
 * @source iso2720
 * @source portrait-patterns
 */
export function litSides(
  scene: FrameScene,
  lamps: readonly StandLamp[],
  sight: Sight,
  exposure: Exposure,
): LitSide[] {
  if (frameProblem(scene) !== null) return [];
  const { camera, subject } = scene;
  const [x, y, z] = [subject.spot.x, subject.spot.y, subject.eyeM];
  const sides = lamps.flatMap(({ standId, lamp, powerStops }): LitSide[] => {
    const angle = keyAngle({
      camera: camera.spot,
      subject: subject.spot,
      subjectEyeM: subject.eyeM,
      light: { x: lamp.x, y: lamp.y },
      lightHeightM: lamp.z,
    });
    const light = lamp.toward(x, y, z) * ratioFromStops(powerStops);
    const litStops = flashStops(light, exposure);
    if (!angle || litStops === null || !sight.clear(lamp.x, lamp.y, lamp.z, x, y, z)) return [];
    const offDeg = Math.abs(angle.azimuthDeg);
    const from = offDeg > BEHIND_DEG ? 'rim' : 'front';
    return [{ standId, from, side: angle.side, litStops, litFraction: litFraction(angle) }];
  });
  return sides.sort((a, b) => b.litStops - a.litStops);
}
