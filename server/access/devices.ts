import { randomBytes } from 'node:crypto';
import { asId, makeId, type NightId, type PersonId } from '../../shared/ids.ts';
import type { Role } from '../../shared/roles.ts';
import type { Device, Store } from '../store/store.ts';
import { secretHash } from './hash.ts';

const TOKEN_BYTES = 32;

/** The paired phones: all in memory, so that a socket is let in or turned away without waiting for the disk. */
export class Devices {
  readonly #store: Store;
  readonly #byHash: Map<string, Device>;

  private constructor(store: Store, byHash: Map<string, Device>) {
    this.#store = store;
    this.#byHash = byHash;
  }

  static async load(store: Store): Promise<Devices> {
    return new Devices(store, new Map(await store.listDevices()));
  }

  /** The phone that holds this token for this night and role; null if there is none. */
  find(token: string | null, night: NightId, role: Role): Device | null {
    if (!token) return null;
    const device = this.#byHash.get(secretHash(token));
    return device && device.night === night && device.role === role ? device : null;
  }

  /**
   * Pairs a phone; its token works from the moment this resolves, and after a power cut too. A phone that was
   * paired for this night and role before stays the same person, and its old token ends.
   */
  async pair(
    wish: { night: NightId; role: Role; name: string },
    before: string | null,
    now: number,
  ): Promise<{ token: string; device: Device }> {
    const old = this.find(before, wish.night, wish.role);
    const token = randomBytes(TOKEN_BYTES).toString('base64url');
    const device: Device = {
      ...wish,
      person: old?.person ?? asId<PersonId>(makeId(randomBytes)),
      pairedAt: now,
    };
    const hash = secretHash(token);
    await this.#store.putDevice(hash, device);
    this.#byHash.set(hash, device);
    if (old && before) {
      const oldHash = secretHash(before);
      this.#byHash.delete(oldHash);
      await this.#store.deleteDevice(oldHash);
    }
    return { token, device };
  }
}
