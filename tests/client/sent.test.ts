import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { hasUnsent, isDurable } from '../../client/session/sent.ts';
import { rootOf } from '../../shared/document/roots.ts';

const vectorOf = (doc: Y.Doc) => Y.decodeStateVector(Y.encodeStateVector(doc));

describe('what has been sent', () => {
  it('[SYN4] a change is sent only when the durable state vector covers it', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 1, maxLength: 12 }), (keys) => {
        const doc = new Y.Doc();
        const log = rootOf(doc, 'log');
        for (const [index, key] of keys.entries()) {
          const before = vectorOf(doc);
          log.set(key, { index });
          expect(isDurable(doc, 'log', key, before)).toBe(false);
          expect(hasUnsent(doc, before)).toBe(true);
          expect(isDurable(doc, 'log', key, vectorOf(doc))).toBe(true);
          expect(hasUnsent(doc, vectorOf(doc))).toBe(false);
        }
      }),
    );
  });

  it('[SYN4] what another session of the same phone wrote counts as unsent until it is covered', () => {
    const [yesterday, today] = [new Y.Doc(), new Y.Doc()];
    rootOf(yesterday, 'log').set('old', 1);
    Y.applyUpdate(today, Y.encodeStateAsUpdate(yesterday));
    expect(isDurable(today, 'log', 'old', new Map())).toBe(false);
    expect(hasUnsent(today, new Map())).toBe(true);
    expect(isDurable(today, 'log', 'old', vectorOf(yesterday))).toBe(true);
  });

  it('a key that is not there was not sent', () => {
    expect(isDurable(new Y.Doc(), 'log', 'none', new Map([[1, 9]]))).toBe(false);
  });
});
