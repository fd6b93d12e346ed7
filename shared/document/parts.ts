import type * as Y from 'yjs';
import {
  type AnnouncementId,
  asId,
  type CarryId,
  type FeatureId,
  type FrameId,
  type GearId,
  type MomentId,
  type PersonId,
  type ReadingId,
  type RevisionId,
  type StandId,
} from '../ids.ts';
import { type Announcement, announcedFirst } from './announcement.ts';
import { assembleCarry, type Carry, type Revision, settleReplaced } from './carry.ts';
import { DEFAULT_CAMERA_LIGHT, DEFAULT_FINISHES, DEFAULT_ROOF, DEFAULT_WISH } from './defaults.ts';
import { entriesOf, type ReadEntry, type Skipped, valueIf } from './entries.ts';
import { momentOrder } from './moment-order.ts';
import { rootOf } from './roots.ts';
import type { Entry, EntryKind, GearItem, Root } from './schema.ts';

export interface Feature extends Entry<'feature'> {
  readonly id: FeatureId;
}
export interface Stand {
  readonly id: StandId;
  readonly kit: Entry<'stand/kit'>;
  readonly place: Entry<'stand/at'>;
}
export interface Moment {
  readonly id: MomentId;
  readonly name: string;
  readonly expected: string | null;
  readonly place: string;
  readonly view: Entry<'moment/view'>;
  readonly exposure: Entry<'moment/exposure'>;
  readonly wish: Entry<'moment/wish'>;
  readonly cameraLight: Entry<'moment/camera-light'>;
  /** It will not take place tonight; it stays in the list, struck out. */
  readonly skipped: boolean;
}
/** The running order, and what was announced of it. */
export interface RunningOrder {
  readonly moments: readonly Moment[];
  /** Those that were taken out of the list, in its order. */
  readonly removed: readonly Moment[];
  /** The earliest first; one that was taken back is not among them. */
  readonly announcements: readonly Announcement[];
}
/** An ambient reading at a spot in the room. */
export interface AmbientReading {
  readonly id: ReadingId;
  readonly spot: Entry<'room/ambient-spot'>['spot'];
  readonly ev100: number;
  readonly at: number;
  readonly by: string;
}
export interface TestFrame extends Entry<'frame/of'> {
  readonly id: FrameId;
}
export interface Person extends Entry<'person'> {
  readonly id: PersonId;
}

type Collected = Map<string, Map<string, ReadEntry>>;

/** Groups entries by the id in their key, then by the rest of the key. */
function collect(entries: readonly ReadEntry[]): Collected {
  const byId: Collected = new Map();
  for (const entry of entries) {
    const { id, kind } = entry.parts;
    const whose = entry.parts.revisionId ?? entry.parts.announcementId ?? '';
    const which = entry.parts.stamp ?? entry.parts.personId ?? '';
    const group = byId.get(id) ?? new Map<string, ReadEntry>();
    byId.set(id, group.set(`${kind}:${whose}:${which}`, entry));
  }
  return byId;
}

function value<Kind extends EntryKind>(group: Map<string, ReadEntry>, kind: Kind): Entry<Kind> | null {
  return valueIf(group.get(`${kind}::`), kind);
}

/** The values of one kind among entries, each with its id. */
const all = <Kind extends EntryKind>(entries: readonly ReadEntry[], kind: Kind): [string, Entry<Kind>][] =>
  entries.flatMap((entry): [string, Entry<Kind>][] => {
    const found = valueIf(entry, kind);
    return found === null ? [] : [[entry.parts.id, found]];
  });

function standsFrom(groups: Collected): Stand[] {
  const stands: Stand[] = [];
  for (const [id, group] of groups) {
    const kit = value(group, 'stand/kit');
    const place = value(group, 'stand/at');
    if (kit && place) stands.push({ id: id as StandId, kit, place });
  }
  return stands.sort((a, b) => a.kit.job.localeCompare(b.kit.job) * -1 || (a.id < b.id ? -1 : 1));
}

const stands = (mark: { readonly undoneAt: number | null } | null): boolean =>
  mark !== null && mark.undoneAt === null;

function momentFrom(id: MomentId, group: Map<string, ReadEntry>): Moment | null {
  const called = value(group, 'moment/name');
  const place = value(group, 'moment/place');
  const view = value(group, 'moment/view');
  const exposure = value(group, 'moment/exposure');
  if (!called || !place || !view || !exposure) return null;
  return {
    id,
    name: called.name,
    expected: called.expected,
    place,
    view,
    exposure,
    wish: value(group, 'moment/wish') ?? DEFAULT_WISH,
    cameraLight: value(group, 'moment/camera-light') ?? DEFAULT_CAMERA_LIGHT,
    skipped: stands(value(group, 'moment/skipped')),
  };
}

function announcementsFrom(momentId: MomentId, group: Map<string, ReadEntry>): Announcement[] {
  const announcements: Announcement[] = [];
  for (const entry of group.values()) {
    const announced = valueIf(entry, 'moment/announced');
    const { announcementId } = entry.parts;
    if (!announced || !stands(announced)) continue;
    const heard = [...group.values()].flatMap((other) => {
      const hearing = valueIf(other, 'moment/heard');
      const { personId } = other.parts;
      if (!hearing || !personId || other.parts.announcementId !== announcementId) return [];
      return [{ personId: asId<PersonId>(personId), at: hearing.at }];
    });
    const { at, by, before, wasSkipped } = announced;
    const id = announcementId as AnnouncementId;
    announcements.push({ id, momentId, at, by, before, wasSkipped, heard });
  }
  return announcements;
}

function runningOrderFrom(groups: Collected): RunningOrder {
  const moments: Moment[] = [];
  const removed: Moment[] = [];
  const announcements: Announcement[] = [];
  for (const [id, group] of groups) {
    const moment = momentFrom(asId(id), group);
    if (!moment) continue;
    (stands(value(group, 'moment/removed')) ? removed : moments).push(moment);
    announcements.push(...announcementsFrom(moment.id, group));
  }
  return {
    moments: moments.sort(momentOrder),
    removed: removed.sort(momentOrder),
    announcements: announcements.sort(announcedFirst),
  };
}

function revisionsFrom(group: Map<string, ReadEntry>): Revision[] {
  const revisions: Revision[] = [];
  for (const entry of group.values()) {
    const revision = valueIf(entry, 'carry/revision');
    if (!revision) continue;
    const stamps: Revision['stamps'] = {};
    for (const other of group.values()) {
      const { revisionId, stamp } = other.parts;
      const value = valueIf(other, 'carry/stamp');
      if (!stamp || !value || revisionId !== entry.parts.revisionId) continue;
      if (value.undoneAt === null) Object.assign(stamps, { [stamp]: value });
    }
    revisions.push({ ...revision, id: entry.parts.revisionId as RevisionId, stamps });
  }
  return revisions;
}

function carriesFrom(groups: Collected): Carry[] {
  const carries: Carry[] = [];
  for (const [id, group] of groups) {
    const of = value(group, 'carry/of');
    if (!of) continue;
    const carry = assembleCarry({
      id: id as CarryId,
      of,
      revisions: revisionsFrom(group),
      withdrawn: value(group, 'carry/withdrawn'),
      withdrawnSeen: value(group, 'carry/withdrawn-seen'),
    });
    if (carry) carries.push(carry);
  }
  return settleReplaced(carries).sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
}

/** Later entries after earlier ones; two of one millisecond in an order that every phone finds. */
const byTime = <Item extends { readonly at: number; readonly id: string }>(items: Item[]): Item[] =>
  items.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));

function readingsFrom(entries: readonly ReadEntry[]): AmbientReading[] {
  const readings = all(entries, 'room/ambient-spot').flatMap(([id, { removedAt, ...reading }]) =>
    removedAt === null ? [{ ...reading, id: asId<ReadingId>(id) }] : [],
  );
  return byTime(readings);
}

function framesFrom(groups: Collected): TestFrame[] {
  const frames: TestFrame[] = [];
  for (const [id, group] of groups) {
    const of = value(group, 'frame/of');
    const removed = value(group, 'frame/removed');
    if (of && (removed === null || removed.undoneAt !== null)) frames.push({ ...of, id: asId(id) });
  }
  return byTime(frames);
}

/** What a root reads as, and what of it could not be read. */
interface Part<Value> {
  readonly value: Value;
  readonly skipped: readonly Skipped[];
}

/** Parts are kept per document until a transaction changes their root; screens may compare them by identity. */
const kept = new WeakMap<Y.Doc, Map<Root, Part<unknown>>>();

function keptOf(doc: Y.Doc): Map<Root, Part<unknown>> {
  const known = kept.get(doc);
  if (known) return known;
  const fresh = new Map<Root, Part<unknown>>();
  kept.set(doc, fresh);
  // Before any observer is called: whoever is told of a change must not read what was before it.
  doc.on('beforeObserverCalls', ({ changed }: Y.Transaction) => {
    for (const root of fresh.keys()) if (changed.has(rootOf(doc, root) as never)) fresh.delete(root);
  });
  return fresh;
}

/** A reader of one root that does its work once for each change of it. */
function reader<Value>(root: Root, build: (entries: readonly ReadEntry[]) => Value) {
  return (doc: Y.Doc): Part<Value> => {
    const known = keptOf(doc);
    // Inside a transaction its own changes have not been told of yet: nothing kept may be used, nor kept.
    const inside = doc._transaction !== null;
    const before = inside ? undefined : known.get(root);
    if (before) return before as Part<Value>;
    const skipped: Skipped[] = [];
    const value = build(entriesOf(doc, root, (entry) => skipped.push(entry)));
    const part = { value, skipped };
    if (!inside) known.set(root, part);
    return part;
  };
}

const single = (entries: readonly ReadEntry[]) =>
  new Map(entries.map((entry) => [`${entry.parts.kind}::`, entry]));

/** The roots of a night, each read into what screens use. */
export const parts = {
  about: reader('about', (entries) => {
    const group = single(entries);
    return {
      schema: value(group, 'about/schema'),
      night: value(group, 'about/night'),
      units: value(group, 'about/units'),
      now: value(group, 'about/now'),
      camera: value(group, 'about/camera'),
    };
  }),
  room: reader('room', (entries) => {
    const group = single(entries);
    return {
      shape: value(group, 'room/shape'),
      ambient: value(group, 'room/ambient'),
      roof: value(group, 'room/roof') ?? DEFAULT_ROOF,
      finishes: value(group, 'room/finishes') ?? DEFAULT_FINISHES,
      readings: readingsFrom(entries),
    };
  }),
  features: reader('features', (entries) =>
    all(entries, 'feature').map(([id, feature]): Feature => ({ ...feature, id: asId(id) })),
  ),
  gear: reader(
    'gear',
    (entries): ReadonlyMap<GearId, GearItem> =>
      new Map(all(entries, 'gear').map(([id, item]) => [asId<GearId>(id), item])),
  ),
  stands: reader('stands', (entries) => standsFrom(collect(entries))),
  moments: reader('moments', (entries) => runningOrderFrom(collect(entries))),
  carries: reader('carries', (entries) => carriesFrom(collect(entries))),
  frames: reader('frames', (entries) => framesFrom(collect(entries))),
  people: reader(
    'people',
    (entries): ReadonlyMap<PersonId, Person> =>
      new Map(
        all(entries, 'person').map(([id, person]) => [asId<PersonId>(id), { ...person, id: asId(id) }]),
      ),
  ),
} as const;
