import type * as Y from 'yjs';
import { isNewer, latestCarry } from '../ask.ts';
import { isOpen } from '../carry.ts';
import { entryAt } from '../entries.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import { readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** The lead takes a call back. It stays in the document, and on the assistant's phone until acknowledged. */
export function withdrawCarry(doc: Y.Doc, hand: Hand, carryId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const carry = readNight(doc).carries.find((known) => known.id === carryId);
  if (!carry) return refuse('no-such-carry');
  if (!isOpen(carry)) return refuse('already');
  // An earlier withdrawal may have been acknowledged and undone; that says nothing of this one, whichever clock is right.
  const seen = entryAt(doc, 'carries', key.carryWithdrawnSeen(carryId), 'carry/withdrawn-seen');
  const at = Math.max(hand.now(), (seen?.at ?? 0) + 1);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryWithdrawn(carryId), { by: hand.person, at, undoneAt: null });
    log('withdrawn', carryId);
    return { ok: true };
  });
}

/** Undo of a withdrawal: the carry stands again as it was. */
export function restoreCarry(doc: Y.Doc, hand: Hand, carryId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const carry = night.carries.find((known) => known.id === carryId);
  if (!carry) return refuse('no-such-carry');
  if (carry.state !== 'withdrawn') return refuse('nothing-to-undo');
  // A later call has taken its place: restored, it would be replaced at once, and nobody would see why.
  if (latestCarry(night, carry.standId)?.id !== carryId) return refuse('replaced');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryWithdrawn(carryId), { undoneAt: hand.now() });
    log('withdrawal undone', carryId);
    return { ok: true };
  });
}

/** The assistant has seen that a carry was withdrawn; the card may go. */
export function acknowledgeWithdrawal(doc: Y.Doc, hand: Hand, carryId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const carry = readNight(doc).carries.find((known) => known.id === carryId);
  if (!carry) return refuse('no-such-carry');
  if (carry.withdrawnAt === null) return refuse('nothing-to-undo');
  if (carry.withdrawalSeen) return refuse('already');
  const at = Math.max(hand.now(), carry.withdrawnAt);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryWithdrawnSeen(carryId), { by: hand.person, at });
    log('withdrawal seen', carryId);
    return { ok: true };
  });
}
