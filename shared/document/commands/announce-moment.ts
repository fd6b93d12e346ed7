import type * as Y from 'yjs';
import { type AnnouncementId, asId } from '../../ids.ts';
import { type Announcement, announcementClash } from '../announcement.ts';
import { isNewer } from '../ask.ts';
import { beginMoment } from '../begin-moment.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import type { Moment } from '../parts.ts';
import { type Night, readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL, type Pen } from '../transact.ts';

/** "This moment now": it begins, and the other person is told until they have heard. Either may say it. */
export function announceMoment(
  doc: Y.Doc,
  hand: Hand,
  momentId: string,
): Outcome<{ readonly announcementId: AnnouncementId }> {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const moment = night.moments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  return commit(doc, LOCAL, hand, (pen) => {
    const at = beginMoment(pen, hand, night, moment);
    const announcementId = asId<AnnouncementId>(hand.newId());
    pen.write('moments', key.momentAnnounced(momentId, announcementId), {
      by: hand.person,
      at,
      before: night.moment?.id ?? null,
      wasSkipped: moment.skipped,
      undoneAt: null,
    });
    return { ok: true, announcementId };
  });
}

const announcementIn = (night: Night, announcementId: string): Announcement | null =>
  night.announcements.find(({ id }) => id === announcementId) ?? null;

function writeHeard({ write }: Pen, hand: Hand, { momentId, id }: Announcement, person: string): void {
  write('moments', key.momentHeard(momentId, id, person), { by: hand.person, at: hand.now() });
}

/** This person has heard an announcement by somebody else. */
export function hearAnnouncement(doc: Y.Doc, hand: Hand, announcementId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const announcement = announcementIn(readNight(doc), announcementId);
  if (!announcement) return refuse('no-such-announcement');
  const { by, heard, momentId } = announcement;
  if (by === hand.person || heard.some(({ personId }) => personId === hand.person)) return refuse('already');
  return commit(doc, LOCAL, hand, (pen) => {
    writeHeard(pen, hand, announcement, hand.person);
    pen.log('announcement heard', momentId);
    return { ok: true };
  });
}

/** What is on once an announcement is taken back: the other one of a clash, or what was on before it; null: no change. */
function onWithout(night: Night, { id, momentId, before }: Announcement): Moment | null {
  if (night.now?.momentId !== momentId) return null;
  const clash = announcementClash(night);
  const other = clash && [clash.first, clash.second].find((one) => one.id !== id);
  const isInClash = clash?.first.id === id || clash?.second.id === id;
  const back = isInClash ? (other?.momentId ?? before) : before;
  return night.moments.find((moment) => moment.id === back) ?? null;
}

/**
 * Undo of `announceMoment`: nobody is told any more. If its moment is still on, what was on before is on again (of two
 * announcements that clash: the moment of the other), and a moment that was skipped is skipped again.
 */
export function undoAnnouncement(doc: Y.Doc, hand: Hand, announcementId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const announcement = announcementIn(night, announcementId);
  if (!announcement) return refuse('no-such-announcement');
  const { momentId, wasSkipped } = announcement;
  const back = onWithout(night, announcement);
  return commit(doc, LOCAL, hand, (pen) => {
    pen.write('moments', key.momentAnnounced(momentId, announcementId), { undoneAt: hand.now() });
    if (back === null) {
      pen.log('announcement undone', momentId);
      return { ok: true };
    }
    beginMoment(pen, hand, night, back);
    if (wasSkipped && back.id !== momentId)
      pen.write('moments', key.momentSkipped(momentId), { undoneAt: null });
    return { ok: true };
  });
}

/**
 * Two people announced different moments at once: this one is it. It begins, and both announcements count as heard by
 * the other person.
 */
export function settleAnnouncement(doc: Y.Doc, hand: Hand, momentId: string): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const moment = night.moments.find(({ id }) => id === momentId);
  if (!moment) return refuse('no-such-moment');
  const clash = announcementClash(night);
  if (!clash || (clash.first.momentId !== momentId && clash.second.momentId !== momentId))
    return refuse('nothing-to-settle');
  const { first, second } = clash;
  return commit(doc, LOCAL, hand, (pen) => {
    beginMoment(pen, hand, night, moment);
    writeHeard(pen, hand, first, second.by);
    writeHeard(pen, hand, second, first.by);
    return { ok: true };
  });
}
