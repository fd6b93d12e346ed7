import type * as Y from 'yjs';
import type { GearId, NightId, PersonId } from '../ids.ts';
import type { Carry } from './carry.ts';
import type { Skipped } from './entries.ts';
import { type Feature, type Moment, type Person, parts, type Stand } from './parts.ts';
import { type Entry, type GearItem, SCHEMA_VERSION, type Units } from './schema.ts';

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

/**
 * Reads the whole night (all but the log) as plain, checked values. What a change did not touch is the same object
 * as before it. An entry that does not fit its schema is left out and listed in `skipped`; the document keeps it.
 */
export function readNight(doc: Y.Doc): Night {
  const [about, room, features, gear] = [
    parts.about(doc),
    parts.room(doc),
    parts.features(doc),
    parts.gear(doc),
  ];
  const [stands, moments, carries, people] = [
    parts.stands(doc),
    parts.moments(doc),
    parts.carries(doc),
    parts.people(doc),
  ];
  const { night, now, units } = about.value;
  const schema = about.value.schema ?? SCHEMA_VERSION;
  return {
    schema,
    fromNewerApp: schema > SCHEMA_VERSION,
    about: night ? { id: night.id as NightId, title: night.title, date: night.date } : null,
    units: units ?? 'metric',
    now,
    room: room.value.shape,
    ambientEv100: room.value.ambient?.ev100 ?? null,
    features: features.value,
    gear: gear.value,
    stands: stands.value,
    moments: moments.value,
    moment: moments.value.find((moment) => moment.id === now?.momentId) ?? moments.value[0] ?? null,
    carries: carries.value,
    people: people.value,
    skipped: [about, room, features, gear, stands, moments, carries, people].flatMap((part) => part.skipped),
  };
}
