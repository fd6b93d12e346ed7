import type * as Y from 'yjs';
import { asId, type FrameId } from '../../ids.ts';
import { isNewer, standOf } from '../ask.ts';
import { entryAt } from '../entries.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse, refuseField } from '../outcome.ts';
import { type Entry, entrySchemas } from '../schema.ts';
import { readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** A test frame was taken: what fired, where the stand-in stood, and how far over or under it came out. */
export function recordTestFrame(
  doc: Y.Doc,
  hand: Hand,
  frame: Omit<Entry<'frame/of'>, 'by' | 'at'>,
): Outcome<{ readonly frameId: FrameId }> {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  if (!night.moments.some(({ id }) => id === frame.momentId)) return refuse('no-such-moment');
  const checked = entrySchemas['frame/of'].safeParse({ ...frame, by: hand.person, at: hand.now() });
  if (!checked.success) return refuseField(checked.error);
  const { lights, what, stops } = checked.data;
  if (lights.some((light) => light.on === 'stand' && !standOf(night, light.standId)))
    return refuse('no-such-stand');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    const frameId = asId<FrameId>(hand.newId());
    write('frames', key.frameOf(frameId), checked.data);
    log('test frame', frameId, `${what} ${stops}`);
    return { ok: true, frameId };
  });
}

/** A test frame no longer counts. It stays in the document, so that this can be undone. */
export function removeTestFrame(doc: Y.Doc, hand: Hand, frameId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const { isKnown, isRemoved } = stateOf(doc, frameId);
  if (!isKnown) return refuse('no-such-frame');
  if (isRemoved) return refuse('already');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('frames', key.frameRemoved(frameId), { by: hand.person, at: hand.now(), undoneAt: null });
    log('test frame removed', frameId);
    return { ok: true };
  });
}

/** Undo of `removeTestFrame`: the frame counts again. */
export function restoreTestFrame(doc: Y.Doc, hand: Hand, frameId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const { isKnown, isRemoved } = stateOf(doc, frameId);
  if (!isKnown) return refuse('no-such-frame');
  if (!isRemoved) return refuse('nothing-to-undo');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('frames', key.frameRemoved(frameId), { undoneAt: hand.now() });
    log('test frame removal undone', frameId);
    return { ok: true };
  });
}

function stateOf(doc: Y.Doc, frameId: string) {
  const removed = entryAt(doc, 'frames', key.frameRemoved(frameId), 'frame/removed');
  return {
    isKnown: entryAt(doc, 'frames', key.frameOf(frameId), 'frame/of') !== null,
    isRemoved: removed !== null && removed.undoneAt === null,
  };
}
