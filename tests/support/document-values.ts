import * as Y from 'yjs';
import { rootOf } from '../../shared/document/roots.ts';
import { ROOTS } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** Everything in a document as plain values, the log and what does not fit a schema included. */
export const valuesOf = (doc: Y.Doc): Record<string, Record<string, unknown>> =>
  Object.fromEntries(
    ROOTS.map((root) => {
      const map = rootOf(doc, root);
      return [root, Object.fromEntries([...map.keys()].sort().map((key) => [key, map.get(key)]))];
    }),
  );

/** A state vector as a plain object, by client. */
export const vectorOf = (doc: Y.Doc): Record<string, number> =>
  Object.fromEntries(
    [...Y.decodeStateVector(Y.encodeStateVector(doc))]
      .sort(([a], [b]) => a - b)
      .map(([id, n]) => [`${id}`, n]),
  );

/** A night as JSON: its maps become objects, in key order. */
export const nightAsJson = (night: Night): unknown =>
  JSON.parse(
    JSON.stringify({
      ...night,
      gear: Object.fromEntries([...night.gear].sort(([a], [b]) => (a < b ? -1 : 1))),
      people: Object.fromEntries([...night.people].sort(([a], [b]) => (a < b ? -1 : 1))),
    }),
  );
