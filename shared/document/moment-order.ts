import type { MomentId } from '../ids.ts';

/** What of a moment settles where it lies in the running order. */
export interface Placed {
  readonly id: MomentId;
  readonly place: string;
}

/**
 * Which of two moments comes first. Two phones may put a moment at the same place while apart: the id settles it the same
 * way on both.
 */
export function momentOrder(a: Placed, b: Placed): number {
  if (a.place !== b.place) return a.place < b.place ? -1 : 1;
  return a.id < b.id ? -1 : 1;
}

/** The first moment after the one that is on which is not skipped; null where there is none. */
export function nextMoment<Moment extends Placed & { readonly skipped: boolean }>(
  moments: readonly Moment[],
  on: Placed | null,
): Moment | null {
  if (on === null) return null;
  // By place and not by index: the one that is on may have been taken out of the list.
  return (
    moments.find((moment) => !moment.skipped && moment.id !== on.id && momentOrder(on, moment) < 0) ?? null
  );
}
