import { boxOf } from '../geometry/box.ts';
import { areaOf, edgesOf, isSimple } from '../geometry/polygon.ts';
import { distance, type Spot } from '../geometry/spot.ts';

/** A room's outline, or why there is none, as a sentence with the value. */
export type OutlineOutcome = { readonly outline: readonly Spot[] } | { readonly reason: string };

/** No reception is held in a room longer than this [m]. @source own-rule */
const MOST_M = 300;
/** A room smaller than this [m²] is no room. @source own-rule */
const LEAST_AREA_M2 = 1;
/** A shorter wall is a slip of the finger [m]. @source own-rule */
const LEAST_WALL_M = 0.05;
/** Corners farther from the plan's origin than this [m] could not be kept in a night. @source own-rule */
const FARTHEST_M = 500;
const MOST_CORNERS = 200;

/**
 * A value in the words of a reason: "12.5 m", "not a number".
 *
 * @param value any number
 * @param unitWord what follows it, with its space; may be empty
 */
export function valueInWords(value: number, unitWord: string): string {
  if (!Number.isFinite(value)) return 'not a number';
  const short = Math.abs(value) < 1e6 ? Math.round(value * 100) / 100 + 0 : value.toExponential(1);
  return `${short}${unitWord}`;
}

function sizeFault(outline: readonly Spot[]): string | null {
  const { leastX, mostX, leastY, mostY } = boxOf(outline);
  const lengthM = Math.max(mostX - leastX, mostY - leastY);
  if (!(lengthM <= MOST_M)) {
    return `The room would be ${valueInWords(lengthM, ' m')} long; at most ${MOST_M} m can be drawn.`;
  }
  const farM = Math.max(-leastX, mostX, -leastY, mostY);
  if (!(farM <= FARTHEST_M)) {
    return `A corner would lie ${valueInWords(farM, ' m')} from the plan’s origin; at most ${FARTHEST_M} m can be drawn.`;
  }
  const short = edgesOf(outline).findIndex(([a, b]) => !(distance(a, b) >= LEAST_WALL_M));
  return short < 0 ? null : `Wall ${short + 1} would have no length.`;
}

/**
 * Why an outline cannot be a room's, the first reason found: a sentence for the screen. Walls and corners
 * are counted from 1 in it, as people count.
 *
 * @param outline corners in order, not closed [m]
 * @returns the sentence; null for an outline that can be used
 */
export function outlineProblem(outline: readonly Spot[]): string | null {
  if (outline.length < 3) return `A room needs three corners; this would have ${outline.length}.`;
  if (outline.length > MOST_CORNERS) {
    return `This would have ${outline.length} corners; at most ${MOST_CORNERS} can be drawn.`;
  }
  const nowhere = outline.findIndex(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y));
  if (nowhere >= 0) return `Corner ${nowhere + 1} is nowhere: its place is not a number.`;
  const fault = sizeFault(outline);
  if (fault) return fault;
  const area = areaOf(outline);
  if (area < LEAST_AREA_M2) {
    return `The room would hold ${valueInWords(area, ' m²')}; at least ${LEAST_AREA_M2} m² can be drawn.`;
  }
  return isSimple(outline) ? null : 'The walls would cross or touch each other.';
}

/** The outline when it can be a room's, else the reason why not. */
export function checkedOutline(outline: readonly Spot[]): OutlineOutcome {
  const reason = outlineProblem(outline);
  return reason === null ? { outline } : { reason };
}
