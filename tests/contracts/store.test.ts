import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { openLevelStore } from '../../server/store/level-store.ts';
import { createMemoryStore } from '../../server/store/memory-store.ts';
import { ownFolder } from '../support/server-folder.ts';
import { storeContract } from './store.contract.ts';

describe('memory store', () => storeContract(async () => createMemoryStore()));

describe('level store', () =>
  storeContract(async () => {
    const folder = ownFolder();
    const store = await openLevelStore(folder);
    onTestFinished(() => store.close());
    return store;
  }));

test('every store there is has been put to the contract', () => {
  const folder = join(import.meta.dirname, '..', '..', 'server', 'store');
  const makers = readdirSync(folder).filter((name) =>
    /:\s*(Promise<)?Store>?\s*\{$/m.test(readFileSync(join(folder, name), 'utf8')),
  );
  expect(makers.sort()).toEqual(['level-store.ts', 'memory-store.ts']);
});
