import type { Rate } from '../access/token-bucket.ts';

/** How much one sync connection may send. Two phones at work send some ten messages a second. */
export interface SyncLimits {
  readonly messages: Rate;
  /** Bytes; the burst has room for a phone that comes back with a whole night. */
  readonly bytes: Rate;
  /** Largest awareness message, in bytes. */
  readonly awarenessBytes: number;
}

export const SYNC_LIMITS: SyncLimits = {
  messages: { perSecond: 200, burst: 600 },
  bytes: { perSecond: 2 * 1024 * 1024, burst: 32 * 1024 * 1024 },
  awarenessBytes: 4096,
};

/** A phone that has not taken this much of what it was sent is cut off; it comes back and asks for what it lacks. */
export const MOST_UNSENT_BYTES = 32 * 1024 * 1024;

/** WebSocket pings; a phone that has not answered the last one when the next is due is gone. */
export const PING_MS = 15_000;

/** After a failed write the disk is left alone for so long; then the next update tries it again. */
export const DISK_REST_MS = 2000;

/** How long a stopping server waits for phones to answer its goodbye. */
export const GOODBYE_MS = 500;
