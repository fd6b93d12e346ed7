import type * as Y from 'yjs';
import { type KeyParts, readKey } from './keys.ts';
import { rootOf } from './roots.ts';
import { type Entry, type EntryKind, entrySchemas, type Root } from './schema.ts';

/** An entry that could not be read: kept in the document, left out of the snapshot, shown to a person. */
export interface Skipped {
  readonly root: Root;
  readonly key: string;
  /** Plain words, with the field that does not fit. */
  readonly reason: string;
}

export interface ReadEntry {
  readonly parts: KeyParts;
  readonly value: Entry<EntryKind>;
}

type Parsed =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly reason: string };

/** Yjs hands out the same object until a key is set again, so an entry is looked at once, not at every change. */
const parsedBefore = new WeakMap<object, Parsed>();

function check(kind: EntryKind, raw: unknown): Parsed {
  const result = entrySchemas[kind].safeParse(raw);
  if (result.success) return { ok: true, value: result.data };
  const issue = result.error.issues[0];
  const where = issue && issue.path.length > 0 ? `${issue.path.join('.')}: ` : '';
  return { ok: false, reason: `${where}${issue?.code ?? 'does not fit'}` };
}

function parse(kind: EntryKind, raw: unknown): Parsed {
  if (typeof raw !== 'object' || raw === null) return check(kind, raw);
  const known = parsedBefore.get(raw);
  if (known) return known;
  const fresh = check(kind, raw);
  parsedBefore.set(raw, fresh);
  return fresh;
}

/** One entry by its kind and key; null where there is none or it does not fit its schema. */
export function entryAt<Kind extends EntryKind>(
  doc: Y.Doc,
  root: Root,
  key: string,
  kind: Kind,
): Entry<Kind> | null {
  const parsed = parse(kind, rootOf(doc, root).get(key));
  // The schema of this kind has just accepted the value: its type is what that schema infers.
  return parsed.ok ? (parsed.value as Entry<Kind>) : null;
}

/**
 * Every entry of a root, in key order, so that two documents with the same content read the same.
 * A key that this version does not know is passed over in silence (a newer app wrote it);
 * a known key whose value does not fit is given to `skip`.
 */
export function entriesOf(doc: Y.Doc, root: Root, skip: (entry: Skipped) => void): ReadEntry[] {
  const found: ReadEntry[] = [];
  const map = rootOf(doc, root);
  for (const key of [...map.keys()].sort()) {
    const parts = readKey(root, key);
    if (!parts) continue;
    const parsed = parse(parts.kind, map.get(key));
    if (parsed.ok) found.push({ parts, value: parsed.value as Entry<EntryKind> });
    else skip({ root, key, reason: parsed.reason });
  }
  return found;
}

/** The value of an entry if it is of this kind, else null. */
export const valueIf = <Kind extends EntryKind>(
  entry: ReadEntry | undefined,
  kind: Kind,
): Entry<Kind> | null => (entry?.parts.kind === kind ? (entry.value as Entry<Kind>) : null);
