import type * as Y from 'yjs';
import { readKey } from './keys.ts';
import { rootOf } from './roots.ts';
import { entrySchemas, type Root } from './schema.ts';

/**
 * Where a change came from. Echo, storage and undo decide by this and never by guess (SPEC DOC4).
 * A change by a person on this phone carries the one `LOCAL` object: Yjs compares origins by identity.
 */
export const LOCAL = { from: 'local' } as const;
export const SEED = { from: 'seed' } as const;
export type Origin = typeof LOCAL | typeof SEED;

/** The hand that gives a command: who, when, and where fresh ids come from. Passed in, so a test can hold it. */
export interface Hand {
  readonly person: string;
  /** Server milliseconds, as this phone estimates them. */
  readonly now: () => number;
  readonly newId: () => string;
}

/** What a command may do inside its one transaction. */
export interface Pen {
  /** Sets a key; fields of the old value that this version does not know are kept (a newer app wrote them). */
  write(root: Root, key: string, value: unknown): void;
  /**
   * As `write`, for a whole value with fields that may be absent: one that this version knows and the value lacks is
   * taken away, so that giving the former value is an undo.
   */
  replace(root: Root, key: string, value: object): void;
  /**
   * Takes a key out of the map, where undo can bring it back. If another phone set the key apart, what it set stays,
   * unless this phone had set the key too: then the tie of the two settings decides, on all phones alike.
   */
  remove(root: Root, key: string): void;
  /** Appends to the log of the night. */
  log(what: string, about: string, detail?: string): void;
}

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The fields that this version knows for a key, whichever of its kinds the value is. */
function knownFields(root: Root, key: string): ReadonlySet<string> {
  const parts = readKey(root, key);
  if (!parts) return new Set();
  const { def } = entrySchemas[parts.kind]._zod;
  const objects = def.type === 'union' ? def.options.map((option) => option._zod.def) : [def];
  return new Set(objects.flatMap((one) => (one.type === 'object' ? Object.keys(one.shape) : [])));
}

/** Runs `act` as one transaction with a named origin. The only place in the project that opens a transaction to write. */
export function commit<Result>(doc: Y.Doc, origin: Origin, hand: Hand, act: (pen: Pen) => Result): Result {
  return doc.transact(() => {
    const write: Pen['write'] = (root, key, value) => {
      const map = rootOf(doc, root);
      const old = map.get(key);
      map.set(key, isPlain(old) && isPlain(value) ? { ...old, ...value } : value);
    };
    const replace: Pen['replace'] = (root, key, value) => {
      const map = rootOf(doc, root);
      const old = map.get(key);
      const known = knownFields(root, key);
      const kept = isPlain(old) ? Object.entries(old).filter(([field]) => !known.has(field)) : [];
      map.set(key, { ...Object.fromEntries(kept), ...value });
    };
    const remove: Pen['remove'] = (root, key) => rootOf(doc, root).delete(key);
    const log: Pen['log'] = (what, about, detail) =>
      write('log', hand.newId(), { by: hand.person, at: hand.now(), what, about, detail: detail ?? null });
    return act({ write, replace, remove, log });
  }, origin);
}
