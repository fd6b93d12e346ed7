import { join } from 'node:path';
import { type Logger, multistream, pino, stdSerializers } from 'pino';

export type Log = Logger;

/**
 * One line of JSON per event in `hushmark.log` of the data directory; on the terminal too if asked.
 * Callers never pass secrets, tokens, names of cookies or whole URLs: what is not passed cannot leak.
 */
export function createLog(dataDirectory: string, alsoTerminal: boolean): Log {
  // Written at once: events are few, and the last lines before a crash are those that matter.
  const file = pino.destination({ dest: join(dataDirectory, 'hushmark.log'), sync: true, mkdir: true });
  const streams = [{ stream: file }, ...(alsoTerminal ? [{ stream: process.stdout }] : [])];
  return pino({ base: null, serializers: { error: stdSerializers.err } }, multistream(streams));
}

/** A log that goes nowhere. */
export const silentLog = (): Log => pino({ level: 'silent' });
