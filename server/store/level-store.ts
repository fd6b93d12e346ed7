import { join } from 'node:path';
import { ClassicLevel } from 'classic-level';
import type { NightId, VenueId } from '../../shared/ids.ts';
import { StartFailure } from '../start-failure.ts';
import { sealed, unsealed } from './checksum.ts';
import { prepareDataDirectory } from './data-directory.ts';
import { GroupCommit } from './group-commit.ts';
import type { Device, NightRecord, Store, StoredUpdates, VenueRecord } from './store.ts';

type Level = ClassicLevel<string, Uint8Array>;
type Operation = { type: 'put'; key: string; value: Uint8Array } | { type: 'del'; key: string };

/*
 * Keys sort by their text:   d/<token hash>          a paired phone (JSON)
 *                            n/<night>               a night's record (JSON)
 *                            u/<night>/<number>      an update, sealed with its checksum
 *                            v/<venue>               a venue's record (JSON)
 *                            w/<venue>               its text
 * Ids hold no slash (ID_PATTERN), so "u/<night>0" ends a night's range: "0" follows "/".
 */
const nightKey = (id: NightId) => `n/${id}`;
const deviceKey = (tokenHash: string) => `d/${tokenHash}`;
const venueKey = (id: VenueId) => `v/${id}`;
const venueTextKey = (id: VenueId) => `w/${id}`;
const updateKey = (id: NightId, number: number) => `u/${id}/${number.toString(16).padStart(12, '0')}`;
const updatesOf = (id: NightId) => ({ gte: `u/${id}/`, lt: `u/${id}0` });

const toJson = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));
/** Our own writing, behind the library's checksums: the shape is taken at its word. */
const fromJson = <Value>(bytes: Uint8Array): Value => JSON.parse(new TextDecoder().decode(bytes));

function causeCode(error: unknown): string {
  const cause = error instanceof Error ? error.cause : null;
  return cause instanceof Error && 'code' in cause ? String(cause.code) : '';
}

async function open(path: string): Promise<Level> {
  const level: Level = new ClassicLevel(path, { keyEncoding: 'utf8', valueEncoding: 'view' });
  try {
    await level.open();
    return level;
  } catch (error) {
    if (causeCode(error) === 'LEVEL_LOCKED')
      throw new StartFailure(
        `Another Hushmark server is using ${path}. Stop it first, or choose another folder: npm start -- --data FOLDER`,
      );
    const cause = error instanceof Error && error.cause instanceof Error ? error.cause.message : error;
    throw new StartFailure(`The nights stored in ${path} cannot be opened: ${cause}`);
  }
}

class LevelStore implements Store {
  readonly where: string;
  #level: Level;
  #broken = false;
  readonly #commit: GroupCommit<Operation>;
  readonly #nextNumber = new Map<NightId, number>();

  constructor(level: Level, where: string) {
    this.#level = level;
    this.where = where;
    this.#commit = new GroupCommit((operations) => this.#write(operations));
  }

  async listNights(): Promise<readonly NightRecord[]> {
    const records = await this.#level.values({ gte: 'n/', lt: 'n0' }).all();
    return records.map((bytes) => fromJson<NightRecord>(bytes));
  }

  async createNight(night: NightRecord, firstUpdate: Uint8Array): Promise<void> {
    if (await this.#level.has(nightKey(night.id))) throw new Error(`there is a night ${night.id} already`);
    this.#nextNumber.set(night.id, 1);
    await this.#commit.add([
      { type: 'put', key: nightKey(night.id), value: toJson(night) },
      { type: 'put', key: updateKey(night.id, 0), value: sealed(firstUpdate) },
    ]);
  }

  async loadNight(id: NightId): Promise<StoredUpdates> {
    const updates: Uint8Array[] = [];
    let damaged = 0;
    let last: string | null = null;
    for await (const [key, bytes] of this.#level.iterator(updatesOf(id))) {
      const update = unsealed(bytes);
      if (update) updates.push(update);
      else damaged += 1;
      last = key;
    }
    if (last !== null)
      this.#nextNumber.set(id, Number.parseInt(last.slice(last.lastIndexOf('/') + 1), 16) + 1);
    return { updates, damaged };
  }

  append(id: NightId, update: Uint8Array): Promise<void> {
    const number = this.#nextNumber.get(id);
    if (number === undefined) return Promise.reject(new Error(`night ${id} was not loaded`));
    this.#nextNumber.set(id, number + 1);
    return this.#commit.add([{ type: 'put', key: updateKey(id, number), value: sealed(update) }]);
  }

  async compact(id: NightId, merged: Uint8Array): Promise<void> {
    const number = this.#nextNumber.get(id);
    if (number === undefined) throw new Error(`night ${id} was not loaded`);
    const old = await this.#level.keys(updatesOf(id)).all();
    this.#nextNumber.set(id, number + 1);
    await this.#commit.add([
      { type: 'put', key: updateKey(id, number), value: sealed(merged) },
      ...old.map((key): Operation => ({ type: 'del', key })),
    ]);
  }

  async listDevices(): Promise<ReadonlyMap<string, Device>> {
    const entries = await this.#level.iterator({ gte: 'd/', lt: 'd0' }).all();
    return new Map(entries.map(([key, bytes]) => [key.slice(2), fromJson<Device>(bytes)]));
  }

  putDevice(tokenHash: string, device: Device): Promise<void> {
    return this.#commit.add([{ type: 'put', key: deviceKey(tokenHash), value: toJson(device) }]);
  }

  deleteDevice(tokenHash: string): Promise<void> {
    return this.#commit.add([{ type: 'del', key: deviceKey(tokenHash) }]);
  }

  async listVenues(): Promise<readonly VenueRecord[]> {
    const records = await this.#level.values({ gte: 'v/', lt: 'v0' }).all();
    return records.map((bytes) => fromJson<VenueRecord>(bytes));
  }

  async loadVenue(id: VenueId): Promise<string | null> {
    const bytes = await this.#level.get(venueTextKey(id));
    return bytes === undefined ? null : new TextDecoder().decode(bytes);
  }

  putVenue(venue: VenueRecord, text?: string): Promise<void> {
    const operations: Operation[] = [{ type: 'put', key: venueKey(venue.id), value: toJson(venue) }];
    if (text !== undefined)
      operations.push({ type: 'put', key: venueTextKey(venue.id), value: new TextEncoder().encode(text) });
    return this.#commit.add(operations);
  }

  async close(): Promise<void> {
    await this.#commit.settled();
    await this.#level.close();
  }

  /** After a failed write the library refuses all later ones until it is opened anew, so that is tried first. */
  async #write(operations: readonly Operation[]): Promise<void> {
    try {
      if (this.#broken) {
        await this.#level.close();
        await this.#level.open();
        this.#broken = false;
      }
      await this.#level.batch([...operations], { sync: true });
    } catch (error) {
      this.#broken = true;
      throw error;
    }
  }
}

/**
 * Opens the store in a data directory, making both where there is none.
 *
 * @throws StartFailure if the directory cannot be used, or another server uses it
 */
export async function openLevelStore(dataDirectory: string): Promise<Store> {
  prepareDataDirectory(dataDirectory);
  const path = join(dataDirectory, 'nights');
  return new LevelStore(await open(path), path);
}
