import { PRIOR_SD_STOPS, priorBelief } from '../../../core/light/fit/belief.ts';
import type { Contribution, Lit } from '../../../core/light/fit/predict.ts';

/** A small generator of normal numbers with a seed: the same draws at every run. */
export function normals(seed: number): () => number {
  let state = seed >>> 0;
  const even = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  // Box and Muller; 1 − even() is never zero.
  return () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
}

export const EXPOSURE = { iso: 1600, fNumber: 2, shutterS: 1 / 160 };
/** Light that a meter calls correct at that setting: C·N²/S [lx·s]. */
export const CORRECT = (250 * 4) / 1600;

/** Two heads, an umbrella and a room, as the night's gear list has them. */
export const NIGHT_PRIOR = priorBelief([
  { id: 'head-k', sdStops: PRIOR_SD_STOPS.head },
  { id: 'head-b', sdStops: PRIOR_SD_STOPS.head },
  { id: 'umbrella', sdStops: PRIOR_SD_STOPS.modifier },
  { id: 'room', sdStops: PRIOR_SD_STOPS.room },
  { id: 'ambient', sdStops: PRIOR_SD_STOPS.ambient },
]);

const part = (shareOfCorrect: number, ...unknownIds: string[]): Contribution => ({
  luxSeconds: shareOfCorrect * CORRECT,
  unknownIds,
});

/** What the lights give on a stand-in's face, each alone with the room's return and the ambient beside it. */
const KEY = [part(0.7, 'head-k', 'umbrella'), part(0.2, 'head-k', 'umbrella', 'room')];
const BACK_ON_FACE = [part(0.15, 'head-b', 'room')];
const BACK = [part(0.9, 'head-b'), part(0.15, 'head-b', 'room')];
const AMBIENT = [part(0.1, 'ambient')];

const lit = (...groups: Contribution[][]): Lit => ({ contributions: groups.flat(), exposure: EXPOSURE });
export const KEY_ONLY = lit(KEY, AMBIENT);
export const BACK_ONLY = lit(BACK, AMBIENT);
export const AMBIENT_ONLY = lit(AMBIENT);
export const SUBJECT = lit(KEY, BACK_ON_FACE, AMBIENT);

/** Adds light of a named unknown. */
export const litBy = (...contributions: Contribution[]): Lit => ({ contributions, exposure: EXPOSURE });
