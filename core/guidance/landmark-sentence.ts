import { distanceToOutline } from '../geometry/polygon.ts';
import { distance, type Spot } from '../geometry/spot.ts';
import { type LengthUnits, lengthLabel, metresFromFeet, roundedLengthM } from '../units/length.ts';
import { bearingDeg, type TurnWord, turnDeg, turnWords } from './bearing.ts';
import { angleBetweenDeg, type Direction, followDirection, isClearOf } from './direction.ts';
import { type Landmark, type LandmarkName, middleOf, spokenName } from './landmark.ts';
import { distanceWords } from './steps.ts';

/** Where from, where to, what there is to steer by, and how the carrier stands. */
export type DirectionInput = {
  readonly from: Spot;
  readonly to: Spot;
  readonly landmarks: readonly Landmark[];
  /** Where the carrier faces, clockwise from plan-up [°]; null when not known */
  readonly headingDeg: number | null;
  readonly stepM: number;
  readonly units: LengthUnits;
};

/** Words may land somebody this far from the mark, no farther [m]. @source guidance-convention */
const WORDS_WITHIN_M = 0.5;
/** A landmark to walk toward lies at most this far off the line [°]. @source guidance-convention */
const TOWARD_WITHIN_DEG = 20;
/** A landmark to stop at, or to start from, lies at most this far from the mark [m]. */
const STOP_WITHIN_M = 2.5;
/** A low thing is seen through a crowd only this near [m]: an estimate. @source own-estimate */
const LOW_SEEN_WITHIN_M = 6;
/** Nearer than this nobody needs a sentence [m]. */
const HERE_WITHIN_M = 0.3;

/** "1 m short" is spoken in half metres, or whole feet. */
function shortLengthM(lengthM: number, units: LengthUnits): number {
  const stepM = units === 'metric' ? 0.5 : metresFromFeet(1);
  return Math.round(lengthM / stepM) * stepM;
}

type Candidate = { readonly landmark: Landmark; readonly awayM: number; readonly offDeg: number };

function nameOf({ id, name }: Landmark): LandmarkName {
  return { id, name };
}

/** Landmarks to walk toward: near the line, seen, and not reached before the mark; the best first. */
function towardCandidates({ from, to, landmarks }: DirectionInput): Candidate[] {
  const wayM = distance(from, to);
  const candidates = landmarks.flatMap((landmark) => {
    const awayM = distanceToOutline(landmark.outline, from);
    const offDeg = angleBetweenDeg(from, to, middleOf(landmark));
    if (awayM === null || awayM === 0 || offDeg === null || offDeg > TOWARD_WITHIN_DEG) return [];
    const seen = landmark.tall || awayM <= LOW_SEEN_WITHIN_M;
    const beyond = distance(from, middleOf(landmark)) >= wayM;
    return seen && beyond && isClearOf(landmark, to) ? [{ landmark, awayM, offDeg }] : [];
  });
  return candidates.sort(
    (a, b) => Number(b.landmark.tall) - Number(a.landmark.tall) || a.offDeg - b.offDeg || a.awayM - b.awayM,
  );
}

/** Landmarks close to the mark, the nearest first. */
function nearMark({ to, landmarks }: DirectionInput): { landmark: Landmark; awayM: number }[] {
  return landmarks
    .flatMap((landmark) => {
      const awayM = distanceToOutline(landmark.outline, to);
      return awayM === null || awayM === 0 || awayM > STOP_WITHIN_M ? [] : [{ landmark, awayM }];
    })
    .sort((a, b) => a.awayM - b.awayM);
}

function stopShortForms(input: DirectionInput): Direction[] {
  const stops = nearMark(input);
  return towardCandidates(input).flatMap(({ landmark }) =>
    stops.map(
      (stop): Direction => ({
        form: 'toward-stop-short',
        toward: nameOf(landmark),
        stopAt: nameOf(stop.landmark),
        shortM: shortLengthM(stop.awayM, input.units),
      }),
    ),
  );
}

function fromTowardForms(input: DirectionInput): Direction[] {
  const goals = [...input.landmarks].sort((a, b) => Number(b.tall) - Number(a.tall));
  return nearMark(input).flatMap(({ landmark, awayM }) =>
    goals
      .filter((goal) => goal.id !== landmark.id && isClearOf(goal, input.to))
      .map(
        (goal): Direction => ({
          form: 'from-toward',
          from: nameOf(landmark),
          toward: nameOf(goal),
          distanceM: shortLengthM(awayM, input.units),
        }),
      ),
  );
}

function towardDistanceForms(input: DirectionInput): Direction[] {
  const distanceM = roundedLengthM(distance(input.from, input.to), input.units);
  return towardCandidates(input).map(({ landmark }) => ({
    form: 'toward-distance',
    toward: nameOf(landmark),
    distanceM,
  }));
}

function turnDistance({ from, to, headingDeg, units }: DirectionInput): Direction {
  return {
    form: 'turn-distance',
    turnDeg: turnDeg(headingDeg ?? 0, bearingDeg(from, to) ?? 0),
    headingKnown: headingDeg !== null,
    distanceM: roundedLengthM(distance(from, to), units),
  };
}

/**
 * The words that lead to a mark. A form with a landmark is taken only when somebody who follows the
 * rounded words lands within 0.5 m of the mark; the order is: toward one, stop short of another; from one
 * toward another; so far toward one; else turn and distance.
 *
 * @returns the direction with the numbers as they are spoken; 'here' within 0.3 m
 * @source guidance-convention
 */
export function directionTo(input: DirectionInput): Direction {
  const { from, to, landmarks, headingDeg } = input;
  if (distance(from, to) < HERE_WITHIN_M) return { form: 'here' };
  for (const formsOf of [stopShortForms, fromTowardForms, towardDistanceForms]) {
    for (const direction of formsOf(input)) {
      const end = followDirection(direction, from, landmarks, headingDeg);
      if (end && distance(end, to) <= WORDS_WITHIN_M) return direction;
    }
  }
  return turnDistance(input);
}

const TURN_PHRASES: Readonly<Record<TurnWord, string>> = {
  ahead: 'Straight ahead',
  'ahead-right': 'Ahead to your right',
  right: 'To your right',
  'behind-right': 'Behind you to the right',
  behind: 'Straight behind you',
  'behind-left': 'Behind you to the left',
  left: 'To your left',
  'ahead-left': 'Ahead to your left',
};

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "5 m (≈ 8 steps)", or only what helps. */
function wayInWords(distanceM: number, units: LengthUnits, stepM: number): string {
  const { main, steps } = distanceWords(distanceM, stepM, units);
  return steps === null ? main : `${main} (${steps})`;
}

/** The two halves of the sentence, landmark first. */
function halvesOf(direction: Direction, units: LengthUnits, stepM: number): [string, string] {
  switch (direction.form) {
    case 'here':
      return ['Here', 'set it down here'];
    case 'turn-distance': {
      const phrase = direction.headingKnown ? TURN_PHRASES[turnWords(direction.turnDeg)] : 'Follow the arrow';
      return [phrase, wayInWords(direction.distanceM, units, stepM)];
    }
    case 'toward-distance':
      return [`Toward ${spokenName(direction.toward.name)}`, wayInWords(direction.distanceM, units, stepM)];
    case 'from-toward': {
      const [start, goal] = [spokenName(direction.from.name), spokenName(direction.toward.name)];
      if (!(direction.distanceM > 0)) return [`At ${start}`, `on the side toward ${goal}`];
      return [`From ${start}`, `${lengthLabel(direction.distanceM, units)} toward ${goal}`];
    }
    case 'toward-stop-short': {
      const stop = direction.stopAt.id === direction.toward.id ? 'it' : spokenName(direction.stopAt.name);
      const short =
        direction.shortM > 0 ? `stop ${lengthLabel(direction.shortM, units)} short of` : 'stop at';
      return [`Toward ${spokenName(direction.toward.name)}`, `${short} ${stop}`];
    }
  }
}

/**
 * A direction as a sentence with the landmark first.
 *
 * @param stepM one footfall of the carrier [m]
 * @returns lead: its first phrase ("Toward the bar"); text: the whole sentence ("Toward the bar, stop 1 m
 *   short of the cake table")
 * @source guidance-convention
 */
export function sentenceOf(
  direction: Direction,
  units: LengthUnits,
  stepM: number,
): { readonly lead: string; readonly text: string } {
  const [first, rest] = halvesOf(direction, units, stepM);
  const lead = capital(first);
  return { lead, text: `${lead}, ${rest}` };
}
