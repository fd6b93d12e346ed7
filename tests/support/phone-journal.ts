import { isDeepStrictEqual } from 'node:util';
import * as Y from 'yjs';
import { rootOf } from '../../shared/document/roots.ts';
import { ROOTS, type Root } from '../../shared/document/schema.ts';
import { LOCAL, SEED } from '../../shared/document/transact.ts';

/** One key as one command left it. */
interface Write {
  readonly root: Root;
  readonly key: string;
  readonly value: unknown;
  /** Who wrote it and how many of its writer's changes there were afterwards. */
  readonly client: number;
  readonly after: number;
  /** What the writer knew: by client, how many of its changes it held before. */
  readonly knew: ReadonlyMap<number, number>;
}

/** `first` was known to the writer of `second`: then `second` was meant to replace it. */
const precedes = (first: Write, second: Write): boolean =>
  first !== second && (second.knew.get(first.client) ?? 0) >= first.after;

/**
 * Writes down what every accepted command wrote, on whichever phone, with what that phone knew at that moment.
 *
 * SPEC DOC12, precisely: for every key that any accepted command wrote, the key is in every document, and its value
 * is that of a write which no other write to the key knew of; a removal is a write of nothing. So a value is only ever replaced by a later one or,
 * between two that were made apart, by the other. A log entry has a key of its own, so it is there as it was written.
 */
export class Journal {
  readonly #writes = new Map<string, Write[]>();
  /** Transactions with a command's origin, and undos and redos that changed something. */
  commands = 0;

  watch(doc: Y.Doc): void {
    doc.on('afterTransaction', (transaction) => {
      const { origin, changed } = transaction;
      const isUndo = origin instanceof Y.UndoManager && changed.size > 0;
      if (origin !== LOCAL && origin !== SEED && !isUndo) return;
      this.commands += 1;
      for (const root of ROOTS) {
        const map = rootOf(doc, root);
        for (const [type, keys] of transaction.changed) {
          if (Object.is(type, map))
            for (const key of keys) if (key !== null) this.#note(root, key, doc, transaction);
        }
      }
    });
  }

  #note(root: Root, key: string, doc: Y.Doc, transaction: Y.Transaction): void {
    const name = `${root} ${key}`;
    const write: Write = {
      root,
      key,
      value: structuredClone(rootOf(doc, root).get(key)),
      client: doc.clientID,
      after: transaction.afterState.get(doc.clientID) ?? 0,
      knew: new Map(transaction.beforeState),
    };
    this.#writes.set(name, [...(this.#writes.get(name) ?? []), write]);
  }

  /** What of the journal is not in a document as DOC12 wants it: empty when nothing was lost. */
  lostIn(doc: Y.Doc): string[] {
    const lost: string[] = [];
    for (const [name, writes] of this.#writes) {
      const last = writes.filter((write) => !writes.some((other) => precedes(write, other)));
      const [{ root, key } = { root: 'log' as const, key: '' }] = writes;
      const map = rootOf(doc, root);
      const isRemoved = last.some(({ value }) => value === undefined);
      if (!map.has(key) && !isRemoved) lost.push(`${name} is missing`);
      else if (!last.some((write) => isDeepStrictEqual(write.value, map.get(key))))
        lost.push(`${name} holds ${JSON.stringify(map.get(key))}`);
    }
    return lost;
  }
}
