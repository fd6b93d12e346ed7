import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { NightDocument } from '../../../server/sync/night-document.ts';
import { rootOf } from '../../../shared/document/roots.ts';

/** The updates of several phones that each write some keys and take some out again, every phone's own in order. */
function phoneUpdates(phone: number, keys: readonly string[]): Uint8Array[] {
  const doc = new Y.Doc();
  doc.clientID = phone + 1;
  const updates: Uint8Array[] = [];
  doc.on('update', (update: Uint8Array) => updates.push(update));
  for (const key of keys) {
    if (rootOf(doc, 'log').has(key)) rootOf(doc, 'log').delete(key);
    else rootOf(doc, 'log').set(key, { phone });
  }
  return updates;
}

const content = (doc: Y.Doc) => [rootOf(doc, 'log').toJSON(), Y.decodeStateVector(Y.encodeStateVector(doc))];
const key = fc.constantFrom('a', 'b', 'c', 'd');
const act = fc.record({
  phone: fc.nat(2),
  bad: fc.constantFrom(null, 'bytes', 'gap', 'twice'),
  /** What becomes of it: written, not written, or later. */
  fate: fc.constantFrom('kept', 'dropped', 'later'),
});

test('[SYN9] whatever is offered, the durable document is exactly what was written, and bad updates leave no trace', () => {
  let garbage = 0;
  fc.assert(
    fc.property(
      fc.array(fc.array(key, { maxLength: 8 }), { minLength: 3, maxLength: 3 }),
      fc.array(act, { maxLength: 40 }),
      (phones, acts) => {
        const queues = phones.map((keys, phone) => phoneUpdates(phone, keys));
        const { night } = NightDocument.load([]);
        const written: Uint8Array[] = [];
        const onTheWay: Uint8Array[] = [];
        const write = (update: Uint8Array) => {
          night.keep(update);
          written.push(update);
        };
        for (const { phone, bad, fate } of acts) {
          const queue = queues[phone] ?? [];
          if (bad === 'bytes') {
            expect(night.offer(Uint8Array.of(255, 254, 253))).toBe('garbage');
            garbage += 1;
          }
          // Leaving out an update that only takes something out cannot be told from its not having been made.
          if (
            bad === 'gap' &&
            queue[0] &&
            queue[1] &&
            Y.decodeUpdate(queue[0]).structs.length > 0 &&
            Y.decodeUpdate(queue[1]).structs.length > 0
          ) {
            expect(night.offer(queue[1])).toBe('gap');
            garbage += 1;
          }
          const next = queue[0];
          if (!next || night.offer(next) !== 'taken') continue;
          if (bad === 'twice') expect(night.offer(next)).toBe('nothing-new');
          // A failed write leaves the phone with the update: it will offer it again.
          if (fate === 'dropped' && onTheWay.length === 0) night.drop(next);
          else queue.shift();
          if (fate === 'later') onTheWay.push(next);
          else if (fate === 'kept' || onTheWay.length > 0) {
            for (const update of [...onTheWay.splice(0), next]) write(update);
          }
        }
        const expected = new Y.Doc();
        for (const update of written) Y.applyUpdate(expected, update);
        expect(content(night.onDisk)).toEqual(content(expected));
        expect(night.onDisk.store.pendingStructs).toBeNull();
        expect(night.onDisk.store.pendingDs).toBeNull();
        night.destroy();
      },
    ),
  );
  expect(garbage).toBeGreaterThan(0);
});

test('a night that came from the disk with a hole takes what fills it', () => {
  const [first, second, third] = phoneUpdates(0, ['a', 'b', 'c']);
  if (!first || !second || !third) throw new Error('three changes give three updates');
  const { night } = NightDocument.load([first, third]);
  expect(night.incomplete).toBe(true);
  expect(night.offer(second)).toBe('taken');
  night.keep(second);
  expect(night.incomplete).toBe(false);
  expect([...rootOf(night.onDisk, 'log').keys()].sort()).toEqual(['a', 'b', 'c']);
});

test('[SYN13] an update that could not be written, while one that builds on it was: both are there when the phone brings it again', () => {
  const [first, second, third] = phoneUpdates(0, ['a', 'b', 'c']);
  if (!first || !second || !third) throw new Error('three changes give three updates');
  const { night } = NightDocument.load([]);
  expect([night.offer(first), night.offer(second)]).toEqual(['taken', 'taken']);
  night.drop(first);
  night.keep(second);
  expect([...rootOf(night.onDisk, 'log').keys()]).toEqual([]);
  // Meanwhile the other phone works on: the hole is none of its making.
  const [other] = phoneUpdates(1, ['d']);
  if (!other) throw new Error('a change gives an update');
  expect(night.offer(other)).toBe('taken');
  night.keep(other);
  expect(night.offer(first)).toBe('taken');
  night.keep(first);
  expect(night.incomplete).toBe(false);
  expect(night.offer(third)).toBe('taken');
  night.keep(third);
  expect([...rootOf(night.onDisk, 'log').keys()].sort()).toEqual(['a', 'b', 'c', 'd']);
});
