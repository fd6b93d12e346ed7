/** One question to the server's clock and its answer, all in milliseconds. */
export interface ClockProbe {
  readonly askedAt: number;
  readonly serverAt: number;
  readonly answeredAt: number;
}

export interface ClockOffset {
  /** Add to this phone's clock to get the server's. */
  readonly offsetMs: number;
  /** The offset is off by no more than this: half the round trip. */
  readonly errorMs: number;
}

/**
 * The offset to the server's clock from the probe with the shortest round trip: it was held up least,
 * so its bound is the tightest. Null without a usable probe.
 *
 * Source: D. L. Mills, RFC 5905 (Network Time Protocol), section 8, with the server's receive and send
 * times taken as one; the minimum filter is its section 10.
 */
export function clockOffset(probes: readonly ClockProbe[]): ClockOffset | null {
  let best: ClockOffset | null = null;
  for (const { askedAt, serverAt, answeredAt } of probes) {
    const roundTripMs = answeredAt - askedAt;
    if (!Number.isFinite(roundTripMs) || !Number.isFinite(serverAt) || roundTripMs < 0) continue;
    const errorMs = roundTripMs / 2;
    if (!best || errorMs < best.errorMs) best = { offsetMs: serverAt - (askedAt + errorMs), errorMs };
  }
  return best;
}
