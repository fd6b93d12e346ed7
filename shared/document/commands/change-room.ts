import type * as Y from 'yjs';
import { isNewer } from '../ask.ts';
import { entryAt } from '../entries.ts';
import { type Outcome, refuse, refuseField } from '../outcome.ts';
import { type Entry, entrySchemas } from '../schema.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** What closes the room above its walls. */
export function setRoof(doc: Y.Doc, hand: Hand, roof: Entry<'room/roof'>): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const checked = entrySchemas['room/roof'].safeParse(roof);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ replace, log }) => {
    replace('room', 'roof', checked.data);
    log('roof', 'room', JSON.stringify(checked.data));
    return { ok: true };
  });
}

/** How much light ceiling, walls and floor send back, and what they are called. */
export function setFinishes(doc: Y.Doc, hand: Hand, finishes: Entry<'room/finishes'>): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const checked = entrySchemas['room/finishes'].safeParse(finishes);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ replace, log }) => {
    replace('room', 'finishes', checked.data);
    log('finishes', 'room', JSON.stringify(checked.data));
    return { ok: true };
  });
}

/** How high the ceiling is, or in a tent the walls. */
export function setCeiling(doc: Y.Doc, hand: Hand, ceilingM: number): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const shape = entryAt(doc, 'room', 'shape', 'room/shape');
  if (!shape) return refuse('no-such-room');
  const checked = entrySchemas['room/shape'].safeParse({ ...shape, ceilingM });
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('room', 'shape', checked.data);
    log('ceiling', 'room', `${ceilingM} m`);
    return { ok: true };
  });
}
