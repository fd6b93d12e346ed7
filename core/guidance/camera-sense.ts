import { cameraFrame } from '../geometry/camera-frame.ts';
import { add, distance, type Spot, scale } from '../geometry/spot.ts';
import { bearingDeg, type TurnWord, turnDeg, turnWords } from './bearing.ts';

/** The four ways of a nudge, in the camera's own sense. */
export type NudgeWay = 'camera-left' | 'camera-right' | 'nearer' | 'farther';

const FRAME_KEY = {
  'camera-left': 'left',
  'camera-right': 'right',
  nearer: 'nearer',
  farther: 'farther',
} as const satisfies Record<NudgeWay, string>;

const CARRIER_WORDS: Readonly<Record<TurnWord, string>> = {
  ahead: 'straight ahead of you',
  'ahead-right': 'ahead to your right',
  right: 'to your right',
  'behind-right': 'behind you to the right',
  behind: 'straight behind you',
  'behind-left': 'behind you to the left',
  left: 'to your left',
  'ahead-left': 'ahead to your left',
};

/** A small move as the carrier feels it. */
export type OwnSense = {
  readonly turnDeg: number;
  readonly turn: TurnWord;
  /** "to your left", "straight ahead of you" … */
  readonly words: string;
  readonly distanceM: number;
};

/**
 * A spot moved by a nudge: along the camera's own directions, not the plan's.
 *
 * @param camera, subject the camera and what it looks at [m]
 * @param byM length of the nudge [m]
 * @returns the new spot [m]; null when the camera stands on the subject
 * @source camera-left
 */
export function nudgeSpot({
  spot,
  camera,
  subject,
  way,
  byM,
}: {
  readonly spot: Spot;
  readonly camera: Spot;
  readonly subject: Spot;
  readonly way: NudgeWay;
  readonly byM: number;
}): Spot | null {
  const frame = cameraFrame(camera, subject);
  return frame ? add(spot, scale(frame[FRAME_KEY[way]], byM)) : null;
}

/**
 * A move in the carrier's own sense, for somebody who faces a heading.
 *
 * @param fromSpot, toSpot the move on the plan [m]
 * @param headingDeg where the carrier faces, clockwise from plan-up [°]
 * @returns words and length [m]; null when nothing moves
 * @source guidance-convention
 */
export function inOwnSense({
  fromSpot,
  toSpot,
  headingDeg,
}: {
  readonly fromSpot: Spot;
  readonly toSpot: Spot;
  readonly headingDeg: number;
}): OwnSense | null {
  const bearing = bearingDeg(fromSpot, toSpot);
  if (bearing === null) return null;
  const turn = turnDeg(headingDeg, bearing);
  const word = turnWords(turn);
  return {
    turnDeg: turn,
    turn: word,
    words: CARRIER_WORDS[word],
    distanceM: distance(fromSpot, toSpot),
  };
}
