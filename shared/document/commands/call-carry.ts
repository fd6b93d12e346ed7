import type * as Y from 'yjs';
import { asId, type CarryId, type RevisionId } from '../../ids.ts';
import { beginsAt, isNewer, latestCarry, standOf } from '../ask.ts';
import { isOpen } from '../carry.ts';
import { markSchema } from '../fields.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import type { Mark } from '../schema.ts';
import { readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

export interface Called {
  readonly carryId: CarryId;
  readonly revisionId: RevisionId;
}

/**
 * The lead calls a stand to a mark. While the stand's last carry is still open this is its next revision
 * (the assistant sees one card that changes, never two); else a new carry begins.
 */
export function callCarry(
  doc: Y.Doc,
  hand: Hand,
  call: { readonly standId: string; readonly mark: Mark },
): Outcome<Called> {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const stand = standOf(night, call.standId);
  if (!stand) return refuse('no-such-stand');
  const mark = markSchema.safeParse(call.mark);
  if (!mark.success) return refuse('out-of-range');
  const last = latestCarry(night, call.standId);
  const open = last && isOpen(last) ? last : null;
  const carryId = asId<CarryId>(open?.id ?? hand.newId());
  const revisionId = asId<RevisionId>(hand.newId());
  const number = (open?.current.number ?? 0) + 1;
  const stamp = { by: hand.person, at: hand.now() };
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    if (!open)
      write('carries', key.carryOf(carryId), {
        standId: stand.id,
        from: stand.place.mark,
        by: hand.person,
        at: beginsAt(hand, last),
      });
    write('carries', key.carryRevision(carryId, revisionId), {
      number,
      mark: mark.data,
      why: 'call',
      change: null,
      ...stamp,
    });
    log('called', carryId, `${stand.kit.letter} r${number}`);
    return { ok: true, carryId, revisionId };
  });
}
