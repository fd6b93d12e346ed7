import type * as Y from 'yjs';
import type { NightId } from '../ids.ts';
import { key } from './keys.ts';
import { rootOf } from './roots.ts';
import { type Entry, SCHEMA_VERSION, type Units } from './schema.ts';
import { commit, type Hand, SEED } from './transact.ts';

export interface StandSeed {
  readonly kit: Entry<'stand/kit'>;
  readonly mark: Entry<'stand/at'>['mark'];
}
export interface MomentSeed {
  readonly name: Entry<'moment/name'>;
  readonly place: Entry<'moment/place'>;
  readonly view: Entry<'moment/view'>;
  readonly exposure: Entry<'moment/exposure'>;
  readonly wish?: Entry<'moment/wish'>;
  readonly cameraLight?: Entry<'moment/camera-light'>;
}

/** Everything a night begins with; the keys of the records are the ids. */
export interface NightSeed {
  readonly title: string;
  readonly date: string;
  readonly units: Units;
  readonly room: Entry<'room/shape'>;
  readonly roof?: Entry<'room/roof'>;
  readonly finishes?: Entry<'room/finishes'>;
  readonly ambientEv100: number;
  /** Ambient readings at spots; the keys are their ids. */
  readonly ambientSpots?: Readonly<Record<string, Pick<Entry<'room/ambient-spot'>, 'spot' | 'ev100'>>>;
  readonly cameraKit?: Entry<'about/camera'>;
  readonly features: Readonly<Record<string, Entry<'feature'>>>;
  readonly gear: Readonly<Record<string, Entry<'gear'>>>;
  readonly stands: Readonly<Record<string, StandSeed>>;
  readonly moments: Readonly<Record<string, MomentSeed>>;
  /** The moment the night opens on. */
  readonly opens: string;
}

/**
 * Fills an empty document. Only the server calls it, before it listens: two sides that each wrote a beginning
 * would merge into a night with everything twice (SPEC DOC5).
 *
 * @throws Error if the document already holds a night
 */
export function createNight(doc: Y.Doc, hand: Hand, id: NightId, seed: NightSeed): void {
  if (rootOf(doc, 'about').size > 0) throw new Error(`document already holds a night: ${id}`);
  commit(doc, SEED, hand, ({ write, log }) => {
    write('about', 'schema', SCHEMA_VERSION);
    write('about', 'night', { id, title: seed.title, date: seed.date });
    write('about', 'units', seed.units);
    write('about', 'now', { momentId: seed.opens, at: hand.now(), by: hand.person });
    write('room', 'shape', seed.room);
    write('room', 'ambient', { ev100: seed.ambientEv100 });
    for (const [readingId, reading] of Object.entries(seed.ambientSpots ?? {})) {
      const measured = { ...reading, at: hand.now(), by: hand.person, removedAt: null };
      write('room', key.ambientSpot(readingId), measured);
    }
    if (seed.roof) write('room', 'roof', seed.roof);
    if (seed.finishes) write('room', 'finishes', seed.finishes);
    if (seed.cameraKit) write('about', 'camera', seed.cameraKit);
    for (const [featureId, feature] of Object.entries(seed.features)) write('features', featureId, feature);
    for (const [gearId, item] of Object.entries(seed.gear)) write('gear', gearId, item);
    for (const [standId, stand] of Object.entries(seed.stands)) {
      write('stands', key.standKit(standId), stand.kit);
      write('stands', key.standAt(standId), {
        mark: stand.mark,
        at: hand.now(),
        by: hand.person,
        carry: null,
      });
    }
    for (const [momentId, moment] of Object.entries(seed.moments)) {
      write('moments', key.momentName(momentId), moment.name);
      write('moments', key.momentPlace(momentId), moment.place);
      write('moments', key.momentView(momentId), moment.view);
      write('moments', key.momentExposure(momentId), moment.exposure);
      if (moment.wish) write('moments', key.momentWish(momentId), moment.wish);
      if (moment.cameraLight) write('moments', key.momentCameraLight(momentId), moment.cameraLight);
    }
    log('night made', id);
  });
}
