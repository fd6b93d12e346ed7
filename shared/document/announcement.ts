import type { AnnouncementId, MomentId, PersonId } from '../ids.ts';
import type { Entry } from './schema.ts';

/** That a person said "this moment now", and who has heard it since. */
export interface Announcement {
  readonly id: AnnouncementId;
  readonly momentId: MomentId;
  /** Server milliseconds. */
  readonly at: number;
  readonly by: string;
  /** The moment that was on before; null where there was none. */
  readonly before: string | null;
  readonly wasSkipped: boolean;
  readonly heard: readonly { readonly personId: PersonId; readonly at: number }[];
}

/** Of two announcements the earlier; of two of one millisecond the same one on every phone. */
export const announcedFirst = (a: Announcement, b: Announcement): number =>
  a.at - b.at || (a.id < b.id ? -1 : 1);

/**
 * What was begun last: what the document holds, or an announcement that was made later. Of two beginnings that were
 * written apart the document keeps one, and not always the later; the announcements are both there.
 *
 * @param announcements the earliest first
 */
export function latestStart(
  written: Entry<'about/now'> | null,
  announcements: readonly Announcement[],
): Entry<'about/now'> | null {
  const last = announcements.at(-1);
  if (!last || (written && written.at >= last.at)) return written;
  return { momentId: last.momentId, at: last.at, by: last.by };
}

/** What of a night tells who has to hear what. */
export interface Announced {
  readonly now: Entry<'about/now'> | null;
  readonly announcements: readonly Announcement[];
}

/** Announcements by two people with so much time between them were made without knowing of each other. */
export const CLASH_WITHIN_MS = 60_000;

const isHeardBy = ({ heard }: Announcement, person: string): boolean =>
  heard.some(({ personId }) => personId === person);

export interface Clash {
  readonly first: Announcement;
  readonly second: Announcement;
}

/**
 * Two announcements of different moments by different people within 60 s of each other, neither heard by the other
 * person, if one of the two moments is still on; else null. Only the last announcement of each person counts.
 */
export function announcementClash({ now, announcements }: Announced): Clash | null {
  const second = announcements.at(-1);
  const first = announcements.findLast(({ by }) => by !== second?.by);
  if (!first || !second || first.momentId === second.momentId) return null;
  if (second.at - first.at > CLASH_WITHIN_MS) return null;
  if (isHeardBy(first, second.by) || isHeardBy(second, first.by)) return null;
  return now?.momentId === first.momentId || now?.momentId === second.momentId ? { first, second } : null;
}

/**
 * What a person has still to hear: the last announcement by somebody else, if this person has not heard it and its moment
 * is on, or it is one of two that clash; else null. An announcement that the night has gone past asks nobody any more, and
 * whoever said the same within 60 s has nothing to hear.
 */
export function openAnnouncement(night: Announced, person: string): Announcement | null {
  const last = night.announcements.findLast(({ by }) => by !== person);
  if (!last || isHeardBy(last, person)) return null;
  const own = night.announcements.findLast(({ by }) => by === person);
  if (own?.momentId === last.momentId && Math.abs(own.at - last.at) <= CLASH_WITHIN_MS) return null;
  const clash = announcementClash(night);
  const isOn = last.momentId === night.now?.momentId;
  return isOn || last === clash?.first || last === clash?.second ? last : null;
}
