import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import * as sync from 'y-protocols/sync';
import * as Y from 'yjs';
import { declareRoots } from '../../shared/document/roots.ts';

/** One phone of a held network: its document, and what is on its way from and to it. */
export interface HeldPhone {
  readonly doc: Y.Doc;
  /** Messages on their way, oldest first. */
  readonly up: Uint8Array[];
  readonly down: Uint8Array[];
  joined: boolean;
}

export type Direction = 'up' | 'down';

/** The origin of what the network brings, so that it is not sent back to where it came from. */
const FROM_NETWORK = { from: 'network' } as const;

function message(write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  write(encoder);
  return encoding.toUint8Array(encoder);
}

/** A document as both ends open it. The client number decides ties, so a test names it. */
export function openDoc(clientId: number): Y.Doc {
  const doc = new Y.Doc();
  doc.clientID = clientId;
  declareRoots(doc);
  return doc;
}

/**
 * A server and its phones with a network that the test holds: nothing moves until `deliver` moves it, one message
 * at a time. It speaks the real sync protocol (both sides ask with their state vector when a phone joins); a cut
 * loses everything that was on its way.
 *
 *     phone ── up ──► server ── down ──► every other phone
 */
export class HeldNetwork {
  readonly server: Y.Doc;
  readonly phones: readonly HeldPhone[];
  /** How often a phone that was joined was cut off, for tests that must show that they did something. */
  cuts = 0;

  constructor(server: Y.Doc, clientIds: readonly number[]) {
    this.server = server;
    this.phones = clientIds.map((clientId) => this.#phone(clientId));
    server.on('update', (update: Uint8Array, origin: unknown) => {
      for (const phone of this.phones) {
        if (phone.joined && phone !== origin)
          phone.down.push(message((encoder) => sync.writeUpdate(encoder, update)));
      }
    });
  }

  #phone(clientId: number): HeldPhone {
    const phone: HeldPhone = { doc: openDoc(clientId), up: [], down: [], joined: false };
    phone.doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (phone.joined && origin !== FROM_NETWORK)
        phone.up.push(message((encoder) => sync.writeUpdate(encoder, update)));
    });
    return phone;
  }

  join(phone: HeldPhone): void {
    if (phone.joined) return;
    phone.joined = true;
    phone.up.push(message((encoder) => sync.writeSyncStep1(encoder, phone.doc)));
    phone.down.push(message((encoder) => sync.writeSyncStep1(encoder, this.server)));
  }

  cut(phone: HeldPhone): void {
    if (!phone.joined) return;
    phone.joined = false;
    phone.up.length = 0;
    phone.down.length = 0;
    this.cuts += 1;
  }

  /** Brings the oldest message of one direction to its end; false when there is none. */
  deliver(phone: HeldPhone, direction: Direction): boolean {
    const bytes = phone[direction].shift();
    if (!bytes) return false;
    const [doc, origin] =
      direction === 'up' ? ([this.server, phone] as const) : ([phone.doc, FROM_NETWORK] as const);
    const reply = encoding.createEncoder();
    sync.readSyncMessage(decoding.createDecoder(bytes.slice()), reply, doc, origin, (error: Error) => {
      throw error;
    });
    if (encoding.length(reply) > 0)
      phone[direction === 'up' ? 'down' : 'up'].push(encoding.toUint8Array(reply));
    return true;
  }

  /** Delivers until nothing is on its way. */
  drain(): void {
    let moved = true;
    while (moved) {
      moved = false;
      for (const phone of this.phones) {
        if (this.deliver(phone, 'up')) moved = true;
        if (this.deliver(phone, 'down')) moved = true;
      }
    }
  }

  joinAllAndDrain(): void {
    for (const phone of this.phones) this.join(phone);
    this.drain();
  }

  /** Every document of the network, the server's first. */
  get docs(): readonly Y.Doc[] {
    return [this.server, ...this.phones.map((phone) => phone.doc)];
  }
}
