import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ACT_KINDS } from '../support/phone-acts.ts';
import { castArbitrary, type Played, play, stepsArbitrary } from '../support/phone-play.ts';

/** Plays random nights and adds up what happened in them; fast-check prints seed and steps of one that fails. */
function playMany(phones: number, runs: number): { accepted: number; cuts: number; kinds: Set<string> } {
  const sum = { accepted: 0, cuts: 0, kinds: new Set<string>() };
  const add = (played: Played) => {
    sum.accepted += played.accepted;
    sum.cuts += played.cuts;
    for (const kind of played.kinds) sum.kinds.add(kind);
  };
  fc.assert(
    fc.property(castArbitrary(phones), stepsArbitrary, (cast, steps) => add(play(cast, steps))),
    { numRuns: runs },
  );
  return sum;
}

describe('phones that are cut off and joined again at random', () => {
  for (const [phones, runs] of [
    [2, 150],
    [3, 100],
  ] as const) {
    it(`[DOC12] ${phones} phones hold equal nights at the end, and no accepted command is lost`, () => {
      const { accepted, cuts, kinds } = playMany(phones, runs);
      // A play in which nothing happens proves nothing.
      expect(accepted).toBeGreaterThan(runs * 5);
      expect(cuts).toBeGreaterThan(runs / 2);
      expect([...kinds].sort()).toEqual([...ACT_KINDS].sort());
    });
  }
});
