import type * as Y from 'yjs';
import { currentRevision, standOf } from '../ask.ts';
import { markSchema } from '../fields.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import type { Mark, StampKind } from '../schema.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';
import type { StampOn } from './stamp-carry.ts';

function setStand(doc: Y.Doc, hand: Hand, on: StampOn, mark: Mark | null, note: string | null): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  if (found.revision.stamps.set) return refuse('already');
  const stand = standOf(found.night, found.carry.standId);
  if (!stand) return refuse('no-such-stand');
  const set = markSchema.safeParse(mark ?? found.revision.mark);
  if (!set.success) return refuse('out-of-range');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryStamp(on.carryId, on.revisionId, 'set'), {
      by: hand.person,
      at: hand.now(),
      echo: set.data,
      reason: note,
      before: stand.place.mark,
      undoneAt: null,
    });
    write('stands', key.standAt(stand.id), {
      mark: set.data,
      at: hand.now(),
      by: hand.person,
      carry: { carryId: on.carryId, revisionId: on.revisionId },
    });
    const which = `${stand.kit.letter} r${found.revision.number}`;
    log('set', on.carryId, note === null ? which : `${which}: ${note}`);
    return { ok: true };
  });
}

/**
 * The assistant has set the stand. The stand now *is* there, in the same transaction, and the stamp echoes
 * what was set, so that the lead sees what was done and not what was asked.
 *
 * @param mark where it really stands; the called mark where the assistant says nothing else
 */
export const markSet = (doc: Y.Doc, hand: Hand, on: StampOn, mark?: Mark): Outcome =>
  setStand(doc, hand, on, mark ?? null, null);

/**
 * The assistant has set the stand as near as could be: it stands where `mark` says, the called mark stays what was
 * asked, and the note says why ("as near as I could: 1 m short"). It is *set* like any other; `undoStamp` takes it back.
 *
 * @param note cut to 200 signs; an empty one is none
 */
export function markSetElsewhere(
  doc: Y.Doc,
  hand: Hand,
  { mark, note, ...on }: StampOn & { readonly mark: Mark; readonly note: string },
): Outcome {
  return setStand(doc, hand, on, mark, note.trim().slice(0, 200) || null);
}

/**
 * The assistant takes back a *carrying*, *can't* or *set* of the current revision. Taking back *set* puts the
 * stand back where it stood before, unless it has been set elsewhere since.
 */
export function undoStamp(
  doc: Y.Doc,
  hand: Hand,
  on: StampOn,
  kind: Extract<StampKind, 'carrying' | 'cant' | 'set'>,
): Outcome {
  const found = currentRevision(doc, on.carryId, on.revisionId);
  if (typeof found === 'string') return refuse(found);
  const stamp = found.revision.stamps[kind];
  if (!stamp) return refuse('nothing-to-undo');
  const stand = standOf(found.night, found.carry.standId);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('carries', key.carryStamp(on.carryId, on.revisionId, kind), { undoneAt: hand.now() });
    if (kind === 'set' && stamp.before && stand?.place.carry?.revisionId === on.revisionId)
      write('stands', key.standAt(stand.id), {
        mark: stamp.before,
        at: hand.now(),
        by: hand.person,
        carry: null,
      });
    log(`${kind} undone`, on.carryId);
    return { ok: true };
  });
}
