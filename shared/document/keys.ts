import { ID_PATTERN } from '../ids.ts';
import { type EntryKind, type Root, STAMPS, type StampKind } from './schema.ts';

/** A flat key taken apart: which kind of entry it holds, and the ids in it. */
export interface KeyParts {
  readonly kind: EntryKind;
  readonly id: string;
  readonly revisionId?: string;
  readonly stamp?: StampKind;
  readonly announcementId?: string;
  readonly personId?: string;
}

export const key = {
  standKit: (id: string) => `${id}/kit`,
  standAt: (id: string) => `${id}/at`,
  momentName: (id: string) => `${id}/name`,
  momentPlace: (id: string) => `${id}/place`,
  momentView: (id: string) => `${id}/view`,
  momentExposure: (id: string) => `${id}/exposure`,
  momentWish: (id: string) => `${id}/wish`,
  momentCameraLight: (id: string) => `${id}/camera-light`,
  momentSkipped: (id: string) => `${id}/skipped`,
  momentRemoved: (id: string) => `${id}/removed`,
  momentAnnounced: (id: string, announcementId: string) => `${id}/announced/${announcementId}`,
  momentHeard: (id: string, announcementId: string, personId: string) =>
    `${id}/heard/${announcementId}/${personId}`,
  ambientSpot: (id: string) => `ambient/${id}`,
  frameOf: (id: string) => `${id}/of`,
  frameRemoved: (id: string) => `${id}/removed`,
  carryOf: (id: string) => `${id}/of`,
  carryRevision: (id: string, revisionId: string) => `${id}/rev/${revisionId}`,
  carryStamp: (id: string, revisionId: string, stamp: StampKind) => `${id}/stamp/${revisionId}/${stamp}`,
  carryWithdrawn: (id: string) => `${id}/withdrawn`,
  carryWithdrawnSeen: (id: string) => `${id}/withdrawn-seen`,
} as const;

const isId = (text: string | undefined): text is string => text !== undefined && ID_PATTERN.test(text);
const stampNamed = (text: string | undefined) => STAMPS.find((stamp) => stamp === text);

function carryKey(parts: readonly string[]): KeyParts | null {
  const [id, part, revisionId, stampText] = parts;
  if (!isId(id)) return null;
  if (parts.length === 2) {
    if (part === 'of') return { kind: 'carry/of', id };
    if (part === 'withdrawn') return { kind: 'carry/withdrawn', id };
    if (part === 'withdrawn-seen') return { kind: 'carry/withdrawn-seen', id };
    return null;
  }
  if (!isId(revisionId)) return null;
  if (parts.length === 3 && part === 'rev') return { kind: 'carry/revision', id, revisionId };
  const stamp = stampNamed(stampText);
  if (parts.length === 4 && part === 'stamp' && stamp) return { kind: 'carry/stamp', id, revisionId, stamp };
  return null;
}

/** Announcements of a moment, and who heard them; all else of a moment has a key of two parts. */
function announcementKey([id, part, announcementId, personId, ...rest]: readonly string[]): KeyParts | null {
  if (!isId(id) || !isId(announcementId) || rest.length > 0) return null;
  if (part === 'announced' && personId === undefined) return { kind: 'moment/announced', id, announcementId };
  if (part === 'heard' && isId(personId)) return { kind: 'moment/heard', id, announcementId, personId };
  return null;
}

const PARTS: Partial<Record<Root, readonly EntryKind[]>> = {
  stands: ['stand/kit', 'stand/at'],
  moments: [
    'moment/name',
    'moment/place',
    'moment/view',
    'moment/exposure',
    'moment/wish',
    'moment/camera-light',
    'moment/skipped',
    'moment/removed',
  ],
  frames: ['frame/of', 'frame/removed'],
};
const WHOLE: Partial<Record<Root, EntryKind>> = {
  features: 'feature',
  gear: 'gear',
  people: 'person',
  log: 'log',
};
const ABOUT = ['about/schema', 'about/night', 'about/units', 'about/now', 'about/camera'] as const;
const ROOM = ['room/shape', 'room/ambient', 'room/roof', 'room/finishes'] as const;

/** Many ambient readings lie beside the single entries of the room. */
function ambientSpotKey(text: string): KeyParts | null {
  const [head, id, ...rest] = text.split('/');
  return head === 'ambient' && isId(id) && rest.length === 0 ? { kind: 'room/ambient-spot', id } : null;
}

/** Which kind of entry a key of a root holds; null where this version of the app knows none such. */
export function readKey(root: Root, text: string): KeyParts | null {
  const fixed = [...(root === 'about' ? ABOUT : []), ...(root === 'room' ? ROOM : [])];
  if (fixed.length > 0) {
    const kind = fixed.find((known) => known === `${root}/${text}`);
    if (kind) return { kind, id: text };
    return root === 'room' ? ambientSpotKey(text) : null;
  }
  const parts = text.split('/');
  if (root === 'carries') return carryKey(parts);
  if (root === 'moments' && parts.length > 2) return announcementKey(parts);
  const [id, part] = parts;
  if (!isId(id)) return null;
  const whole = WHOLE[root];
  if (whole) return parts.length === 1 ? { kind: whole, id } : null;
  if (parts.length !== 2) return null;
  const kind = PARTS[root]?.find((known) => known.endsWith(`/${part}`));
  return kind ? { kind, id } : null;
}
