import type * as Y from 'yjs';
import { asId, type MomentId } from '../../ids.ts';
import { isNewer } from '../ask.ts';
import { entryAt } from '../entries.ts';
import { key } from '../keys.ts';
import { momentOrder } from '../moment-order.ts';
import { type NewPlaces, placesAfter } from '../moment-places.ts';
import { type Outcome, type Refused, refuse, refuseField } from '../outcome.ts';
import { rootOf } from '../roots.ts';
import { clockMinutes } from '../running.ts';
import { type Entry, entrySchemas, MOST_MOMENTS } from '../schema.ts';
import { type Night, readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL, type Pen } from '../transact.ts';

/** What a new moment is told. */
export interface NewMoment {
  readonly name: string;
  /** Local time of the night, "19:05". */
  readonly expected?: string | null;
  /** The moment that it begins as a copy of; the one before it where nothing is given. */
  readonly copyFrom?: string;
}

/** So many signs the log holds of one thing. */
const LONGEST_DETAIL = 400;

/** What a new moment takes over from another. */
const COPIED = [
  ['moment/view', key.momentView],
  ['moment/exposure', key.momentExposure],
  ['moment/wish', key.momentWish],
  ['moment/camera-light', key.momentCameraLight],
] as const;

const isIn = (night: Night, momentId: string): boolean => night.moments.some(({ id }) => id === momentId);

/** The whole order, with what was taken out of it: that may come back to its place. */
const wholeOrder = (night: Night) => [...night.moments, ...night.removedMoments].sort(momentOrder);

function checkedName(
  name: string,
  expected: string | null,
): { readonly ok: true; readonly value: Entry<'moment/name'> } | Refused {
  const checked = entrySchemas['moment/name'].safeParse({ name: name.trim(), expected });
  if (!checked.success) return refuseField(checked.error);
  if (expected !== null && clockMinutes(expected) === null)
    return { ok: false, reason: 'out-of-range', field: 'expected' };
  return { ok: true, value: checked.data };
}

function makeRoom({ write }: Pen, { moved }: NewPlaces): void {
  for (const { id, place } of moved) write('moments', key.momentPlace(id), place);
}

/** Writes a moment that takes over what `copyFrom` holds, fields that this version does not know among it. */
function writeCopy(
  doc: Y.Doc,
  { write }: Pen,
  momentId: MomentId,
  { name, place, copyFrom }: { name: Entry<'moment/name'>; place: string; copyFrom: string },
): void {
  write('moments', key.momentName(momentId), name);
  write('moments', key.momentPlace(momentId), place);
  for (const [kind, keyOf] of COPIED) {
    if (entryAt(doc, 'moments', keyOf(copyFrom), kind) === null) continue;
    write('moments', keyOf(momentId), rootOf(doc, 'moments').get(keyOf(copyFrom)));
  }
}

interface CheckedMoment {
  readonly name: Entry<'moment/name'>;
  readonly copyFrom: string;
}

/** Each with the moment that it is a copy of: the one before it in the list has the same source. */
function checkedMoments(
  night: Night,
  list: readonly NewMoment[],
  before: string | null,
): { readonly ok: true; readonly moments: readonly CheckedMoment[] } | Refused {
  if (list.some(({ copyFrom }) => copyFrom !== undefined && !isIn(night, copyFrom)))
    return refuse('no-such-moment');
  let source = before ?? night.moment?.id ?? null;
  const moments: CheckedMoment[] = [];
  for (const { name, expected = null, copyFrom } of list) {
    const checked = checkedName(name, expected);
    if (!checked.ok) return checked;
    source = copyFrom ?? source;
    if (source === null) return refuse('no-moment-to-copy');
    moments.push({ name: checked.value, copyFrom: source });
  }
  return { ok: true, moments };
}

/**
 * Puts a whole timeline into the running order, in the order of the list, in one transaction: all or none. Each begins as
 * a copy of the moment before it, or of the one that it names.
 *
 * @param after the moment that they follow; null: before all; the last one where nothing is given
 * @returns their ids, in the order of the list
 */
export function addMoments(
  doc: Y.Doc,
  hand: Hand,
  list: readonly NewMoment[],
  after?: string | null,
): Outcome<{ readonly momentIds: readonly MomentId[] }> {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const before = after === undefined ? (night.moments.at(-1)?.id ?? null) : after;
  if (before !== null && !isIn(night, before)) return refuse('no-such-moment');
  if (list.length === 0) return { ok: false, reason: 'out-of-range', field: 'moments' };
  const checked = checkedMoments(night, list, before);
  if (!checked.ok) return checked;
  if (night.moments.length + list.length > MOST_MOMENTS) return refuse('too-many-moments');
  const places = placesAfter(wholeOrder(night), before, list.length);
  return commit(doc, LOCAL, hand, (pen) => {
    makeRoom(pen, places);
    const momentIds = checked.moments.map((moment, index) => {
      const momentId = asId<MomentId>(hand.newId());
      writeCopy(doc, pen, momentId, { ...moment, place: places.places[index] ?? '' });
      return momentId;
    });
    const names = checked.moments.map(({ name }) => name.name).join(', ');
    pen.log('moment added', momentIds[0] ?? '', names.slice(0, LONGEST_DETAIL));
    return { ok: true, momentIds };
  });
}

/**
 * Puts a moment into the running order. It begins as a copy of the moment before it, or of the one that it names: subject
 * and camera, exposure, wish and the flash on the camera.
 *
 * @param after the moment that it follows; null: before all
 */
export function addMoment(
  doc: Y.Doc,
  hand: Hand,
  after: string | null,
  moment: NewMoment,
): Outcome<{ readonly momentId: MomentId }> {
  const outcome = addMoments(doc, hand, [moment], after);
  if (!outcome.ok) return outcome;
  const [momentId] = outcome.momentIds;
  return momentId === undefined ? refuse('no-such-moment') : { ok: true, momentId };
}

/** The same once more, right after it, without an expected time. */
export function repeatMoment(
  doc: Y.Doc,
  hand: Hand,
  momentId: string,
): Outcome<{ readonly momentId: MomentId }> {
  const moment = readNight(doc).moments.find(({ id }) => id === momentId);
  if (!moment) return refuse(isNewer(doc) ? 'newer-app' : 'no-such-moment');
  return addMoment(doc, hand, momentId, { name: moment.name });
}

/**
 * What a moment is called, and when it is expected.
 *
 * @param expected local time of the night, "19:05"; null: nobody knows
 */
export function renameMoment(
  doc: Y.Doc,
  hand: Hand,
  momentId: string,
  name: string,
  expected: string | null,
): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (!isIn(readNight(doc), momentId)) return refuse('no-such-moment');
  const checked = checkedName(name, expected);
  if (!checked.ok) return checked;
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentName(momentId), checked.value);
    log('moment renamed', momentId, `${checked.value.expected ?? ''} ${checked.value.name}`.trim());
    return { ok: true };
  });
}

/**
 * Another place in the running order.
 *
 * @param after the moment that it follows from now on; null: it comes first
 */
export function moveMoment(doc: Y.Doc, hand: Hand, momentId: string, after: string | null): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const index = night.moments.findIndex(({ id }) => id === momentId);
  if (index === -1 || (after !== null && !isIn(night, after))) return refuse('no-such-moment');
  const isThere = after === momentId || (night.moments[index - 1]?.id ?? null) === after;
  if (isThere) return refuse('already');
  const others = wholeOrder(night).filter(({ id }) => id !== momentId);
  const places = placesAfter(others, after, 1);
  return commit(doc, LOCAL, hand, (pen) => {
    makeRoom(pen, places);
    pen.write('moments', key.momentPlace(momentId), places.places[0] ?? '');
    pen.log('moment moved', momentId, after === null ? 'first' : `after ${after}`);
    return { ok: true };
  });
}
