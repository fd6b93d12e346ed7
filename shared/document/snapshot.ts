import type * as Y from 'yjs';
import {
  asId,
  type CarryId,
  type FeatureId,
  type GearId,
  type MomentId,
  type NightId,
  type PersonId,
  type RevisionId,
  type StandId,
} from '../ids.ts';
import { assembleCarry, type Carry, type Revision, settleReplaced } from './carry.ts';
import { entriesOf, type ReadEntry, type Skipped, valueIf } from './entries.ts';
import {
  type Entry,
  type EntryKind,
  type GearItem,
  type Root,
  SCHEMA_VERSION,
  type Units,
} from './schema.ts';

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
}
export interface Person extends Entry<'person'> {
  readonly id: PersonId;
}

/** The night as plain values: the only thing screens and the core ever read (SPEC DOC3). */
export interface Night {
  readonly schema: number;
  /** A newer app wrote this document: show it, write nothing. */
  readonly fromNewerApp: boolean;
  readonly about: { readonly id: NightId; readonly title: string; readonly date: string } | null;
  readonly units: Units;
  readonly now: Entry<'about/now'> | null;
  readonly room: Entry<'room/shape'> | null;
  readonly ambientEv100: number | null;
  readonly features: readonly Feature[];
  readonly gear: ReadonlyMap<GearId, GearItem>;
  readonly stands: readonly Stand[];
  readonly moments: readonly Moment[];
  readonly moment: Moment | null;
  readonly carries: readonly Carry[];
  readonly people: ReadonlyMap<PersonId, Person>;
  readonly skipped: readonly Skipped[];
}

type Collected = Map<string, Map<string, ReadEntry>>;

/** Groups entries by the id in their key, then by the rest of the key. */
function collect(entries: readonly ReadEntry[]): Collected {
  const byId: Collected = new Map();
  for (const entry of entries) {
    const { id, kind, revisionId = '', stamp = '' } = entry.parts;
    const group = byId.get(id) ?? new Map<string, ReadEntry>();
    byId.set(id, group.set(`${kind}:${revisionId}:${stamp}`, entry));
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

function momentsFrom(groups: Collected): Moment[] {
  const moments: Moment[] = [];
  for (const [id, group] of groups) {
    const called = value(group, 'moment/name');
    const place = value(group, 'moment/place');
    const view = value(group, 'moment/view');
    const exposure = value(group, 'moment/exposure');
    if (called && place && view && exposure)
      moments.push({
        id: id as MomentId,
        name: called.name,
        expected: called.expected,
        place,
        view,
        exposure,
      });
  }
  // Two phones may put a moment at the same place while apart: the id settles it the same way on both.
  return moments.sort((a, b) => (a.place === b.place ? (a.id < b.id ? -1 : 1) : a.place < b.place ? -1 : 1));
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

/**
 * Reads the whole night (all but the log) as plain, checked values.
 * An entry that does not fit its schema is left out and listed in `skipped`; the document keeps it.
 */
export function readNight(doc: Y.Doc): Night {
  const skipped: Skipped[] = [];
  const read = (root: Root) => entriesOf(doc, root, (entry) => skipped.push(entry));
  const about = new Map(read('about').map((entry) => [`${entry.parts.kind}::`, entry]));
  const room = new Map(read('room').map((entry) => [`${entry.parts.kind}::`, entry]));
  const night = value(about, 'about/night');
  const schema = value(about, 'about/schema') ?? SCHEMA_VERSION;
  const now = value(about, 'about/now');
  const moments = momentsFrom(collect(read('moments')));
  const features = all(read('features'), 'feature').map(
    ([id, feature]): Feature => ({ ...feature, id: asId(id) }),
  );
  const people = all(read('people'), 'person').map(([id, person]): Person => ({ ...person, id: asId(id) }));
  return {
    schema,
    fromNewerApp: schema > SCHEMA_VERSION,
    about: night ? { id: night.id as NightId, title: night.title, date: night.date } : null,
    units: value(about, 'about/units') ?? 'metric',
    now,
    room: value(room, 'room/shape'),
    ambientEv100: value(room, 'room/ambient')?.ev100 ?? null,
    features,
    gear: new Map(all(read('gear'), 'gear').map(([id, item]) => [asId<GearId>(id), item])),
    stands: standsFrom(collect(read('stands'))),
    moments,
    moment: moments.find((moment) => moment.id === now?.momentId) ?? moments[0] ?? null,
    carries: carriesFrom(collect(read('carries'))),
    people: new Map(people.map((person) => [person.id, person])),
    skipped,
  };
}
