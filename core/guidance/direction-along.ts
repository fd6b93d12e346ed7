import { distanceToOutline } from '../geometry/polygon.ts';
import type { Spot } from '../geometry/spot.ts';
import type { LengthUnits } from '../units/length.ts';
import { bearingDeg } from './bearing.ts';
import type { Direction } from './direction.ts';
import { type LandmarkName, spokenName } from './landmark.ts';
import { type DirectionInput, directionTo, sentenceOf } from './landmark-sentence.ts';
import type { Way } from './way-around.ts';

/** Words for a way that may bend: walk along it to its last bend, then follow the direction from there. */
export type DirectionAlong = {
  /** What one goes round, in the order of the way; empty when the way is straight */
  readonly round: readonly LandmarkName[];
  /** Where the direction starts: the last bend, or where one is [m] */
  readonly from: Spot;
  /** Where one faces there: along the leg that led to it [°]; null when not known */
  readonly headingDeg: number | null;
  readonly direction: Direction;
  /** What the mark is right beside, named when there is nothing else to say than "here" */
  readonly beside: LandmarkName | null;
  readonly isStraight: boolean;
};

/** More things than this nobody keeps in mind; the last ones count, the arrow shows the first. */
const MOST_ROUND = 2;
/** Right beside a thing: within half a step of it [m]. */
const BESIDE_WITHIN_M = 0.4;

/** Each thing once, though a way bends round it in several short legs. */
function thingsRound({ bends }: Way): LandmarkName[] {
  const things: LandmarkName[] = [];
  for (const { round } of bends) if (round && round.id !== things.at(-1)?.id) things.push(round);
  return things;
}

function besideOf({ landmarks }: DirectionInput, to: Spot): LandmarkName | null {
  let best: { name: LandmarkName; awayM: number } | null = null;
  for (const { id, name, outline } of landmarks) {
    const awayM = distanceToOutline(outline, to);
    if (awayM === null || awayM > BESIDE_WITHIN_M || (best && awayM >= best.awayM)) continue;
    best = { name: { id, name }, awayM };
  }
  return best?.name ?? null;
}

/** As directionTo, but never back toward what one has just gone round. */
function onwardTo(input: DirectionInput, passed: LandmarkName | null): Direction {
  const direction = directionTo(input);
  if (!passed || !('toward' in direction) || direction.toward.id !== passed.id) return direction;
  return directionTo({ ...input, landmarks: input.landmarks.filter(({ id }) => id !== passed.id) });
}

/**
 * The words that lead to a mark when the way there may bend. The arrow shows the first leg; the words name
 * what to go round and then lead from the last bend, as `directionTo` does from there.
 *
 * @param way from where the carrier is to the mark
 * @param input as for directionTo; its own `from` and `to` give way to those of the way
 * @source guidance-convention
 */
export function directionAlong(way: Way, input: DirectionInput): DirectionAlong {
  const from = way.wordsFrom;
  const to = way.legs.at(-1) ?? input.to;
  const before = way.legs[way.legs.indexOf(from) - 1];
  const headingDeg = before ? bearingDeg(before, from) : input.headingDeg;
  const round = thingsRound(way);
  return {
    round,
    from,
    headingDeg,
    direction: onwardTo({ ...input, from, to, headingDeg }, round.at(-1) ?? null),
    beside: besideOf(input, to),
    isStraight: before === undefined,
  };
}

function lowered(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/**
 * The sentence for a way: as `sentenceOf` when it is straight, else what to go round first ("Round the cake
 * table, then toward the bar, stop 1 m short of it"). Of many things the last two are named; who only steps
 * out from beside a thing follows the arrow first.
 *
 * @param stepM one footfall of the carrier [m]
 * @returns lead: its first phrase ("Round the cake table"); text: the whole sentence
 * @source guidance-convention
 */
export function sentenceAlong(
  { round, direction, beside, isStraight }: DirectionAlong,
  units: LengthUnits,
  stepM: number,
): { readonly lead: string; readonly text: string } {
  const end = sentenceOf(direction, units, stepM);
  if (isStraight) return end;
  const things = round.slice(-MOST_ROUND).map(({ name }) => spokenName(name));
  const lead = things.length > 0 ? `Round ${things.join(' and ')}` : 'Follow the arrow first';
  if (direction.form !== 'here') return { lead, text: `${lead}, then ${lowered(end.text)}` };
  const place = beside ? `, beside ${spokenName(beside.name)}` : '';
  return { lead, text: `${lead}, and it is there${place}` };
}
