import type * as Y from 'yjs';
import { isNewer } from '../ask.ts';
import { beginMoment } from '../begin-moment.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse, refuseField } from '../outcome.ts';
import type { Moment } from '../parts.ts';
import { type Entry, entrySchemas } from '../schema.ts';
import { readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

function momentOf(doc: Y.Doc, momentId: string): Moment | null {
  return readNight(doc).moments.find((moment) => moment.id === momentId) ?? null;
}

/** The night goes on to this moment, which is not skipped any more; both phones follow. */
export function startMoment(doc: Y.Doc, hand: Hand, momentId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const moment = night.moments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  return commit(doc, LOCAL, hand, (pen) => {
    beginMoment(pen, hand, night, moment);
    return { ok: true };
  });
}

/** Speed, f-number and shutter time that the lead has on the camera for a moment. */
export function setExposure(
  doc: Y.Doc,
  hand: Hand,
  momentId: string,
  exposure: Entry<'moment/exposure'>,
): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (!momentOf(doc, momentId)) return refuse('no-such-moment');
  const checked = entrySchemas['moment/exposure'].safeParse(exposure);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentExposure(momentId), checked.data);
    log('exposure', momentId, JSON.stringify(checked.data));
    return { ok: true };
  });
}

/** Where subject and camera stand for a moment, and what the lens takes in. */
export function setView(doc: Y.Doc, hand: Hand, momentId: string, view: Entry<'moment/view'>): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (!momentOf(doc, momentId)) return refuse('no-such-moment');
  const checked = entrySchemas['moment/view'].safeParse(view);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentView(momentId), checked.data);
    log('view', momentId);
    return { ok: true };
  });
}

/** What the lead wants the picture of a moment to look like: levels in stops, and how wide the group is. */
export function setWish(doc: Y.Doc, hand: Hand, momentId: string, wish: Entry<'moment/wish'>): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (!momentOf(doc, momentId)) return refuse('no-such-moment');
  const checked = entrySchemas['moment/wish'].safeParse(wish);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('moments', key.momentWish(momentId), checked.data);
    log('wish', momentId, JSON.stringify(checked.data));
    return { ok: true };
  });
}

/** How the flash on the camera is used in a moment. */
export function setCameraLight(
  doc: Y.Doc,
  hand: Hand,
  momentId: string,
  light: Entry<'moment/camera-light'>,
): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (!momentOf(doc, momentId)) return refuse('no-such-moment');
  const checked = entrySchemas['moment/camera-light'].safeParse(light);
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ replace, log }) => {
    replace('moments', key.momentCameraLight(momentId), checked.data);
    log('camera light', momentId, JSON.stringify(checked.data));
    return { ok: true };
  });
}

/** The light that is in the room without any flash, at the subject, as EV at ISO 100. */
export function setAmbient(doc: Y.Doc, hand: Hand, ev100: number): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const checked = entrySchemas['room/ambient'].safeParse({ ev100 });
  if (!checked.success) return refuseField(checked.error);
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('room', 'ambient', checked.data);
    log('ambient', 'room', `EV ${ev100}`);
    return { ok: true };
  });
}
