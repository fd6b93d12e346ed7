import { contains } from '../../geometry/polygon.ts';
import { distance } from '../../geometry/spot.ts';
import { roofHeightM } from '../room/roof.ts';
import { roomProblem } from '../room/room-problem.ts';
import type { FrameScene } from './scene.ts';
import { solidsOf } from './solid.ts';

/** A value, what it is called on screen, and the range in which the picture means anything. */
type Check = readonly [value: number, name: string, least: number, most: number, unit: string];

/** Nearer than this the camera is in the subject's face [m]. */
const NEAREST_M = 0.3;
/** Own rule: farther from the plan’s origin than this is a slip of the finger; `roomProblem` has the same [m]. */
const FARTHEST_M = 30_000;
/** A surface gives back less than it gets: above this a room would hardly ever go dark [1]. */
const MOST_REFLECTANCE = 0.99;

function checksOf({ features, camera, subject, frame }: FrameScene): Check[] {
  const spots = [
    [[camera.spot], 'camera position'],
    [[subject.spot], 'subject position'],
    ...features.map(({ outline, name }) => [outline, `outline of ${name}`] as const),
  ] as const;
  return [
    ...features.flatMap(({ name, heightM, reflectance }): Check[] => [
      [heightM, `height of ${name}`, 0, 200, ' m'],
      [reflectance, `reflectance of ${name}`, 0, MOST_REFLECTANCE, ''],
    ]),
    [camera.heightM, 'camera height', 0.01, 200, ' m'],
    [subject.eyeM, 'eye height', 0, 200, ' m'],
    [subject.facingDeg, 'facing of the subject', -36000, 36000, '°'],
    [frame.focalMm, 'focal length', 1, 5000, ' mm'],
    [frame.sensorWidthMm, 'sensor width', 1, 500, ' mm'],
    [frame.sensorHeightMm, 'sensor height', 1, 500, ' mm'],
    ...spots.flatMap(([list, name]) =>
      list.flatMap(({ x, y }): Check[] => [
        [x, name, -FARTHEST_M, FARTHEST_M, ' m'],
        [y, name, -FARTHEST_M, FARTHEST_M, ' m'],
      ]),
    ),
  ];
}

function numberProblem(scene: FrameScene): string | null {
  for (const [value, name, least, most, unit] of checksOf(scene)) {
    if (Number.isNaN(value)) return `The ${name} is not a number.`;
    if (value < least || value > most) {
      return `The ${name} is ${value}${unit}; it must be from ${least}${unit} to ${most}${unit}.`;
    }
  }
  return null;
}

/**
 * Why there is no picture of a scene.
 *
 * @returns a sentence in plain words: a room that cannot be lit (`roomProblem`), a value out of its range, a camera
 *   outside the room, inside a thing or on the subject; null when there is a picture
 * @source own-rule
 */
export function frameProblem(scene: FrameScene): string | null {
  const { room, camera, subject } = scene;
  const wrong = roomProblem(room)?.reason ?? numberProblem(scene);
  if (wrong !== null) return wrong;
  if (!contains(room.outline, camera.spot)) return 'The camera is outside the room.';
  if (camera.heightM >= roofHeightM(room, camera.spot)) return 'The camera is above the ceiling.';
  if (!contains(room.outline, subject.spot)) return 'The subject is outside the room.';
  if (distance(camera.spot, subject.spot) < NEAREST_M) {
    return 'The camera stands on the subject: there is no camera axis to look along.';
  }
  const around = solidsOf(scene).find(
    ({ outline, heightM }) => heightM >= camera.heightM && contains(outline, camera.spot),
  );
  return around ? `The camera is inside ${around.name}.` : null;
}
