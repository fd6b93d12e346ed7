import { wrap360 } from '../geometry/angle.ts';
import { type Box, boxOf } from '../geometry/box.ts';
import { add, rotate, type Spot, subtract } from '../geometry/spot.ts';
import { keepFinite } from '../units/finite.ts';
import type { PlanFeature } from './plan-feature.ts';

/** A feature as it is moved about: where it is, how it is turned, what it covers. */
export type Arranged = Pick<PlanFeature, 'id' | 'at' | 'turnDeg' | 'outline'>;
/** Where a feature belongs now. */
export type Moved = { readonly id: string; readonly at: Spot };

/**
 * What is brought onto one line: the left, right, top or bottom edges of the boxes around the features, or
 * their middles on a line that runs across the plan (one y) or down it (one x).
 */
export type AlignBy = 'left' | 'right' | 'top' | 'bottom' | 'middle-across' | 'middle-down';

function middle(least: number, most: number): number {
  return least / 2 + most / 2;
}

/** How far to move a box so that it lies as wanted in the common box. */
function shiftFor(by: AlignBy, box: Box, common: Box): Spot {
  switch (by) {
    case 'left':
      return { x: common.leastX - box.leastX, y: 0 };
    case 'right':
      return { x: common.mostX - box.mostX, y: 0 };
    case 'top':
      return { x: 0, y: common.leastY - box.leastY };
    case 'bottom':
      return { x: 0, y: common.mostY - box.mostY };
    case 'middle-across':
      return { x: 0, y: middle(common.leastY, common.mostY) - middle(box.leastY, box.mostY) };
    case 'middle-down':
      return { x: middle(common.leastX, common.mostX) - middle(box.leastX, box.mostX), y: 0 };
  }
}

/**
 * Features brought onto one line. Edges go to the outermost one, middles to the middle of the box around all.
 *
 * @returns new places, in the order given
 */
export function aligned(features: readonly Arranged[], by: AlignBy): Moved[] {
  const common = boxOf(features.flatMap(({ outline }) => outline));
  return features.map(({ id, at, outline }) => ({ id, at: add(at, shiftFor(by, boxOf(outline), common)) }));
}

/**
 * Features with equal gaps between the boxes around them, from the first to the last as they lie. The two
 * outer ones stay; where there is too little room the gaps come out negative, and equal: the boxes overlap.
 *
 * @param way across the plan (x) or down it (y)
 * @returns new places, in the order given; fewer than three stay where they are
 */
export function evenlySpaced(features: readonly Arranged[], way: 'across' | 'down'): Moved[] {
  const spans = features.map(({ outline }, index) => {
    const { leastX, mostX, leastY, mostY } = boxOf(outline);
    return way === 'across' ? { index, least: leastX, most: mostX } : { index, least: leastY, most: mostY };
  });
  spans.sort((a, b) => middle(a.least, a.most) - middle(b.least, b.most) || a.index - b.index);
  const [first, last] = [spans[0], spans.at(-1)];
  if (!first || !last || spans.length < 3) return features.map(({ id, at }) => ({ id, at }));
  const covered = spans.reduce((sum, { least, most }) => sum + (most - least), 0);
  const gap = (last.most - first.least - covered) / (spans.length - 1);
  const shifts = new Map<number, number>();
  let next = first.least;
  for (const { index, least, most } of spans) {
    shifts.set(index, index === last.index ? 0 : keepFinite(next - least));
    next += most - least + gap;
  }
  return features.map(({ id, at }, index) => {
    const shift = shifts.get(index) ?? 0;
    return { id, at: add(at, way === 'across' ? { x: shift, y: 0 } : { x: 0, y: shift }) };
  });
}

/**
 * Features turned together about one spot.
 *
 * @param byDeg clockwise [°]
 * @returns new places and turns, in the order given; turns in [0°, 360°)
 */
export function turnedBy(
  features: readonly Arranged[],
  centre: Spot,
  byDeg: number,
): (Moved & { readonly turnDeg: number })[] {
  return features.map(({ id, at, turnDeg }) => ({
    id,
    at: add(centre, rotate(subtract(at, centre), byDeg)),
    turnDeg: wrap360((turnDeg % 360) + (byDeg % 360)),
  }));
}
