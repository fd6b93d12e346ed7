import { degFromRad } from '../geometry/angle.ts';
import { contains, distanceToOutline } from '../geometry/polygon.ts';
import { add, distance, dot, rotate, type Spot, scale, subtract, unit } from '../geometry/spot.ts';
import { type Landmark, type LandmarkName, middleOf } from './landmark.ts';

/**
 * How to walk to a mark, with the ROUNDED numbers that are spoken: enough to follow it.
 * - toward-stop-short: walk toward one landmark until shortM from another (or the same); 0 is "at" it
 * - from-toward: start at the edge of one landmark and go distanceM toward another
 * - toward-distance: walk distanceM toward a landmark
 * - turn-distance: turn by turnDeg and walk distanceM; without a known heading turnDeg counts from plan-up
 * - here: it is here
 */
export type Direction =
  | {
      readonly form: 'toward-stop-short';
      readonly toward: LandmarkName;
      readonly stopAt: LandmarkName;
      readonly shortM: number;
    }
  | {
      readonly form: 'from-toward';
      readonly from: LandmarkName;
      readonly toward: LandmarkName;
      readonly distanceM: number;
    }
  | { readonly form: 'toward-distance'; readonly toward: LandmarkName; readonly distanceM: number }
  | {
      readonly form: 'turn-distance';
      readonly turnDeg: number;
      readonly headingKnown: boolean;
      readonly distanceM: number;
    }
  | { readonly form: 'here' };

/** Most strides of the search along a line; each is as long as the gap allows, so few are needed. */
const MOST_STRIDES = 2000;
/** A gap that is met to within this counts as met [m]. */
const MET_M = 1e-4;

/**
 * First place on a straight walk that is so near to an outline.
 *
 * @param from start [m]; direction a unit vector; reachM length of the walk [m]
 * @returns spot [m]; null when the walk never comes so near
 */
function firstWithin(
  outline: readonly Spot[],
  nearM: number,
  from: Spot,
  direction: Spot,
  reachM: number,
): Spot | null {
  const gapAt = (alongM: number) => distanceToOutline(outline, add(from, scale(direction, alongM)));
  let alongM = 0;
  for (let stride = 0; stride < MOST_STRIDES && alongM <= reachM; stride += 1) {
    const gapM = gapAt(alongM);
    if (gapM === null) return null;
    const excessM = gapM - nearM;
    if (excessM <= MET_M) return add(from, scale(direction, alongM));
    // The gap shrinks at most as fast as one walks, so no crossing lies within the excess.
    alongM += excessM;
  }
  return null;
}

function byId(landmarks: readonly Landmark[], name: LandmarkName): Landmark | null {
  return landmarks.find((landmark) => landmark.id === name.id) ?? null;
}

/** Where a walk toward a landmark ends when it stops short of another. */
function stopShortSpot(from: Spot, toward: Landmark, stopAt: Landmark, shortM: number): Spot | null {
  const middle = middleOf(toward);
  const direction = unit(subtract(middle, from));
  if (!direction) return null;
  return firstWithin(stopAt.outline, shortM, from, direction, distance(from, middle));
}

/** The place so far out from the edge of one landmark, on the line from its middle toward another's. */
function outFromSpot(start: Landmark, toward: Landmark, distanceM: number): Spot | null {
  const middle = middleOf(start);
  const end = middleOf(toward);
  const direction = unit(subtract(end, middle));
  if (!direction) return null;
  const reachM = distance(middle, end);
  // Backward from the goal: the last edge of the landmark on the way out is the one that one stands at.
  const edge = firstWithin(start.outline, 0, end, scale(direction, -1), reachM);
  return edge ? add(edge, scale(direction, distanceM)) : null;
}

/** Where a walk of so many metres toward a landmark ends. */
function walkTowardSpot(from: Spot, toward: Landmark, distanceM: number): Spot | null {
  const direction = unit(subtract(middleOf(toward), from));
  return direction ? add(from, scale(direction, distanceM)) : null;
}

/**
 * Where somebody lands who follows the words (rounded as they are spoken).
 *
 * @param from where they start [m]
 * @param landmarks those of the direction among them
 * @param headingDeg where they face [°]; null counts from plan-up
 * @returns spot [m]; null when a landmark is missing or the words lead nowhere
 * @source guidance-convention
 */
export function followDirection(
  direction: Direction,
  from: Spot,
  landmarks: readonly Landmark[],
  headingDeg: number | null,
): Spot | null {
  if (direction.form === 'here') return from;
  if (direction.form === 'turn-distance') {
    const facing = direction.headingKnown ? (headingDeg ?? 0) : 0;
    return add(from, rotate({ x: 0, y: -direction.distanceM }, facing + direction.turnDeg));
  }
  const toward = byId(landmarks, direction.toward);
  if (!toward) return null;
  if (direction.form === 'toward-distance') return walkTowardSpot(from, toward, direction.distanceM);
  const other = byId(landmarks, direction.form === 'from-toward' ? direction.from : direction.stopAt);
  if (!other) return null;
  return direction.form === 'from-toward'
    ? outFromSpot(other, toward, direction.distanceM)
    : stopShortSpot(from, toward, other, direction.shortM);
}

/** Angle at `from` between the ways to two spots [°], 0–180; null when one of them is at `from`. */
export function angleBetweenDeg(from: Spot, a: Spot, b: Spot): number | null {
  const toA = unit(subtract(a, from));
  const toB = unit(subtract(b, from));
  if (!toA || !toB) return null;
  return degFromRad(Math.atan2(Math.abs(toA.x * toB.y - toA.y * toB.x), dot(toA, toB)));
}

/** Is a spot on the floor, clear of a landmark's outline? */
export function isClearOf(landmark: Landmark, spot: Spot): boolean {
  return !contains(landmark.outline, spot);
}
