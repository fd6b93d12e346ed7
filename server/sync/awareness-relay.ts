import { createDecoder, readVarString, readVarUint } from 'lib0/decoding';
import {
  Awareness,
  applyAwarenessUpdate,
  encodeAwarenessUpdate,
  removeAwarenessStates,
} from 'y-protocols/awareness';
import * as Y from 'yjs';

/** Two phones and a few lookers-on show one state each; a reload leaves its old one behind for half a minute. */
const MOST_STATES = 128;

interface Change {
  readonly added: number[];
  readonly updated: number[];
  readonly removed: number[];
}

/** Is this an awareness update of a length that people could make? Yjs itself would throw halfway through. */
function isAwarenessUpdate(update: Uint8Array): boolean {
  try {
    const decoder = createDecoder(update);
    const count = readVarUint(decoder);
    if (count > MOST_STATES) return false;
    for (let index = 0; index < count; index += 1) {
      readVarUint(decoder); // the client's id
      readVarUint(decoder); // its clock
      JSON.parse(readVarString(decoder));
    }
    return decoder.pos === update.length;
  } catch {
    return false;
  }
}

/**
 * Passes on what phones show of themselves for the moment (Yjs awareness); nothing of it is stored.
 * The connection that brought the newest state of a client id owns it, whether the id was added or only updated (as
 * after a reconnect): when the owner goes, the state goes, and no ghost stays. Phones repeat what they hear of
 * others; a repetition brings nothing newer, so it moves no ownership.
 */
export class AwarenessRelay<Owner extends object> {
  readonly #awareness: Awareness;
  readonly #owners = new Map<number, Owner>();

  /** @param send gives every phone of the night an awareness update */
  constructor(send: (update: Uint8Array) => void) {
    // It wants a document for its own client id; the server shows nothing of itself.
    this.#awareness = new Awareness(new Y.Doc());
    this.#awareness.setLocalState(null);
    this.#awareness.on('update', ({ added, updated, removed }: Change, origin: Owner) => {
      for (const client of [...added, ...updated]) this.#owners.set(client, origin);
      for (const client of removed) this.#owners.delete(client);
      send(encodeAwarenessUpdate(this.#awareness, [...added, ...updated, ...removed]));
    });
  }

  /** False when the bytes are no awareness update, or show more than people could. */
  take(update: Uint8Array, owner: Owner): boolean {
    if (!isAwarenessUpdate(update) || this.#awareness.states.size > MOST_STATES) return false;
    applyAwarenessUpdate(this.#awareness, update, owner);
    return true;
  }

  /** All that is shown now; null when nobody shows anything. */
  everything(): Uint8Array | null {
    const clients = [...this.#awareness.getStates().keys()];
    return clients.length > 0 ? encodeAwarenessUpdate(this.#awareness, clients) : null;
  }

  /** A connection ended: what it showed goes. */
  leave(owner: Owner): void {
    const gone = [...this.#owners].filter(([, other]) => other === owner).map(([client]) => client);
    removeAwarenessStates(this.#awareness, gone, owner);
  }

  destroy(): void {
    this.#awareness.doc.destroy(); // ends its timer too
  }
}
