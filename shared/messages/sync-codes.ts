/**
 * Message types of the sync socket. 0, 1 and 3 are those of the y-websocket protocol; the others are ours
 * and are numbered far from it (SPEC SYN1).
 */
export const SYNC_MESSAGE = {
  sync: 0,
  awareness: 1,
  queryAwareness: 3,
  /** server → phone: a state vector of what is on the server's disk. The only base for "sent" (SPEC SYN4). */
  durable: 101,
  /** phone → server and back, same bytes: proof that the other end answers (SPEC SYN6). */
  heartbeat: 102,
} as const;

/** Sub-types inside a sync message. */
export const SYNC_STEP = { askWithVector: 0, answer: 1, update: 2 } as const;

/** Where the two sockets are reached. */
export const SYNC_PATH = '/y/';
export const SIGNALS_PATH = '/sio/';

/** Largest sync message the server takes, in bytes: some ten times the largest night seen. */
export const LARGEST_SYNC_BYTES = 8 * 1024 * 1024;
/** Largest signal the server takes, in bytes. */
export const LARGEST_SIGNAL_BYTES = 16 * 1024;
