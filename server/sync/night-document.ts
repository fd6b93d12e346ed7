import * as Y from 'yjs';
import { declareRoots } from '../../shared/document/roots.ts';

/** What became of an update offered to the document. */
export type Verdict = 'taken' | 'nothing-new' | 'gap' | 'garbage';

function emptyDocument(): Y.Doc {
  const doc = new Y.Doc({ gc: true });
  declareRoots(doc);
  return doc;
}

const hasGaps = (doc: Y.Doc): boolean => doc.store.pendingStructs !== null || doc.store.pendingDs !== null;

/**
 * A night twice: `ahead` has every update that was taken, `onDisk` only those that are durable.
 *
 *     offered ──► ahead ──► disk ──► onDisk ──► newcomers, "durable"
 *                   │
 *                   └ can be thrown away: an update that turns out bad cannot be taken out of a document again
 *
 * So a newcomer never sees what a power cut could still undo, and bytes from a phone are tried
 * out where they do no harm.
 */
export class NightDocument {
  readonly onDisk: Y.Doc;
  #ahead: Y.Doc;
  #changed = false;
  /** Taken, and not yet durable: what `ahead` has more than `onDisk`. */
  readonly #between = new Set<Uint8Array>();
  /** The disk damaged or refused an update, and later ones wait for it: then holes are no sign of a bad phone. */
  #incomplete: boolean;

  private constructor(onDisk: Y.Doc) {
    this.onDisk = onDisk;
    this.#incomplete = hasGaps(onDisk);
    this.#ahead = this.#fresh();
  }

  /** Puts a night together from its updates. Updates that Yjs cannot read are skipped and counted. */
  static load(updates: readonly Uint8Array[]): { night: NightDocument; unreadable: number } {
    let unreadable = 0;
    let doc = emptyDocument();
    try {
      // Inside one transaction a long log loads several times faster.
      doc.transact(() => {
        for (const update of updates) Y.applyUpdate(doc, update);
      });
    } catch {
      const readable = updates.filter(isReadable);
      unreadable = updates.length - readable.length;
      doc = emptyDocument();
      for (const update of readable) Y.applyUpdate(doc, update);
    }
    return { night: new NightDocument(doc), unreadable };
  }

  /** Updates are missing in the middle: what follows them waits, and may be filled in by a phone that has them. */
  get incomplete(): boolean {
    return this.#incomplete;
  }

  /**
   * Takes an update ahead of the disk. "garbage": it cannot be read. "gap": it builds on something that this night
   * does not have; everything after it would wait unseen. In both cases the document is as if it had never been offered.
   */
  offer(update: Uint8Array): Verdict {
    this.#changed = false;
    try {
      Y.applyUpdate(this.#ahead, update);
    } catch {
      this.#ahead = this.#fresh();
      return 'garbage';
    }
    if (hasGaps(this.#ahead) && !this.#incomplete) {
      this.#ahead = this.#fresh();
      return 'gap';
    }
    // A night with holes waits for what fills them: whether that changes anything yet cannot be told.
    if (!this.#changed && !this.#incomplete) return 'nothing-new';
    this.#incomplete &&= hasGaps(this.#ahead);
    this.#between.add(update);
    return 'taken';
  }

  /** The update is on the disk now. */
  keep(update: Uint8Array): void {
    this.#between.delete(update);
    Y.applyUpdate(this.onDisk, update);
  }

  /**
   * The update could not be written: it is taken out again. One that builds on it may be written all the same;
   * then that waits for the phone to bring this one again.
   */
  drop(update: Uint8Array): void {
    this.#between.delete(update);
    this.#ahead = this.#fresh();
    this.#incomplete ||= hasGaps(this.#ahead);
  }

  destroy(): void {
    this.#ahead.destroy();
    this.onDisk.destroy();
  }

  /** A document with all that is on the disk or on its way there. */
  #fresh(): Y.Doc {
    const doc = emptyDocument();
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(this.onDisk));
    for (const update of this.#between) Y.applyUpdate(doc, update);
    doc.on('afterTransaction', (transaction: Y.Transaction) => {
      if (hasEffect(transaction)) this.#changed = true;
    });
    return doc;
  }
}

function hasEffect({ deleteSet, beforeState, afterState }: Y.Transaction): boolean {
  if (deleteSet.clients.size > 0) return true;
  for (const [client, clock] of afterState) if (beforeState.get(client) !== clock) return true;
  return false;
}

function isReadable(update: Uint8Array): boolean {
  const trial = new Y.Doc();
  try {
    Y.applyUpdate(trial, update);
    return true;
  } catch {
    return false;
  } finally {
    trial.destroy();
  }
}
