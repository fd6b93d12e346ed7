import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ACT_KINDS } from '../support/phone-acts.ts';
import { castArbitrary, type Played, play, stepsArbitrary } from '../support/phone-play.ts';

interface Sum {
  accepted: number;
  refused: number;
  cuts: number;
  readonly kinds: Set<string>;
}

/** Plays random nights and adds up what happened in them; fast-check prints seed and steps of one that fails. */
function playMany(phones: number, parameters: fc.Parameters<unknown>): Sum {
  const sum: Sum = { accepted: 0, refused: 0, cuts: 0, kinds: new Set() };
  const add = (played: Played) => {
    sum.accepted += played.accepted;
    sum.refused += played.refused;
    sum.cuts += played.cuts;
    for (const kind of played.kinds) sum.kinds.add(kind);
  };
  const property = fc.property(castArbitrary(phones), stepsArbitrary, (cast, steps) =>
    add(play(cast, steps)),
  );
  fc.assert(property, parameters as fc.Parameters<Parameters<typeof property.run>[0]>);
  return sum;
}

describe('phones that are cut off and joined again at random', () => {
  for (const [phones, runs] of [
    [2, 80],
    [3, 60],
  ] as const) {
    it(`[DOC12] ${phones} phones hold equal nights at the end, and no accepted command is lost`, () => {
      const { accepted, refused, cuts } = playMany(phones, { numRuns: runs });
      // A play in which nothing happens proves nothing.
      expect(accepted).toBeGreaterThan(runs * 5);
      expect(refused).toBeGreaterThan(runs);
      expect(cuts).toBeGreaterThan(runs / 2);
    });
  }

  it('[DOC12] the plays reach every command there is, accepted', () => {
    // One seed for good: which commands random plays reach must not depend on the day.
    const { kinds } = playMany(2, { seed: 20260516, numRuns: 240 });
    expect(ACT_KINDS.filter((kind) => !kinds.has(kind))).toEqual([]);
  });
});
