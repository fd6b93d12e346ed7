import type * as Y from 'yjs';
import { rootOf } from '../../shared/document/roots.ts';
import type { Root } from '../../shared/document/schema.ts';

/**
 * Whether the present value of a key is on the server's disk: the change that wrote it lies within what the
 * server has reported as durable. Holds after a reload too, since it asks the document, not the page.
 *
 * @param durable changes per document client that are on disk
 */
export function isDurable(
  doc: Y.Doc,
  root: Root,
  key: string,
  durable: ReadonlyMap<number, number>,
): boolean {
  const item = rootOf(doc, root)._map.get(key);
  return item !== undefined && (durable.get(item.id.client) ?? 0) > item.id.clock;
}

/** Whether anything written on this phone is not yet on the server's disk. */
export function hasUnsent(doc: Y.Doc, durable: ReadonlyMap<number, number>): boolean {
  for (const [client, structs] of doc.store.clients) {
    const last = structs.at(-1);
    if (last && last.id.clock + last.length > (durable.get(client) ?? 0)) return true;
  }
  return false;
}
