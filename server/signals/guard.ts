import { type Rate, TokenBucket } from '../access/token-bucket.ts';
import type { Log } from '../logging.ts';
import { give, type PhoneSocket } from './deps.ts';

/** Signals of one phone: a beat every 2.5 s, ten clock questions at a time, a heads-up now and then. */
export const SIGNAL_RATE: Rate = { perSecond: 20, burst: 60 };
/** A phone that was told so often in a row that it sends too much is cut off. */
const MOST_REFUSED = 200;

/** Lets signals through at a bearable rate; one above it gets a receipt that says so. */
export function guardRate(socket: PhoneSocket, now: () => number, log: Log, rate: Rate): void {
  const bucket = new TokenBucket(rate, now);
  let refused = 0;
  socket.use((packet, next) => {
    if (bucket.take()) {
      refused = 0;
      return next();
    }
    refused += 1;
    if (refused === 1) log.warn({ reason: 'too-many', socket: 'signals' }, 'refused');
    if (refused > MOST_REFUSED) socket.disconnect(true);
    // Without next() the packet goes no further.
    else if (packet[0] !== 'clock') give(packet.at(-1), { ok: false, reason: 'too-many' });
  });
}

/** A handler that throws is a fault of ours; it must not take the other phone's server away. */
export function guarded<Arguments extends unknown[]>(
  log: Log,
  act: (...args: Arguments) => void,
): (...args: Arguments) => void {
  return (...args) => {
    try {
      act(...args);
    } catch (error) {
      log.error({ error }, 'a signal handler failed');
    }
  };
}
