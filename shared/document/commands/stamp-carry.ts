import type * as Y from 'yjs';
import { currentRevision } from '../ask.ts';
import { revisionState } from '../carry.ts';
import { markSchema } from '../fields.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import type { Mark, StampKind } from '../schema.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** Which revision of which carry a stamp is put on. */
export interface StampOn {
  readonly carryId: string;
  readonly revisionId: string;
}

interface StampBody {
  readonly echo?: Mark;
  readonly reason?: string;
}

/** Puts one stamp on the current revision, once; the first stays. */
function stamp(doc: Y.Doc, hand: Hand, on: StampOn, kind: StampKind, body: StampBody = {}): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  if (found.revision.stamps[kind]) return refuse('already');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryStamp(on.carryId, on.revisionId, kind), {
      by: hand.person,
      at: hand.now(),
      echo: body.echo ?? null,
      reason: body.reason ?? null,
      before: null,
      undoneAt: null,
    });
    log(kind, on.carryId, body.reason);
    return { ok: true };
  });
}

/** The assistant's app has this revision, and it is not held back: a held one is not meant to have arrived. */
export function stampDelivered(doc: Y.Doc, hand: Hand, on: StampOn): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found !== 'string' && found.carry.state === 'held') return refuse('held');
  return stamp(doc, hand, on, 'delivered');
}

/** It was drawn on a visible page; `echo` is the mark as that phone drew it. */
export function stampSeen(doc: Y.Doc, hand: Hand, on: StampOn, echo: Mark): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  // An echo that does not fit would make the whole stamp unreadable: accepted, and lost.
  const drawn = markSchema.safeParse(echo);
  if (!drawn.success) return refuse('out-of-range');
  return stamp(doc, hand, on, 'seen', { echo: drawn.data });
}

/** The assistant pressed "heard" on the heads-up for it. */
export const stampHeard = (doc: Y.Doc, hand: Hand, on: StampOn): Outcome => stamp(doc, hand, on, 'heard');

/** The lead's phone keeps a call back that waited too long for the link: an old call may be a wrong one. */
export const holdCall = (doc: Y.Doc, hand: Hand, on: StampOn): Outcome => stamp(doc, hand, on, 'held');

/** The lead sends a held call after all. */
export function releaseCall(doc: Y.Doc, hand: Hand, on: StampOn): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  if (!found.revision.stamps.held) return refuse('nothing-to-undo');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryStamp(on.carryId, on.revisionId, 'held'), { undoneAt: hand.now() });
    log('sent after all', on.carryId);
    return { ok: true };
  });
}

/** The assistant has the stand in hand. */
export function startCarrying(doc: Y.Doc, hand: Hand, on: StampOn): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  const { state } = revisionState(found.revision);
  if (state === 'set' || state === 'carrying') return refuse('already');
  // After "can't" the assistant may find a way: the stamp is put anew, later than the refusal.
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryStamp(on.carryId, on.revisionId, 'carrying'), {
      by: hand.person,
      at: Math.max(hand.now(), (found.revision.stamps.cant?.at ?? 0) + 1),
      echo: found.revision.mark,
      reason: null,
      before: null,
      undoneAt: null,
    });
    log('carrying', on.carryId);
    return { ok: true };
  });
}

/** The assistant cannot put it there, and says why. */
export function cannotCarry(doc: Y.Doc, hand: Hand, on: StampOn, reason: string): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  const { state } = revisionState(found.revision);
  if (state === 'set' || state === 'cant') return refuse('already');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryStamp(on.carryId, on.revisionId, 'cant'), {
      by: hand.person,
      at: Math.max(hand.now(), (found.revision.stamps.carrying?.at ?? 0) + 1),
      echo: null,
      reason: reason.slice(0, 200),
      before: null,
      undoneAt: null,
    });
    log('cant', on.carryId, reason.slice(0, 200));
    return { ok: true };
  });
}
