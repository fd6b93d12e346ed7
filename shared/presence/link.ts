/** How well a phone can be reached, from the age of its last sign of life. */
export type Link = 'live' | 'weak' | 'lost';

/** Two beats of 2.5 s may be missed before a link is called weak, five before it is called lost. */
export const LIVE_MS = 6000;
export const WEAK_MS = 15000;

/**
 * The state of a link.
 *
 * @param ageMs milliseconds since the last sign of life; an age that is no number counts as lost
 */
export function linkFromAge(ageMs: number): Link {
  if (ageMs <= LIVE_MS) return 'live';
  return ageMs <= WEAK_MS ? 'weak' : 'lost';
}
