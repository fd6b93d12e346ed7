import type { NightId, PersonId } from '../../shared/ids.ts';
import type { PresentPhone } from '../../shared/messages/signals.ts';
import type { Device } from '../store/store.ts';

interface Known {
  readonly device: Device;
  visible: boolean;
  beatAt: number;
  readonly sockets: Set<string>;
}

/** What is true of the phones of each night right now, gone ones included. Never stored. */
export class PresenceBoard {
  readonly #now: () => number;
  readonly #show: (night: NightId, phones: PresentPhone[]) => void;
  readonly #nights = new Map<NightId, Map<PersonId, Known>>();

  /** @param show sends the list to every phone of a night; called at each change and at each beat */
  constructor(now: () => number, show: (night: NightId, phones: PresentPhone[]) => void) {
    this.#now = now;
    this.#show = show;
  }

  /** A phone's socket came in. Whether its page is visible is known from its first beat. */
  arrived(device: Device, socketId: string): void {
    const phones = this.#nights.get(device.night) ?? new Map<PersonId, Known>();
    this.#nights.set(device.night, phones);
    const known = phones.get(device.person);
    const sockets = (known?.sockets ?? new Set()).add(socketId);
    phones.set(device.person, { device, visible: known?.visible ?? false, beatAt: this.#now(), sockets });
    this.#changed(device.night);
  }

  beat(device: Device, visible: boolean): void {
    const known = this.#nights.get(device.night)?.get(device.person);
    if (!known) return;
    known.visible = visible;
    known.beatAt = this.#now();
    this.#changed(device.night);
  }

  left(device: Device, socketId: string): void {
    this.#nights.get(device.night)?.get(device.person)?.sockets.delete(socketId);
    this.#changed(device.night);
  }

  phonesOf(night: NightId): PresentPhone[] {
    const now = this.#now();
    return [...(this.#nights.get(night)?.values() ?? [])].map(({ device, visible, beatAt, sockets }) => ({
      personId: device.person,
      name: device.name,
      role: device.role,
      visible,
      agoMs: Math.max(0, now - beatAt),
      connected: sockets.size > 0,
    }));
  }

  #changed(night: NightId): void {
    this.#show(night, this.phonesOf(night));
  }
}
