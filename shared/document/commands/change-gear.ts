import type * as Y from 'yjs';
import { ID_PATTERN } from '../../ids.ts';
import { isNewer } from '../ask.ts';
import { entryAt } from '../entries.ts';
import { type Outcome, refuse, refuseField } from '../outcome.ts';
import { type Entry, entrySchemas, type GearItem } from '../schema.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/**
 * What a piece of gear is: a new one, or a known one with other values. Undo is the same with the former item. A
 * known one keeps its kind, because stands are put together from it.
 */
export function setGear(doc: Y.Doc, hand: Hand, gearId: string, item: GearItem): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (!ID_PATTERN.test(gearId)) return refuse('no-such-gear');
  const checked = entrySchemas.gear.safeParse(item);
  if (!checked.success) return refuseField(checked.error);
  const known = entryAt(doc, 'gear', gearId, 'gear');
  if (known && known.kind !== checked.data.kind) return { ok: false, reason: 'out-of-range', field: 'kind' };
  return commit(doc, LOCAL, hand, ({ replace, log }) => {
    replace('gear', gearId, checked.data);
    log('gear', gearId, checked.data.name);
    return { ok: true };
  });
}

/** What is on the camera: a flash of the gear list, and its card or none. */
export function setCameraKit(doc: Y.Doc, hand: Hand, kit: Entry<'about/camera'>): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const checked = entrySchemas['about/camera'].safeParse(kit);
  if (!checked.success) return refuse('no-such-gear');
  const { flashGear, cardGear } = checked.data;
  const kindOf = (gearId: string) => entryAt(doc, 'gear', gearId, 'gear')?.kind;
  if (kindOf(flashGear) !== 'flash') return refuse('no-such-gear');
  if (cardGear !== null && kindOf(cardGear) !== 'card') return refuse('no-such-gear');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('about', 'camera', checked.data);
    log('camera kit', flashGear, cardGear ?? 'no card');
    return { ok: true };
  });
}
