import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BEAT_MS } from '../../shared/messages/signals.ts';
import { type ClockProbe, clockOffset } from '../../shared/presence/clock-offset.ts';
import { linkFromAge } from '../../shared/presence/link.ts';

describe('the link to another phone', () => {
  // The numbers are rule PRE1's own, stated here once more on purpose: a test that read them from the code could not fail.
  it('[PRE1] a beat goes out every 2.5 s', () => {
    expect(BEAT_MS).toBe(2500);
  });

  it('[PRE1] is live up to 6 s after the last beat, weak up to 15 s, then lost', () => {
    const words = [0, 2500, 6000, 6001, 15_000, 15_001, 3_600_000].map((ageMs) => linkFromAge(ageMs));
    expect(words).toEqual(['live', 'live', 'live', 'weak', 'weak', 'lost', 'lost']);
  });

  it('[PRE1] bears two lost beats and is weak after the third, lost after the sixth', () => {
    expect(linkFromAge(2 * 2500)).toBe('live');
    expect(linkFromAge(3 * 2500)).toBe('weak');
    expect(linkFromAge(6 * 2500)).toBe('weak');
    expect(linkFromAge(7 * 2500)).toBe('lost');
  });

  it('[PRE1] never gets better as the last beat gets older, and an age that is no number is lost', () => {
    const rank = { live: 0, weak: 1, lost: 2 } as const;
    const age = fc.double({ min: 0, max: 60_000, noNaN: true });
    fc.assert(
      fc.property(age, age, (a, b) => {
        const [younger, older] = a < b ? [a, b] : [b, a];
        expect(rank[linkFromAge(younger)]).toBeLessThanOrEqual(rank[linkFromAge(older)]);
      }),
    );
    expect(linkFromAge(Number.NaN)).toBe('lost');
    expect(linkFromAge(Number.POSITIVE_INFINITY)).toBe('lost');
  });
});

/** One question as it went: when it left by this phone's clock, how long it took there and back. */
interface Journey {
  readonly askedAt: number;
  readonly thereMs: number;
  readonly backMs: number;
}

/** What a phone sees of a journey when the server's clock is ahead of its own by `aheadMs`. */
const probe = ({ askedAt, thereMs, backMs }: Journey, aheadMs: number): ClockProbe => ({
  askedAt,
  serverAt: askedAt + thereMs + aheadMs,
  answeredAt: askedAt + thereMs + backMs,
});

const journey: fc.Arbitrary<Journey> = fc.record({
  askedAt: fc.integer({ min: 1_700_000_000_000, max: 1_800_000_000_000 }),
  thereMs: fc.nat(3000),
  backMs: fc.nat(3000),
});

describe("the offset to the server's clock", () => {
  // The bound is that of D. L. Mills, RFC 5905, section 8 (offset and delay of one exchange): the true offset lies
  // within half the round trip of the measured one, however unequal the two ways are.
  it('[PRE3] is wrong by no more than half the quickest round trip of ten, however unequal there and back are', () => {
    const ten = fc.array(journey, { minLength: 10, maxLength: 10 });
    fc.assert(
      fc.property(ten, fc.integer({ min: -86_400_000, max: 86_400_000 }), (journeys, aheadMs) => {
        const measured = clockOffset(journeys.map((one) => probe(one, aheadMs)));
        const quickest = Math.min(...journeys.map(({ thereMs, backMs }) => thereMs + backMs));
        expect(measured?.errorMs).toBe(quickest / 2);
        expect(Math.abs((measured?.offsetMs ?? Number.NaN) - aheadMs)).toBeLessThanOrEqual(quickest / 2);
      }),
    );
  });

  it('[PRE3] is exact when the quickest probe takes as long there as back, though the others do not', () => {
    const probes = [
      probe({ askedAt: 1000, thereMs: 900, backMs: 10 }, 5000),
      probe({ askedAt: 3000, thereMs: 20, backMs: 20 }, 5000),
      probe({ askedAt: 4000, thereMs: 10, backMs: 700 }, 5000),
    ];
    expect(clockOffset(probes)).toEqual({ offsetMs: 5000, errorMs: 20 });
  });

  it('[PRE3] is wrong by the whole half round trip when all of it was on one way', () => {
    expect(clockOffset([probe({ askedAt: 1000, thereMs: 80, backMs: 0 }, 5000)])).toEqual({
      offsetMs: 5040,
      errorMs: 40,
    });
  });

  it('[PRE3] passes over answers that never came and clocks that went backwards, and is null without a usable one', () => {
    const lost = { askedAt: 1000, serverAt: Number.NaN, answeredAt: 3000 };
    const backwards = { askedAt: 1000, serverAt: 6000, answeredAt: 900 };
    const endless = { askedAt: 1000, serverAt: 6000, answeredAt: Number.POSITIVE_INFINITY };
    expect(clockOffset([])).toBeNull();
    expect(clockOffset([lost, backwards, endless])).toBeNull();
    const good = probe({ askedAt: 5000, thereMs: 30, backMs: 30 }, -250);
    expect(clockOffset([lost, good, backwards, endless])).toEqual({ offsetMs: -250, errorMs: 30 });
  });
});
