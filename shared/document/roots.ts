import type * as Y from 'yjs';
import { ROOTS, type Root } from './schema.ts';

/** A root's map; its values are plain JSON, and unknown until a schema has looked at them. */
export const rootOf = (doc: Y.Doc, root: Root): Y.Map<unknown> => doc.getMap(root);

/**
 * Declares every root with its type. Both ends call it before a document is used: Yjs leaves an undeclared
 * root out of what it shows, and finds a root declared with two types only late.
 */
export function declareRoots(doc: Y.Doc): void {
  for (const root of ROOTS) rootOf(doc, root);
}
