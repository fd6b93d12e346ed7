import type { VenueId } from '../../shared/ids.ts';
import { parseVenue, type VenueFile } from '../../shared/venue/venue-file.ts';
import type { Store, VenueRecord } from '../store/store.ts';

/** So many venues the library keeps, removed ones included: at a megabyte each, no disk is filled by it. */
export const MOST_VENUES = 200;

/** The rooms that have been saved on this server, for every night of it. */
export class VenueLibrary {
  readonly #store: Store;
  readonly #records: Map<VenueId, VenueRecord>;
  /** Changes go one after the other: a rename and a removal at once must not undo each other. */
  #last: Promise<unknown> = Promise.resolve();

  private constructor(store: Store, records: readonly VenueRecord[]) {
    this.#store = store;
    this.#records = new Map(records.map((record) => [record.id, record]));
  }

  static async load(store: Store): Promise<VenueLibrary> {
    return new VenueLibrary(store, await store.listVenues());
  }

  /** By name, and of one name the latest saved first; removed ones are among them, with when. */
  list(): readonly VenueRecord[] {
    return [...this.#records.values()].sort(
      (a, b) => a.name.localeCompare(b.name, 'en') || b.savedAt - a.savedAt || (a.id < b.id ? -1 : 1),
    );
  }

  /** A venue under its present name; null where there is none, it was removed, or its bytes cannot be read. */
  async read(id: VenueId): Promise<VenueFile | null> {
    const record = this.#records.get(id);
    if (!record || record.removedAt !== null) return null;
    const read = parseVenue(await this.#store.loadVenue(id));
    return read.ok ? { ...read.venue, name: record.name } : null;
  }

  /** Saves a venue, anew or in the place of the one of this id; null where the library is full. */
  save(id: VenueId, venue: VenueFile): Promise<VenueRecord | null> {
    return this.#inTurn(async () => {
      if (!this.#records.has(id) && this.#records.size >= MOST_VENUES) return null;
      const { name, savedAt, features } = venue;
      const record = { id, name, savedAt, featureCount: Object.keys(features).length, removedAt: null };
      await this.#store.putVenue(record, JSON.stringify(venue));
      this.#records.set(id, record);
      return record;
    });
  }

  /** Another name for a venue; null where there is none, or it was removed. */
  rename(id: VenueId, name: string): Promise<VenueRecord | null> {
    return this.#change(id, (record) => (record.removedAt === null ? { ...record, name } : null));
  }

  /** A venue leaves the library and stays on the disk; null where there is none. Removing it again changes nothing. */
  remove(id: VenueId, now: number): Promise<VenueRecord | null> {
    return this.#change(id, (record) => ({ ...record, removedAt: record.removedAt ?? now }));
  }

  /** Undo of `remove`; null where there is none. */
  restore(id: VenueId): Promise<VenueRecord | null> {
    return this.#change(id, (record) => ({ ...record, removedAt: null }));
  }

  #change(id: VenueId, next: (record: VenueRecord) => VenueRecord | null): Promise<VenueRecord | null> {
    return this.#inTurn(async () => {
      const known = this.#records.get(id);
      const record = known ? next(known) : null;
      if (!record) return null;
      await this.#store.putVenue(record);
      this.#records.set(id, record);
      return record;
    });
  }

  #inTurn<Result>(act: () => Promise<Result>): Promise<Result> {
    const turn = this.#last.then(act, act);
    this.#last = turn;
    return turn;
  }
}
