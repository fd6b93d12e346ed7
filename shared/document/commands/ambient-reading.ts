import type * as Y from 'yjs';
import { asId, type ReadingId } from '../../ids.ts';
import { isNewer } from '../ask.ts';
import { entryAt } from '../entries.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse, refuseField } from '../outcome.ts';
import { type Entry, entrySchemas } from '../schema.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** A reading of the ambient light at a spot, as EV at ISO 100; it is put beside the others and replaces none. */
export function measureAmbient(
  doc: Y.Doc,
  hand: Hand,
  spot: Entry<'room/ambient-spot'>['spot'],
  ev100: number,
): Outcome<{ readonly readingId: ReadingId }> {
  if (isNewer(doc)) return refuse('newer-app');
  const reading = { spot, ev100, at: hand.now(), by: hand.person, removedAt: null };
  const checked = entrySchemas['room/ambient-spot'].safeParse(reading);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    const readingId = asId<ReadingId>(hand.newId());
    write('room', key.ambientSpot(readingId), checked.data);
    log('ambient measured', readingId, `EV ${ev100}`);
    return { ok: true, readingId };
  });
}

const readingAt = (doc: Y.Doc, readingId: string) =>
  entryAt(doc, 'room', key.ambientSpot(readingId), 'room/ambient-spot');

/** A reading no longer counts; it stays in the document. */
export function removeAmbient(doc: Y.Doc, hand: Hand, readingId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const reading = readingAt(doc, readingId);
  if (!reading) return refuse('no-such-reading');
  if (reading.removedAt !== null) return refuse('already');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('room', key.ambientSpot(readingId), { removedAt: hand.now() });
    log('ambient removed', readingId);
    return { ok: true };
  });
}

/** Undo of `removeAmbient`. */
export function restoreAmbient(doc: Y.Doc, hand: Hand, readingId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const reading = readingAt(doc, readingId);
  if (!reading) return refuse('no-such-reading');
  if (reading.removedAt === null) return refuse('nothing-to-undo');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('room', key.ambientSpot(readingId), { removedAt: null });
    log('ambient removal undone', readingId);
    return { ok: true };
  });
}
