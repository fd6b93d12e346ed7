import { randomBytes } from 'node:crypto';
import * as Y from 'yjs';
import { createNight, type NightSeed } from '../../shared/document/create-night.ts';
import { declareRoots } from '../../shared/document/roots.ts';
import { asId, makeId, type NightId } from '../../shared/ids.ts';
import type { Log } from '../logging.ts';
import type { NightRecord, Store } from '../store/store.ts';
import { NightDocument } from '../sync/night-document.ts';
import { Room } from '../sync/room.ts';
import type { Time } from '../time.ts';

/** A night with more updates than this is put together into one when the server starts. */
export const COMPACT_ABOVE = 2000;

interface Deps {
  readonly store: Store;
  readonly time: Time;
  readonly log: Log;
}

/** Every night of this server, loaded before anybody can ask for one. */
export class NightList {
  readonly #deps: Deps;
  readonly #rooms = new Map<NightId, Room>();

  private constructor(deps: Deps) {
    this.#deps = deps;
  }

  static async load(deps: Deps): Promise<NightList> {
    const list = new NightList(deps);
    for (const record of await deps.store.listNights()) await list.#open(record);
    return list;
  }

  /** The nights, the newest first. */
  records(): NightRecord[] {
    return [...this.#rooms.values()]
      .map((room) => room.record)
      .sort((a, b) => b.madeAt - a.madeAt || (a.id < b.id ? 1 : -1));
  }

  room(id: NightId): Room | null {
    return this.#rooms.get(id) ?? null;
  }

  rooms(): Room[] {
    return [...this.#rooms.values()];
  }

  /** Makes a night from its beginning and stores it. */
  async make(seed: NightSeed): Promise<NightRecord> {
    const { store, time, log } = this.#deps;
    const id = asId<NightId>(makeId(randomBytes));
    const doc = new Y.Doc();
    declareRoots(doc);
    const hand = { person: 'server', now: time.now, newId: () => makeId(randomBytes) };
    createNight(doc, hand, id, seed);
    const record = { id, title: seed.title, madeAt: time.now() };
    await store.createNight(record, Y.encodeStateAsUpdate(doc));
    doc.destroy();
    log.info({ night: id }, 'night made');
    await this.#open(record);
    return record;
  }

  async close(): Promise<void> {
    await Promise.all(this.rooms().map((room) => room.close()));
  }

  async #open(record: NightRecord): Promise<void> {
    const { store, log } = this.#deps;
    const { updates, damaged } = await store.loadNight(record.id);
    const { night, unreadable } = NightDocument.load(updates);
    const whole = damaged === 0 && unreadable === 0 && !night.incomplete;
    if (updates.length > COMPACT_ABOVE && whole)
      await store.compact(record.id, Y.encodeStateAsUpdate(night.onDisk));
    const facts = { night: record.id, updates: updates.length, damaged, unreadable };
    if (whole) log.info(facts, 'night loaded');
    else log.warn({ ...facts, incomplete: night.incomplete }, 'night loaded with updates missing');
    this.#rooms.set(record.id, new Room(record, night, this.#deps));
  }
}
