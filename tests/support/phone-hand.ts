import type { Hand } from '../../shared/document/transact.ts';
import { makeId } from '../../shared/ids.ts';

/** 2026-05-16 19:20 UTC, when the invented night's first dance begins. */
const NIGHT_START_MS = Date.UTC(2026, 4, 16, 19, 20);

/** A clock that only a test moves. */
export class HeldClock {
  nowMs = NIGHT_START_MS;
  pass(ms: number): void {
    this.nowMs += ms;
  }
}

/** A small generator (mulberry32): the same seed gives the same ids, so that a failure can be repeated. */
function seededBytes(seed: number): (count: number) => Uint8Array {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 24;
  };
  return (count) => Uint8Array.from({ length: count }, next);
}

/**
 * A person's hand with repeatable ids and a clock that may be wrong.
 *
 * @param idSeed seed of the ids; different for each phone of a test
 * @param clockErrorMs what this phone's estimate of the server's clock is off by
 */
export function heldHand(
  person: string,
  clock: HeldClock,
  { idSeed, clockErrorMs = 0 }: { readonly idSeed: number; readonly clockErrorMs?: number },
): Hand {
  const bytes = seededBytes(idSeed);
  return { person, now: () => clock.nowMs + clockErrorMs, newId: () => makeId(bytes) };
}
