import type * as Y from 'yjs';
import { isNewer } from '../ask.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import { readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** A moment will not take place tonight. It stays in the list, struck out, and is never next. */
export function skipMoment(doc: Y.Doc, hand: Hand, momentId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const moment = readNight(doc).moments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  if (moment.skipped) return refuse('already');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentSkipped(momentId), { by: hand.person, at: hand.now(), undoneAt: null });
    log('moment skipped', momentId, moment.name);
    return { ok: true };
  });
}

/** Undo of `skipMoment`. */
export function unskipMoment(doc: Y.Doc, hand: Hand, momentId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const moment = readNight(doc).moments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  if (!moment.skipped) return refuse('nothing-to-undo');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentSkipped(momentId), { undoneAt: hand.now() });
    log('moment skip undone', momentId, moment.name);
    return { ok: true };
  });
}

/** Takes a moment out of the running order. It stays in the document, so that this can be undone. */
export function removeMoment(doc: Y.Doc, hand: Hand, momentId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  if (night.removedMoments.some(({ id }) => id === momentId)) return refuse('already');
  const moment = night.moments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  // Both phones would otherwise be on a moment that no list shows.
  if (night.moment?.id === momentId) return refuse('on-now');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentRemoved(momentId), { by: hand.person, at: hand.now(), undoneAt: null });
    log('moment removed', momentId, moment.name);
    return { ok: true };
  });
}

/** Undo of `removeMoment`: the moment is where it was in the order. */
export function restoreMoment(doc: Y.Doc, hand: Hand, momentId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  if (night.moments.some(({ id }) => id === momentId)) return refuse('nothing-to-undo');
  const moment = night.removedMoments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentRemoved(momentId), { undoneAt: hand.now() });
    log('moment removal undone', momentId, moment.name);
    return { ok: true };
  });
}
