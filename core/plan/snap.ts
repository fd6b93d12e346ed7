import { boxesNear, boxOf } from '../geometry/box.ts';
import {
  contains,
  distanceToOutline,
  edgesOf,
  nearestOnOutline,
  nearestOnSegment,
} from '../geometry/polygon.ts';
import { add, distance, type Spot, scale, subtract, unit } from '../geometry/spot.ts';
import { isPositive } from '../units/finite.ts';
import type { PlanFeature } from './plan-feature.ts';

/** What a spot was put to. */
export type SnapTo = {
  readonly kind: 'table-edge' | 'feature' | 'corner' | 'wall' | 'wall-parallel' | 'grid';
  /** Of the table or other feature; null for the rest */
  readonly name: string | null;
  /** From the edge or wall; the width of the grid's squares for a grid [m] */
  readonly distanceM: number;
};

/** A spot, moved or not, and what it was moved to (null: left as it was). */
export type Snapped = { readonly spot: Spot; readonly to: SnapTo | null };

/** What there is to snap to. */
export type SnapInput = {
  /** The room's [m] */
  readonly outline: readonly Spot[];
  readonly features: readonly Pick<PlanFeature, 'id' | 'kind' | 'name' | 'outline'>[];
  /** Width of the grid's squares, from the plan's (0, 0) [m]; not above zero: no grid */
  readonly gridM: number;
  /** No spot is moved farther than this [m]; not above zero: nothing snaps. About 16 px of the screen. */
  readonly radiusM: number;
  /** Id of a feature that is not snapped to: the one that is dragged */
  readonly except?: string;
};

/** Lines run this far apart along walls and round features [m]. @source own-estimate */
const LINE_STEP_M = 0.5;
/** Half-way to the next line: farther than this [m] nothing is pulled, however large the radius. @source own-rule */
const MOST_PULL_M = LINE_STEP_M / 2;
/** The farthest line round a feature [m]. @source own-rule */
const FEATURE_LINES_TO_M = 1;
/** Beyond this no line is in reach [m]. */
const FARTHEST_LINE_M = FEATURE_LINES_TO_M + MOST_PULL_M;
/** So near to where it should be, a spot counts as there [m]: rounding only. */
const SAME_M = 1e-6;

function nearestM(outline: readonly Spot[], spot: Spot): number {
  const nearest = nearestOnOutline(outline, spot);
  return nearest ? distance(nearest, spot) : Number.POSITIVE_INFINITY;
}

/** Behind a bar that stands at the wall there are no spots. */
function leavesRoom(room: readonly Spot[], raw: Spot, spot: Spot): boolean {
  return contains(room, raw) && (distanceToOutline(room, spot) ?? 0) > SAME_M;
}

/** A spot of a line round a feature, on the same side of it as the raw one; null when no line is near. */
function nearFeature(spot: Spot, outline: readonly Spot[]): { spot: Spot; distanceM: number } | null {
  const edge = nearestOnOutline(outline, spot);
  if (!edge) return null;
  const awayM = distance(edge, spot);
  // Inside a feature there is its edge only.
  const lineM = contains(outline, spot) ? 0 : Math.round(awayM / LINE_STEP_M) * LINE_STEP_M;
  if (lineM > FEATURE_LINES_TO_M) return null;
  const out = unit(subtract(spot, edge));
  const put = out ? add(edge, scale(out, lineM)) : edge;
  // In the bight of a feature another part of it may be nearer: then the words would be wrong.
  return Math.abs(nearestM(outline, put) - lineM) > SAME_M ? null : { spot: put, distanceM: lineM };
}

function toFeature(
  raw: Spot,
  reachM: number,
  { outline: room, features, except }: SnapInput,
): Snapped | null {
  const here = boxOf([raw]);
  let best: Snapped | null = null;
  let bestM = Number.POSITIVE_INFINITY;
  for (const { id, kind, name, outline } of features) {
    // Far from its box it is far from its lines too: with many features this is what keeps a drag quick.
    if (id === except || !boxesNear(boxOf(outline), here, FARTHEST_LINE_M)) continue;
    const found = nearFeature(raw, outline);
    if (!found || distance(found.spot, raw) > reachM || leavesRoom(room, raw, found.spot)) continue;
    const awayM = nearestM(outline, raw);
    if (awayM >= bestM) continue;
    bestM = awayM;
    const named = kind === 'table' ? 'table-edge' : 'feature';
    best = { spot: found.spot, to: { kind: named, name, distanceM: found.distanceM } };
  }
  return best;
}

function toCorner(raw: Spot, reachM: number, outline: readonly Spot[]): Snapped | null {
  const near = outline.filter((corner) => distance(corner, raw) <= reachM);
  const [first] = near.sort((a, b) => distance(a, raw) - distance(b, raw));
  return first ? { spot: first, to: { kind: 'corner', name: null, distanceM: 0 } } : null;
}

function toWall(raw: Spot, reachM: number, outline: readonly Spot[]): Snapped | null {
  const nearest = nearestOnOutline(outline, raw);
  if (!nearest || distance(nearest, raw) > reachM) return null;
  return { spot: nearest, to: { kind: 'wall', name: null, distanceM: 0 } };
}

/** The line half a metre inside the walls: a spot counts only where it really is so far from every wall. */
function alongWall(raw: Spot, reachM: number, outline: readonly Spot[]): Snapped | null {
  if (!contains(outline, raw)) return null;
  const walls = edgesOf(outline).map(([a, b]) => nearestOnSegment(a, b, raw));
  walls.sort((a, b) => distance(a, raw) - distance(b, raw));
  for (const foot of walls) {
    const inward = unit(subtract(raw, foot));
    if (!inward || Math.abs(distance(foot, raw) - LINE_STEP_M) > reachM) continue;
    const spot = add(foot, scale(inward, LINE_STEP_M));
    const clearM = contains(outline, spot) ? nearestM(outline, spot) : 0;
    if (Math.abs(clearM - LINE_STEP_M) > SAME_M) continue;
    return { spot, to: { kind: 'wall-parallel', name: null, distanceM: LINE_STEP_M } };
  }
  return null;
}

function toGrid(raw: Spot, reachM: number, { gridM, outline }: SnapInput): Snapped | null {
  if (!isPositive(gridM)) return null;
  const spot = { x: Math.round(raw.x / gridM) * gridM, y: Math.round(raw.y / gridM) * gridM };
  if (!Number.isFinite(spot.x) || !Number.isFinite(spot.y)) return null;
  if (distance(spot, raw) > reachM || leavesRoom(outline, raw, spot)) return null;
  return { spot, to: { kind: 'grid', name: null, distanceM: gridM } };
}

/**
 * A spot put to the nearest line that somebody can find in the room: first the edge of a table or other
 * feature and the lines 0.5 m and 1 m round it, then a corner of the room, a wall, the line 0.5 m inside the
 * walls, last the grid. The first kind with a line in reach is taken, the nearest of that kind.
 *
 * Reach is the radius, but never more than 0.25 m, half-way between two lines (for the grid: the radius).
 *
 * @returns the spot, at most `radiusM` from the raw one, and what it lies on; a spot with nothing in reach as
 *   it was, with null
 */
export function snapSpot(spot: Spot, input: SnapInput): Snapped {
  const { outline, radiusM } = input;
  if (!isPositive(radiusM)) return { spot, to: null };
  const reachM = Math.min(radiusM, MOST_PULL_M);
  return (
    toFeature(spot, reachM, input) ??
    toCorner(spot, reachM, outline) ??
    toWall(spot, reachM, outline) ??
    alongWall(spot, reachM, outline) ??
    toGrid(spot, radiusM, input) ?? { spot, to: null }
  );
}
