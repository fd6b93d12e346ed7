import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { silentLog } from '../../../server/logging.ts';
import { COMPACT_ABOVE, NightList } from '../../../server/nights/night-list.ts';
import { createMemoryStore } from '../../../server/store/memory-store.ts';
import type { Store } from '../../../server/store/store.ts';
import { rootOf } from '../../../shared/document/roots.ts';
import { readNight } from '../../../shared/document/snapshot.ts';
import { smallNight } from '../../support/server-seed.ts';
import { payloadOf } from '../../support/server-sync-phone.ts';
import { heldTime } from '../../support/server-time.ts';

const load = (store: Store) => NightList.load({ store, time: heldTime(), log: silentLog() });

/** A store with one night and so many further updates, each setting a key of its own; and the updates. */
async function storeWith(count: number) {
  const store = createMemoryStore();
  const list = await load(store);
  const { id } = await list.make(smallNight());
  await list.close();
  const doc = new Y.Doc();
  for (const update of (await store.loadNight(id)).updates) Y.applyUpdate(doc, update);
  const updates: Uint8Array[] = [];
  doc.on('update', (update: Uint8Array) => updates.push(update));
  for (let number = 0; number < count; number += 1)
    rootOf(doc, 'log').set(`entry-${number}`, { what: number });
  return { store, id, doc, updates };
}

async function stored(store: Store, id: Parameters<Store['loadNight']>[0]): Promise<Y.Doc> {
  const doc = new Y.Doc();
  for (const update of (await store.loadNight(id)).updates) Y.applyUpdate(doc, update);
  return doc;
}

test('a night that is made is stored whole, before it can be asked for', async () => {
  const { store, id } = await storeWith(0);
  const night = readNight(await stored(store, id));
  expect(night.about).toEqual({ id, title: 'Barn dance', date: '2026-06-20' });
  expect(night.skipped).toEqual([]);
  expect(night.stands).toHaveLength(1);
});

test('a night with very many updates is put together into one, with nothing lost', async () => {
  const { store, id, doc, updates } = await storeWith(COMPACT_ABOVE);
  for (const update of updates) await store.append(id, update);
  expect((await store.loadNight(id)).updates.length).toBe(COMPACT_ABOVE + 1);
  const list = await load(store);
  expect((await store.loadNight(id)).updates.length).toBe(1);
  expect(rootOf(await stored(store, id), 'log').toJSON()).toEqual(rootOf(doc, 'log').toJSON());
  expect(Y.encodeStateVector(await stored(store, id))).toEqual(Y.encodeStateVector(doc));
  await list.close();
});

test('a night with fewer is left as it is', async () => {
  const { store, id, updates } = await storeWith(COMPACT_ABOVE - 1);
  for (const update of updates) await store.append(id, update);
  await (await load(store)).close();
  expect((await store.loadNight(id)).updates.length).toBe(COMPACT_ABOVE);
});

test('an update that cannot be read, or one that is missing, blocks neither the night nor the others, and nothing is thrown away', async () => {
  for (const spoil of [
    (updates: Uint8Array[]) => updates.with(500, Uint8Array.of(255, 255, 255)),
    (updates: Uint8Array[]) => updates.toSpliced(500, 1),
  ]) {
    const { store, id, updates } = await storeWith(COMPACT_ABOVE + 10);
    for (const update of spoil(updates)) await store.append(id, update);
    const before = (await store.loadNight(id)).updates.length;
    const list = await load(store);
    expect((await store.loadNight(id)).updates.length).toBe(before);
    const answer = list.room(id)?.answer(Y.encodeStateVector(new Y.Doc()));
    const seen = new Y.Doc();
    Y.applyUpdate(seen, payloadOf(answer ?? new Uint8Array(), 2));
    expect(rootOf(seen, 'log').has('entry-499')).toBe(true);
    await list.close();
  }
});

test('nights are listed with the newest first', async () => {
  const time = heldTime();
  const list = await NightList.load({ store: createMemoryStore(), time, log: silentLog() });
  for (const title of ['one', 'two', 'three']) {
    await list.make(smallNight(title));
    time.advance(1000);
  }
  expect(list.records().map((record) => record.title)).toEqual(['three', 'two', 'one']);
  await list.close();
});
