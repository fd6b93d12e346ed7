import type * as Y from 'yjs';
import type { GearId, NightId, PersonId } from '../ids.ts';
import { type Announcement, latestStart } from './announcement.ts';
import type { Carry } from './carry.ts';
import type { Skipped } from './entries.ts';
import { nextMoment } from './moment-order.ts';
import {
  type AmbientReading,
  type Feature,
  type Moment,
  type Person,
  parts,
  type Stand,
  type TestFrame,
} from './parts.ts';
import { type Entry, type GearItem, SCHEMA_VERSION, type Units } from './schema.ts';

/** The night as plain values: the only thing screens and the core ever read (SPEC DOC3). */
export interface Night {
  readonly schema: number;
  /** A newer app wrote this document: show it, write nothing. */
  readonly fromNewerApp: boolean;
  readonly about: { readonly id: NightId; readonly title: string; readonly date: string } | null;
  readonly units: Units;
  /** What was begun last, by an announcement or without one, and by whom. */
  readonly now: Entry<'about/now'> | null;
  readonly room: Entry<'room/shape'> | null;
  readonly roof: Entry<'room/roof'>;
  readonly finishes: Entry<'room/finishes'>;
  readonly ambientEv100: number | null;
  /** Ambient readings at spots, the earliest first. */
  readonly ambientSpots: readonly AmbientReading[];
  /** What is on the camera; null when nobody has said. */
  readonly cameraKit: Entry<'about/camera'> | null;
  readonly features: readonly Feature[];
  readonly gear: ReadonlyMap<GearId, GearItem>;
  readonly stands: readonly Stand[];
  /** The running order, skipped moments among them. */
  readonly moments: readonly Moment[];
  /** What was taken out of the running order and can be put back. */
  readonly removedMoments: readonly Moment[];
  /** The moment that is on. It is not among `moments` if the other phone took it out before it heard of its beginning. */
  readonly moment: Moment | null;
  /** The first after it that is not skipped. */
  readonly next: Moment | null;
  /** The earliest first; one that was taken back is not among them. */
  readonly announcements: readonly Announcement[];
  readonly carries: readonly Carry[];
  /** The test frames that count, the earliest first; a removed one stays in the document. */
  readonly frames: readonly TestFrame[];
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
  const [stands, moments, carries, people, frames] = [
    parts.stands(doc),
    parts.moments(doc),
    parts.carries(doc),
    parts.people(doc),
    parts.frames(doc),
  ];
  const { night, units, camera } = about.value;
  const { removed, announcements } = moments.value;
  const now = latestStart(about.value.now, announcements);
  const begun = [...moments.value.moments, ...removed].find(({ id }) => id === now?.momentId);
  const moment = begun ?? moments.value.moments[0] ?? null;
  const { shape, ambient, roof, finishes, readings } = room.value;
  const schema = about.value.schema ?? SCHEMA_VERSION;
  return {
    schema,
    fromNewerApp: schema > SCHEMA_VERSION,
    about: night ? { id: night.id as NightId, title: night.title, date: night.date } : null,
    units: units ?? 'metric',
    now,
    room: shape,
    roof,
    finishes,
    ambientEv100: ambient?.ev100 ?? null,
    ambientSpots: readings,
    cameraKit: camera,
    features: features.value,
    gear: gear.value,
    stands: stands.value,
    moments: moments.value.moments,
    removedMoments: removed,
    moment,
    next: nextMoment(moments.value.moments, moment),
    announcements,
    carries: carries.value,
    frames: frames.value,
    people: people.value,
    skipped: [about, room, features, gear, stands, moments, carries, people, frames].flatMap(
      (part) => part.skipped,
    ),
  };
}
