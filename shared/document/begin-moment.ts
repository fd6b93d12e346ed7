import { key } from './keys.ts';
import type { Moment } from './parts.ts';
import type { Night } from './snapshot.ts';
import type { Hand, Pen } from './transact.ts';

/** The last instant there is; beyond it nothing can be read (ECMA-262, Time Values and Time Range). */
const LAST_INSTANT_MS = 8.64e15;

/**
 * When the next moment begins, in server milliseconds: after the last beginning that this phone knows, whatever its clock
 * says, so that what began later is the later everywhere.
 */
const momentBeginsAt = (hand: Hand, night: Night): number =>
  Math.min(LAST_INSTANT_MS, Math.max(hand.now(), (night.now?.at ?? 0) + 1));

/**
 * The night goes on to a moment, which is not skipped any more, within the transaction of `pen`. The log says so in one
 * entry, the same for every way in which a moment begins.
 *
 * @returns when it began, in server milliseconds
 */
export function beginMoment(pen: Pen, hand: Hand, night: Night, { id, name, skipped }: Moment): number {
  const at = momentBeginsAt(hand, night);
  pen.write('about', 'now', { momentId: id, at, by: hand.person });
  if (skipped) pen.write('moments', key.momentSkipped(id), { undoneAt: hand.now() });
  pen.log('moment', id, name);
  return at;
}
