import { above, type Vec3 } from '../../geometry/vec3.ts';
import { castFrame } from '../frame/cast-frame.ts';
import { type FrameLinks, linkFrame } from '../frame/link-frame.ts';
import type { CannotFrame, FrameScene } from '../frame/scene.ts';
import { shadeAmbient } from '../frame/shade-frame.ts';
import { ambientLuxAt } from '../lamps/ambient-at.ts';
import type { RoomExchange } from '../room/exchange.ts';
import { gatherWeights } from '../room/gather.ts';
import type { Sight } from '../room/sight.ts';
import { type FaceNormals, faceNormals } from '../subject/face-normals.ts';
import type { LightInput } from './light-input.ts';

/** Rays of the small picture each way, for a frame that lies; upright they change places. */
const LONG_RAYS = 48;
const SHORT_RAYS = 32;

/** What camera, subject, features and ambient decide, whatever the flashes do. */
export type ViewLight = {
  readonly kind: 'view';
  readonly scene: FrameScene;
  readonly links: FrameLinks;
  /** Ambient light on every ray, as `shadeAmbient` gives it [lx] */
  readonly ambientShade: Float64Array;
  /** Ambient light at the face [lx] */
  readonly ambientLux: number;
  readonly eye: Vec3;
  readonly sides: FaceNormals;
  /** Two rows: what each side of the face gathers from every patch, key side first */
  readonly faceWeights: Float64Array;
};

/** The light of the key decides which side of the face is the key side; without one, the first light's. */
function keySpot({ units, camera }: LightInput) {
  const main = units.find(({ job }) => job === 'key') ?? units.find(({ job }) => job === 'back');
  return main?.mark.spot ?? camera.spot;
}

function sceneOf({ room }: RoomExchange, input: LightInput): FrameScene {
  const { features, camera, subject, frame } = input;
  return { room, features, camera, subject, frame, stands: [] };
}

/**
 * Everything of a report that does not depend on the flashes, except for the side that the key is on.
 *
 * @returns the view, or 'cannot' with a reason in plain words
 * @source own-rule
 */
export function viewLight(exchange: RoomExchange, sight: Sight, input: LightInput): ViewLight | CannotFrame {
  const scene = sceneOf(exchange, input);
  const { upright } = input.frame;
  const rays = castFrame(scene, upright ? SHORT_RAYS : LONG_RAYS, upright ? LONG_RAYS : SHORT_RAYS);
  if (rays.kind === 'cannot') return rays;
  const { camera, subject, ambientSpots, ambientEv100 } = input;
  const sides = faceNormals({ camera: camera.spot, subject: subject.spot, light: keySpot(input) });
  if (!sides) return { kind: 'cannot', reason: 'The camera stands on the subject.' };
  const eye = above(subject.spot, subject.eyeM);
  const luxAt = (spot: { x: number; y: number }) => ambientLuxAt(ambientSpots, spot, ambientEv100) ?? 0;
  return {
    kind: 'view',
    scene,
    links: linkFrame(rays, exchange.patches, sight),
    ambientShade: shadeAmbient(rays, luxAt),
    ambientLux: luxAt(subject.spot),
    eye,
    sides,
    faceWeights: gatherWeights(exchange, sight, [eye, eye], [sides.keySide, sides.shadowSide]),
  };
}

/**
 * What a view is made from, as text to compare: camera, subject, features, ambient, and the key's side.
 *
 * @source own-rule
 */
export function viewKey(input: LightInput): string {
  const { features, camera, subject, frame, ambientSpots, ambientEv100 } = input;
  const sides = faceNormals({ camera: camera.spot, subject: subject.spot, light: keySpot(input) });
  return JSON.stringify([features, camera, subject, frame, ambientSpots, ambientEv100, sides]);
}
