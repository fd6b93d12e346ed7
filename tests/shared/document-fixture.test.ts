import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { markSet } from '../../shared/document/commands/mark-set.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { SCHEMA_VERSION } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { fixturePaths, readFixture, workedNight } from '../support/document-fixture.ts';
import { carryOf, done, standOf } from '../support/document-night.ts';
import { nightAsJson, valuesOf } from '../support/document-values.ts';
import { HeldClock, heldHand } from '../support/phone-hand.ts';
import { openDoc } from '../support/phone-network.ts';

const versions = Array.from({ length: SCHEMA_VERSION }, (_, index) => index + 1);

function opened(version: number): Y.Doc {
  const doc = openDoc(99);
  Y.applyUpdate(doc, readFixture(version).bytes);
  return doc;
}

describe('stored documents', () => {
  it('[DOC10] there is one of each schema version so far, with the value it is read as', () => {
    expect(versions.length).toBeGreaterThan(0);
    for (const version of versions) {
      expect(existsSync(fixturePaths(version).bytes), `document-v${version}.bin`).toBe(true);
      expect(existsSync(fixturePaths(version).value), `document-v${version}.json`).toBe(true);
    }
  });

  for (const version of versions) {
    it(`[DOC10] that of version ${version} opens to its stated value`, () => {
      const doc = opened(version);
      expect(nightAsJson(readNight(doc))).toEqual(readFixture(version).value);
      expect(doc.store.pendingStructs).toBeNull();
    });

    it(`[DOC3] that of version ${version} names its spoilt entry, passes over what it does not know, and keeps both`, () => {
      const doc = opened(version);
      expect(readNight(doc).skipped).toEqual([
        { root: 'features', key: 'blurred', reason: expect.stringMatching(/^kind/) },
      ]);
      expect(rootOf(doc, 'features').get('blurred')).toEqual({ kind: 'fog' });
      expect(rootOf(doc, 'room').get('from-later')).toEqual({ walls: 0.4 });
    });

    it(`[DOC10] that of version ${version} can be worked in`, () => {
      const doc = opened(version);
      const carry = readNight(doc).carries.find(
        ({ standId, state }) => standId === 'key' && state === 'delivered',
      );
      if (!carry) throw new Error('the fixture has an open call of the key');
      const on = { carryId: carry.id, revisionId: carry.current.id };
      done(markSet(doc, heldHand('assistant', new HeldClock(), { idSeed: 77 }), on));
      expect(carryOf(doc, on).state).toBe('set');
      expect(standOf(doc, 'key').place.mark).toEqual(carry.current.mark);
    });
  }

  it('[DOC12] a night survives being stored as one update, as many, and as many with repeats in another order', () => {
    const updates: Uint8Array[] = [];
    const source = workedNight();
    const copy = openDoc(5);
    copy.on('update', (update: Uint8Array) => updates.push(update));
    // One update for each client and clock step: what a server has on its disk after a night.
    for (let end = 1; end <= Y.getState(source.store, source.clientID); end += 1)
      Y.applyUpdate(copy, Y.encodeStateAsUpdate(source, Y.encodeStateVector(copy)));
    Y.applyUpdate(copy, Y.encodeStateAsUpdate(source));
    const reopened = openDoc(6);
    for (const update of [...updates, ...updates].reverse()) Y.applyUpdate(reopened, update);
    expect(valuesOf(reopened)).toEqual(valuesOf(source));
    expect(reopened.store.pendingStructs).toBeNull();
  });
});
