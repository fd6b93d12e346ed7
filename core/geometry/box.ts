import { keepFinite } from '../units/finite.ts';
import type { Spot } from './spot.ts';

/** The upright box around something on the plan [m]. */
export type Box = {
  readonly leastX: number;
  readonly mostX: number;
  readonly leastY: number;
  readonly mostY: number;
};

/** The upright box around some spots; all zero when there is none. */
export function boxOf(spots: readonly Spot[]): Box {
  if (spots.length === 0) return { leastX: 0, mostX: 0, leastY: 0, mostY: 0 };
  let [leastX, mostX, leastY, mostY] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of spots) {
    leastX = Math.min(leastX, x);
    mostX = Math.max(mostX, x);
    leastY = Math.min(leastY, y);
    mostY = Math.max(mostY, y);
  }
  return {
    leastX: keepFinite(leastX),
    mostX: keepFinite(mostX),
    leastY: keepFinite(leastY),
    mostY: keepFinite(mostY),
  };
}

/** Are two boxes nearer to each other than this, or one in the other? @param gapM [m] */
export function boxesNear(a: Box, b: Box, gapM: number): boolean {
  return (
    a.leastX - b.mostX <= gapM &&
    b.leastX - a.mostX <= gapM &&
    a.leastY - b.mostY <= gapM &&
    b.leastY - a.mostY <= gapM
  );
}
