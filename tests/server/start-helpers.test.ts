import { mkdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isBuilt } from '../../server/build-client.mjs';
import { isInstalled, tooOld } from '../../server/install.mjs';
import { ownFolder } from '../support/server-folder.ts';

/** Writes a file as of a time in seconds. */
function put(root: string, path: string, atS: number, text = ''): void {
  mkdirSync(join(root, path, '..'), { recursive: true });
  writeFileSync(join(root, path), text);
  utimesSync(join(root, path), atS, atS);
}

test('the versions of Node that may run it are those of package.json', () => {
  const { engines } = JSON.parse(readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8'));
  expect(engines.node).toBe('>=20.19 <21 || >=22.12');
  for (const version of ['v20.19.0', '20.20.2', 'v22.12.0', 'v23.0.0', 'v24.1.0'])
    expect(tooOld(version)).toBeNull();
  for (const version of ['v18.20.0', 'v20.18.9', 'v21.7.0', 'v22.11.0', 'v16.0.0'])
    expect(tooOld(version)).toContain(version);
});

test('packages are installed when npm has finished after the lock file last changed, and no longer when that changes', () => {
  const root = ownFolder();
  put(root, 'package-lock.json', 100, 'one');
  expect(isInstalled(root)).toBe(false);
  put(root, 'node_modules/some-package/index.js', 200);
  expect(isInstalled(root)).toBe(false); // broken off before npm finished
  put(root, 'node_modules/.package-lock.json', 200);
  expect(isInstalled(root)).toBe(true);
  put(root, 'package-lock.json', 300, 'one'); // touched, not changed
  expect(isInstalled(root)).toBe(true);
  put(root, 'package-lock.json', 100, 'two'); // changed, whatever its date
  expect(isInstalled(root)).toBe(false);
});

test('packages that npm installed before the lock file changed are not those it asks for', () => {
  const root = ownFolder();
  put(root, 'package-lock.json', 300, 'one');
  put(root, 'node_modules/.package-lock.json', 200);
  expect(isInstalled(root)).toBe(false);
});

test('the client is built when its page is there and newer than everything it is made of', () => {
  const root = ownFolder();
  for (const source of ['client/a/b.ts', 'shared/c.ts', 'core/d/e/f.ts', 'package-lock.json'])
    put(root, source, 100);
  expect(isBuilt(root)).toBe(false);
  put(root, '.build/client/index.html', 200);
  expect(isBuilt(root)).toBe(true);
  for (const source of ['client/a/b.ts', 'shared/c.ts', 'core/d/e/f.ts', 'package-lock.json']) {
    put(root, source, 300);
    expect(isBuilt(root), source).toBe(false);
    put(root, source, 100);
  }
  put(root, 'tests/x.ts', 300);
  expect(isBuilt(root)).toBe(true);
});
