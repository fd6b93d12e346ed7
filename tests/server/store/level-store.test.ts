import { readdirSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ClassicLevel } from 'classic-level';
import * as fc from 'fast-check';
import { expect, onTestFinished, test, vi } from 'vitest';
import { StartFailure } from '../../../server/start-failure.ts';
import { openLevelStore } from '../../../server/store/level-store.ts';
import { asId, type NightId, type PersonId } from '../../../shared/ids.ts';
import { ownFolder } from '../../support/server-folder.ts';

const night = asId<NightId>('a');
const record = { id: night, title: 'Barn dance', madeAt: 1 };

async function open(folder: string) {
  const store = await openLevelStore(folder);
  onTestFinished(() => store.close());
  return store;
}

test('nights, updates and phones are there again when the store is opened again, and it goes on behind them', async () => {
  const folder = ownFolder();
  const first = await open(folder);
  await first.createNight(record, Uint8Array.of(1));
  for (let number = 2; number <= 300; number += 1) await first.append(night, Uint8Array.of(number % 256));
  await first.close();
  const second = await open(folder);
  expect(await second.listNights()).toEqual([record]);
  expect((await second.loadNight(night)).updates).toHaveLength(300);
  await second.append(night, Uint8Array.of(7, 7));
  const { updates } = await second.loadNight(night);
  expect(updates).toHaveLength(301);
  expect(updates.at(-1)).toEqual(Uint8Array.of(7, 7));
});

test('an update whose bytes rotted is left out, counted and left where it is', async () => {
  const folder = ownFolder();
  const first = await open(folder);
  await first.createNight(record, Uint8Array.of(1));
  for (const number of [2, 3]) await first.append(night, Uint8Array.of(number, number, number));
  await first.close();
  const level = new ClassicLevel<string, Uint8Array>(join(folder, 'nights'), { valueEncoding: 'view' });
  const keys = (await level.keys().all()).filter((key) => key.startsWith('u/'));
  const [, second] = keys;
  const bytes = second === undefined ? undefined : await level.get(second);
  if (second === undefined || !bytes) throw new Error('the second update is stored under a key of its own');
  bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
  await level.put(second, bytes);
  await level.close();
  const reopened = await open(folder);
  expect(await reopened.loadNight(night)).toEqual({
    updates: [Uint8Array.of(1), Uint8Array.of(3, 3, 3)],
    damaged: 1,
  });
  await reopened.append(night, Uint8Array.of(4));
  expect(await reopened.loadNight(night)).toMatchObject({ damaged: 1, updates: { length: 3 } });
});

test('a log file cut off anywhere gives a beginning of what was written, never something else', async () => {
  await fc.assert(
    fc.asyncProperty(fc.double({ min: 0, max: 1, noNaN: true }), async (share) => {
      const folder = ownFolder();
      const first = await openLevelStore(folder);
      await first.createNight(record, Uint8Array.of(0));
      const written = [...Array(40).keys()].map((number) => new Uint8Array(50).fill(number + 1));
      for (const update of written) await first.append(night, update);
      await first.close();
      const path = join(folder, 'nights');
      const log = readdirSync(path).find((name) => name.endsWith('.log'));
      if (!log) throw new Error('the updates stand in a log file');
      truncateSync(join(path, log), Math.floor(statSync(join(path, log)).size * share));
      const reopened = await openLevelStore(folder);
      const { updates, damaged } = await reopened.loadNight(night);
      await reopened.close();
      expect(damaged).toBe(0);
      expect(updates).toEqual([Uint8Array.of(0), ...written].slice(0, updates.length));
    }),
    { numRuns: 20 },
  );
});

test('a folder that another server uses is refused in plain words', async () => {
  const folder = ownFolder();
  await open(folder);
  const second = openLevelStore(folder);
  await expect(second).rejects.toThrow(StartFailure);
  await expect(second).rejects.toThrow(/Another Hushmark server is using .*--data/);
});

test('a place where no folder can be is refused in plain words', async () => {
  const folder = ownFolder();
  writeFileSync(join(folder, 'file'), '');
  const opened = openLevelStore(join(folder, 'file', 'below'));
  await expect(opened).rejects.toThrow(StartFailure);
  await expect(opened).rejects.toThrow(/cannot be stored in .*ENOTDIR.*--data/);
});

test('a store that is no store is refused in plain words', async () => {
  const folder = ownFolder();
  writeFileSync(join(folder, 'nights'), 'not a folder');
  await expect(openLevelStore(folder)).rejects.toThrow(/cannot be opened/);
});

test('the data folder is made for this user only', async () => {
  const folder = join(ownFolder(), 'new', 'data');
  await open(folder);
  expect(statSync(folder).mode & 0o777).toBe(0o700);
});

test('every write waits until the disk has flushed', async () => {
  const batch = vi.spyOn(ClassicLevel.prototype, 'batch');
  onTestFinished(() => batch.mockRestore());
  const store = await open(ownFolder());
  await store.createNight(record, Uint8Array.of(1));
  await store.append(night, Uint8Array.of(2));
  await store.compact(night, Uint8Array.of(3));
  await store.putDevice('hash', {
    night,
    role: 'lead',
    person: asId<PersonId>('p'),
    name: 'Noor',
    pairedAt: 1,
  });
  await store.deleteDevice('hash');
  expect(batch.mock.calls.map((call) => (call as unknown[])[1])).toEqual(Array(5).fill({ sync: true }));
});

test('after a write that failed the store opens itself anew, and nothing that was written before is lost', async () => {
  const store = await open(ownFolder());
  await store.createNight(record, Uint8Array.of(1));
  const batch = vi.spyOn(ClassicLevel.prototype, 'batch').mockRejectedValueOnce(new Error('full') as never);
  onTestFinished(() => batch.mockRestore());
  await expect(store.append(night, Uint8Array.of(2))).rejects.toThrow('full');
  await store.append(night, Uint8Array.of(3));
  expect((await store.loadNight(night)).updates).toEqual([Uint8Array.of(1), Uint8Array.of(3)]);
});
