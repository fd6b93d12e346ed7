import type * as Y from 'yjs';
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
import type { Outcome } from '../../shared/document/outcome.ts';
import type { Hand } from '../../shared/document/transact.ts';

/** What a command about the running order can be asked with. */
interface MomentAsking {
  readonly momentId: string;
  readonly announcementId: string;
  readonly text: string;
}

type MomentCommand = (doc: Y.Doc, hand: Hand, asking: MomentAsking) => Outcome<object>;

/** Every command about the running order by the name it is exported under. */
export const MOMENT_COMMANDS: Readonly<Record<string, MomentCommand>> = {
  addMoment: (doc, hand, { momentId, text }) => addMoment(doc, hand, momentId, { name: text }),
  addMoments: (doc, hand, { momentId, text }) =>
    addMoments(doc, hand, [{ name: text, expected: '20:15', copyFrom: momentId }]),
  repeatMoment: (doc, hand, { momentId }) => repeatMoment(doc, hand, momentId),
  renameMoment: (doc, hand, { momentId, text }) => renameMoment(doc, hand, momentId, text, '20:15'),
  moveMoment: (doc, hand, { momentId }) => moveMoment(doc, hand, momentId, null),
  skipMoment: (doc, hand, { momentId }) => skipMoment(doc, hand, momentId),
  unskipMoment: (doc, hand, { momentId }) => unskipMoment(doc, hand, momentId),
  removeMoment: (doc, hand, { momentId }) => removeMoment(doc, hand, momentId),
  restoreMoment: (doc, hand, { momentId }) => restoreMoment(doc, hand, momentId),
  announceMoment: (doc, hand, { momentId }) => announceMoment(doc, hand, momentId),
  hearAnnouncement: (doc, hand, { announcementId }) => hearAnnouncement(doc, hand, announcementId),
  undoAnnouncement: (doc, hand, { announcementId }) => undoAnnouncement(doc, hand, announcementId),
  settleAnnouncement: (doc, hand, { momentId }) => settleAnnouncement(doc, hand, momentId),
};
