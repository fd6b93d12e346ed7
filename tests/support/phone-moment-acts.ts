import { isDeepStrictEqual } from 'node:util';
import { announcementClash, openAnnouncement } from '../../shared/document/announcement.ts';
import {
  announceMoment,
  hearAnnouncement,
  settleAnnouncement,
  undoAnnouncement,
} from '../../shared/document/commands/announce-moment.ts';
import {
  removeMoment,
  restoreMoment,
  skipMoment,
  unskipMoment,
} from '../../shared/document/commands/leave-out-moment.ts';
import {
  addMoment,
  addMoments,
  moveMoment,
  renameMoment,
  repeatMoment,
} from '../../shared/document/commands/running-order.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import type { LightMoment, Told } from './phone-light-acts.ts';

const among = <Item>(items: readonly Item[], size: number): Item | undefined =>
  items[size % Math.max(1, items.length)];
const momentId = ({ night, size }: LightMoment): string => among(night.moments, size)?.id ?? 'none';
/** A place in the list: before all, or after one of them. */
const placeFor = ({ night, size }: LightMoment): string | null =>
  size % 5 === 0 ? null : (among(night.moments, size >> 3)?.id ?? null);
const momentIn = (night: Night, id: string) => night.moments.find((known) => known.id === id);
const idsOf = (night: Night): readonly string[] => night.moments.map(({ id }) => id);

/** The list with some put after another, as a person would write it down. */
function withAfter(ids: readonly string[], after: string | null, put: readonly string[]): readonly string[] {
  const rest = ids.filter((id) => !put.includes(id));
  const index = after === null ? 0 : rest.indexOf(after) + 1;
  return [...rest.slice(0, index), ...put, ...rest.slice(index)];
}

/** What a copy shares with its source. */
const taken = (night: Night, id: string) => {
  const { view, exposure, wish, cameraLight } = momentIn(night, id) ?? {};
  return { view, exposure, wish, cameraLight };
};

const announced = (after: Night, person: string, id: string) =>
  after.moment?.id === id &&
  after.now?.by === person &&
  !after.moment.skipped &&
  after.announcements.at(-1)?.momentId === id;

/** What is pressed about the running order: adding, moving, leaving out, announcing. */
export const MOMENT_ACTS = {
  'add moment': (moment: LightMoment): Told => {
    const { doc, hand, night, size } = moment;
    const after = placeFor(moment);
    const outcome = addMoment(doc, hand, after, { name: `Surprise ${size}`, expected: '21:30' });
    return {
      outcome,
      shows: (now) =>
        outcome.ok && isDeepStrictEqual(idsOf(now), withAfter(idsOf(night), after, [outcome.momentId])),
    };
  },
  'add moments': (moment: LightMoment): Told => {
    const { doc, hand, night, size } = moment;
    const copyFrom = momentId(moment);
    const outcome = addMoments(doc, hand, [{ name: 'Speech', copyFrom }, { name: `Song ${size}` }]);
    return {
      outcome,
      shows: (now) =>
        outcome.ok &&
        isDeepStrictEqual(idsOf(now), [...idsOf(night), ...outcome.momentIds]) &&
        outcome.momentIds.every((id) => isDeepStrictEqual(taken(now, id), taken(night, copyFrom))),
    };
  },
  'repeat moment': (moment: LightMoment): Told => {
    const id = momentId(moment);
    const outcome = repeatMoment(moment.doc, moment.hand, id);
    return {
      outcome,
      shows: (now) =>
        outcome.ok &&
        isDeepStrictEqual(idsOf(now), withAfter(idsOf(moment.night), id, [outcome.momentId])) &&
        isDeepStrictEqual(taken(now, outcome.momentId), taken(now, id)),
    };
  },
  'rename moment': (moment: LightMoment): Told => {
    const id = momentId(moment);
    const expected = moment.size % 3 === 0 ? null : `2${moment.size % 4}:05`;
    return {
      outcome: renameMoment(moment.doc, moment.hand, id, `Toast ${moment.size}`, expected),
      shows: (now) =>
        momentIn(now, id)?.name === `Toast ${moment.size}` && momentIn(now, id)?.expected === expected,
    };
  },
  'move moment': (moment: LightMoment): Told => {
    const id = momentId(moment);
    const after = placeFor(moment);
    return {
      outcome: moveMoment(moment.doc, moment.hand, id, after),
      shows: (now) => isDeepStrictEqual(idsOf(now), withAfter(idsOf(moment.night), after, [id])),
    };
  },
  'skip moment': (moment: LightMoment): Told => {
    const id = momentId(moment);
    return {
      outcome: skipMoment(moment.doc, moment.hand, id),
      shows: (now) => momentIn(now, id)?.skipped === true && now.next?.id !== id,
    };
  },
  'unskip moment': ({ doc, hand, night, size }: LightMoment): Told => {
    const struck = night.moments.filter(({ skipped }) => skipped);
    const id = among(struck, size)?.id ?? night.moments[0]?.id ?? 'none';
    return {
      outcome: unskipMoment(doc, hand, id),
      shows: (now) => momentIn(now, id)?.skipped === false,
    };
  },
  'remove moment': (moment: LightMoment): Told => {
    const id = momentId(moment);
    return {
      outcome: removeMoment(moment.doc, moment.hand, id),
      shows: (now) => !momentIn(now, id) && now.removedMoments.some((gone) => gone.id === id),
    };
  },
  'restore moment': ({ doc, hand, night, size }: LightMoment): Told => {
    const id = among(night.removedMoments, size)?.id ?? 'none';
    return {
      outcome: restoreMoment(doc, hand, id),
      shows: (now) => isDeepStrictEqual(taken(now, id).view, among(night.removedMoments, size)?.view),
    };
  },
  announce: (moment: LightMoment): Told => {
    const id = momentId(moment);
    return {
      outcome: announceMoment(moment.doc, moment.hand, id),
      shows: (now) => announced(now, moment.hand.person, id),
    };
  },
  'hear announcement': ({ doc, hand, night, size }: LightMoment): Told => {
    const open = openAnnouncement(night, hand.person);
    const id = open?.id ?? among(night.announcements, size)?.id ?? 'none';
    return {
      outcome: hearAnnouncement(doc, hand, id),
      shows: (now) =>
        openAnnouncement(now, hand.person)?.id !== id &&
        now.announcements.some(
          (one) => one.id === id && one.heard.some(({ personId }) => personId === hand.person),
        ),
    };
  },
  'undo announcement': ({ doc, hand, night }: LightMoment): Told => {
    const last = night.announcements.at(-1);
    return {
      outcome: undoAnnouncement(doc, hand, last?.id ?? 'none'),
      shows: (now) => now.announcements.every(({ id }) => id !== last?.id),
    };
  },
  'settle announcement': ({ doc, hand, night, size }: LightMoment): Told => {
    const clash = announcementClash(night);
    const chosen = size % 2 === 0 ? clash?.first : clash?.second;
    const id = chosen?.momentId ?? 'none';
    return {
      outcome: settleAnnouncement(doc, hand, id),
      shows: (now) => now.moment?.id === id && announcementClash(now) === null,
    };
  },
} as const;
