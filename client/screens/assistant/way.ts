import { distance, type Spot } from '../../../core/geometry/spot.ts';
import { bearingDeg, turnDeg } from '../../../core/guidance/bearing.ts';
import { inOwnSense } from '../../../core/guidance/camera-sense.ts';
import { directionAlong, sentenceAlong } from '../../../core/guidance/direction-along.ts';
import { type Facing, facings } from '../../../core/guidance/stance.ts';
import { type DistanceWords, distanceWords } from '../../../core/guidance/steps.ts';
import type { NoWay, Way as WalkedWay } from '../../../core/guidance/way-around.ts';
import { lengthLabel } from '../../../core/units/length.ts';
import type { Mark } from '../../../shared/document/schema.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { landmarksOf } from '../../state/landmarks.ts';
import { wayBetween } from '../../state/ways.ts';
import { asksToWalk, shortDistance } from '../../words/mark-words.ts';
import { nudgeLines } from '../../words/nudge-words.ts';
import type { Asked } from './assistant-state.ts';

/** The way of a carry as its card tells it: arrow, words and plan all come from this one value. */
export interface Way {
  readonly facings: readonly Facing[];
  readonly facing: Facing | null;
  readonly headingDeg: number;
  /** `none`: nobody can walk there; what is drawn and shown is the straight line then. */
  readonly kind: 'stay' | 'way' | 'none';
  /** Where the arrow points, degrees clockwise from straight ahead: along the first leg; null when nothing moves. */
  readonly turnDeg: number | null;
  /** How far the arrow leads: to the first bend, or to the mark. */
  readonly firstM: number;
  /** What is drawn: from where the stand is, over the bends, to its mark. */
  readonly legs: readonly Spot[];
  readonly distanceM: number;
  /** The number beside the arrow: of the first leg. */
  readonly distance: DistanceWords;
  /** The whole of a way that bends, or how near one gets where there is none. */
  readonly whole: string | null;
  /** The nearest spot that one can walk to, where there is no way. */
  readonly nearest: Spot | null;
  /** What is said, one line each: with a landmark first where one serves, else from the body. */
  readonly lines: readonly string[];
}

/** How the assistant stands: what they say to be facing, their step, and how far they have turned since, as felt. */
export interface Stance {
  readonly facingId: string;
  readonly stepM: number;
  readonly turnedDeg?: number;
}

/** Short moves are told from the body, longer ones by what stands in the room. */
const SHORT_M = 1.2;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** How far one leg is, in words. */
const legWords = (legM: number, stepM: number, night: Night): DistanceWords =>
  legM < SHORT_M ? shortDistance(legM, stepM, night.units) : distanceWords(legM, stepM, night.units);

/** A way of which the assistant need not be told the words: "To your left". */
function shortWords(way: WalkedWay, headingDeg: number): string | null {
  const [fromSpot, toSpot] = way.legs;
  if (way.legs.length > 2 || way.lengthM >= SHORT_M || !fromSpot || !toSpot) return null;
  return inOwnSense({ fromSpot, toSpot, headingDeg })?.words ?? null;
}

/** What is said of a way, and the number beside the arrow. */
function wordsAlong(
  night: Night,
  way: WalkedWay,
  input: { readonly from: Spot; readonly to: Spot; readonly headingDeg: number; readonly stepM: number },
): Pick<Way, 'distance' | 'whole'> & { readonly text: string } {
  const { headingDeg, stepM } = input;
  const { units } = night;
  const firstM = distance(way.legs[0] ?? input.from, way.legs[1] ?? input.to);
  const short = shortWords(way, headingDeg);
  if (short !== null) return { text: capital(short), distance: legWords(firstM, stepM, night), whole: null };
  const along = directionAlong(way, { ...input, units, landmarks: landmarksOf(night) });
  const said = sentenceAlong(along, units, stepM);
  if (!along.isStraight) {
    const { main, steps } = distanceWords(way.lengthM, stepM, units);
    return {
      text: said.text,
      distance: legWords(firstM, stepM, night),
      whole: `${main}${steps ? `, ${steps}` : ''} in all`,
    };
  }
  const { direction } = along;
  // Words and number are read together: where the words tell a distance, the number is that one.
  const spokenM = 'distanceM' in direction && direction.form !== 'from-toward' ? direction.distanceM : firstM;
  return {
    text: direction.form === 'turn-distance' ? said.lead : said.text,
    distance: legWords(spokenM, stepM, night),
    whole: null,
  };
}

/** The straight line, where nobody can walk: said as such, with how near one gets. */
function straightInstead(night: Night, none: NoWay, from: Spot, to: Spot, stepM: number) {
  const nearM = none.nearest && distance(none.nearest, to);
  return {
    lines: [`No way there: ${none.reason}`],
    legs: [from, to],
    distance: legWords(distance(from, to), stepM, night),
    whole: nearM === null ? null : `You get within ${lengthLabel(nearM, night.units)}`,
    nearest: none.nearest,
  };
}

/** Whether a mark is as a stand is now: then all that a nudge asks is what it changed. */
const isAsNow = (now: Mark, from: Mark | undefined): from is Mark =>
  from !== undefined &&
  !asksToWalk(now, from) &&
  Math.abs(now.heightM - from.heightM) < 0.02 &&
  Math.abs(now.powerStops - from.powerStops) < 0.1 &&
  Math.abs(now.tiltDeg - from.tiltDeg) < 2;

/** What a nudge changes of a stand that stands where the lead nudged it from; null when more than that is asked. */
export function nudgedOnly({ carry, stand }: Asked): { readonly from: Mark; readonly to: Mark } | null {
  const { why, from, mark } = carry.current;
  return why === 'nudge' && isAsNow(stand.place.mark, from) ? { from, to: mark } : null;
}

/**
 * The way from where the stand is to its mark, for someone who faces what they say to. Where that thing cannot be
 * faced from here the first that can be is taken.
 */
export function wayOf(night: Night, asked: Asked, { facingId, stepM, turnedDeg = 0 }: Stance): Way {
  const { carry, stand } = asked;
  const from = stand.place.mark;
  const to = carry.current.mark;
  const subject = night.moment?.view.subject.spot ?? null;
  const around = facings({ at: from.spot, landmarks: landmarksOf(night), subject });
  const facing = around.find((known) => known.id === facingId) ?? around[0] ?? null;
  const headingDeg = (facing?.bearingDeg ?? 0) + turnedDeg;
  const stance = { facings: around, facing, headingDeg };
  const nudged = nudgedOnly(asked);
  const holds = stand.kit.umbrellaGear ? 'umbrella' : 'head';
  const changes = nudged
    ? nudgeLines(nudged.from, nudged.to, { headingDeg, stepM, units: night.units, holds }).map(capital)
    : [];
  if (!asksToWalk(from, to)) {
    const lines = changes.length > 0 ? changes : [`${stand.kit.letter} stays where it is`];
    const stay = {
      kind: 'stay',
      turnDeg: null,
      firstM: 0,
      distanceM: 0,
      whole: null,
      nearest: null,
    } as const;
    return { ...stance, ...stay, legs: [from.spot], distance: { main: 'stay', steps: null }, lines };
  }
  const found = wayBetween(night, from.spot, to.spot);
  if (found.kind === 'none') {
    const straight = straightInstead(night, found, from.spot, to.spot, stepM);
    const turn = turnDeg(headingDeg, bearingDeg(from.spot, to.spot) ?? 0);
    const firstM = distance(from.spot, to.spot);
    return { ...stance, kind: 'none', turnDeg: turn, firstM, distanceM: firstM, ...straight };
  }
  const { text, ...words } = wordsAlong(night, found, { from: from.spot, to: to.spot, headingDeg, stepM });
  const next = found.legs[1] ?? to.spot;
  // A short nudge says how it is to be moved in its own line; a longer one is told as any other way.
  const isShort = found.legs.length === 2 && found.lengthM < SHORT_M;
  return {
    ...stance,
    ...words,
    kind: 'way',
    turnDeg: turnDeg(headingDeg, bearingDeg(from.spot, next) ?? 0),
    firstM: distance(from.spot, next),
    legs: found.legs,
    distanceM: found.lengthM,
    nearest: null,
    lines: changes.length > 0 && isShort ? changes : [text, ...changes.slice(1)],
  };
}
