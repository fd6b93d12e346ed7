import { distance } from '../../../core/geometry/spot.ts';
import { bearingDeg, turnDeg } from '../../../core/guidance/bearing.ts';
import { inOwnSense } from '../../../core/guidance/camera-sense.ts';
import { directionTo, sentenceOf } from '../../../core/guidance/landmark-sentence.ts';
import { type Facing, facings } from '../../../core/guidance/stance.ts';
import { type DistanceWords, distanceWords } from '../../../core/guidance/steps.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { landmarksOf } from '../../state/landmarks.ts';
import { asksToWalk, shortDistance } from '../../words/mark-words.ts';
import type { Asked } from './assistant-state.ts';

/** The way of a carry as its card tells it: arrow, words and plan all come from this one value. */
export interface Way {
  readonly facings: readonly Facing[];
  readonly facing: Facing | null;
  readonly headingDeg: number;
  /** Where the arrow points, degrees clockwise from straight ahead; null when nothing moves. */
  readonly turnDeg: number | null;
  readonly distanceM: number;
  readonly distance: DistanceWords;
  /** With a landmark first where one serves; else from the body. It never tells a number that the arrow's differs from. */
  readonly sentence: string;
}

/** Short moves are told from the body, longer ones by what stands in the room. */
const SHORT_M = 1.2;

/**
 * The way from where the stand is to its mark, for someone who faces `facingId`. Where that thing cannot be faced
 * from here the first that can be is taken.
 */
export function wayOf(night: Night, { carry, stand }: Asked, facingId: string, stepM: number): Way {
  const from = stand.place.mark;
  const to = carry.current.mark;
  const landmarks = landmarksOf(night);
  const subject = night.moment?.view.subject.spot ?? null;
  const around = facings({ at: from.spot, landmarks, subject });
  const facing = around.find((known) => known.id === facingId) ?? around[0] ?? null;
  const headingDeg = facing?.bearingDeg ?? 0;
  const distanceM = distance(from.spot, to.spot);
  const way = { facings: around, facing, headingDeg, distanceM };
  if (!asksToWalk(from, to)) {
    const letter = stand.kit.letter;
    const stay = { main: 'stay', steps: null };
    return { ...way, turnDeg: null, distance: stay, sentence: `${letter} stays where it is` };
  }
  const bearing = bearingDeg(from.spot, to.spot) ?? 0;
  const turn = turnDeg(headingDeg, bearing);
  const own = distanceM < SHORT_M ? inOwnSense({ fromSpot: from.spot, toSpot: to.spot, headingDeg }) : null;
  if (own)
    return {
      ...way,
      turnDeg: turn,
      distance: shortDistance(distanceM, stepM, night.units),
      sentence: capital(own.words),
    };
  const told = directionTo({
    from: from.spot,
    to: to.spot,
    landmarks,
    headingDeg,
    stepM,
    units: night.units,
  });
  const sentence = sentenceOf(told, night.units, stepM);
  // Words and number are read together: where the words tell a distance, the number is that one.
  const spokenM = 'distanceM' in told && told.form !== 'from-toward' ? told.distanceM : distanceM;
  return {
    ...way,
    turnDeg: turn,
    distance: distanceWords(spokenM, stepM, night.units),
    sentence: told.form === 'turn-distance' ? sentence.lead : sentence.text,
  };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
