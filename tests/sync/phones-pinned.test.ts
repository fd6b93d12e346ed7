import { describe, expect, it } from 'vitest';
import type { Act, ActKind } from '../support/phone-acts.ts';
import { play, type Step } from '../support/phone-play.ts';

/** The rule is the one of phones-interleaved: plays that failed once, as fast-check shrank them, stay here for good. */
const act = (kind: ActKind, rest: Partial<Act> & { phone?: number } = {}): Step => ({
  do: 'act',
  phone: 0,
  pick: 0,
  size: 0,
  ...rest,
  kind,
});
const up = { do: 'deliver', phone: 0, way: 'up', count: 1 } as const;

describe('plays that failed once', () => {
  it('[DOC8] seed -1478110970: a call after a withdrawal in the same millisecond is not replaced by what it follows', () => {
    const played = play({ clientIds: [2, 3], clockErrorsMs: [0, 0] }, [
      act('call'),
      act('call'),
      act('call', { pick: 28 }),
      up,
      up,
      up,
      act('withdraw', { pick: 9 }),
      act('call', { pick: 1 }),
      up,
      up,
    ]);
    expect(played.accepted).toBe(5);
  });

  it('[DOC8] seed 795239962: a third carry in the same millisecond is the open one', () => {
    const played = play({ clientIds: [2, 3, 4], clockErrorsMs: [0, 0, 0] }, [
      act('call'),
      act('call'),
      up,
      up,
      act('call'),
      act('call'),
      act('withdraw'),
      act('call'),
      act('call'),
      act('call'),
    ]);
    expect(played.accepted).toBe(8);
  });
});
