import { describe, expect, it } from 'vitest';
import { textOf } from '../support/rules-tree.ts';

/** Two copies of any of these fail in ways that nobody finds: types that are not equal to themselves, two registries. */
const ONE_COPY = ['yjs', 'lib0', 'ws', 'y-protocols', 'preact'];

type Lock = { readonly packages: Readonly<Record<string, { readonly version?: string }>> };

function isLock(value: unknown): value is Lock {
  return typeof value === 'object' && value !== null && 'packages' in value;
}

/** Where a package is installed, with its version: one line per copy. */
function copiesOf(name: string, lock: Lock): string[] {
  return Object.entries(lock.packages)
    .filter(([path]) => path === `node_modules/${name}` || path.endsWith(`/node_modules/${name}`))
    .map(([path, { version }]) => `${path} ${version}`);
}

describe('one copy of what must be one', () => {
  it.each(ONE_COPY)('package-lock.json holds one %s', (name) => {
    const lock: unknown = JSON.parse(textOf('package-lock.json'));
    if (!isLock(lock)) throw new Error('package-lock.json has no "packages".');
    expect(copiesOf(name, lock)).toHaveLength(1);
  });

  it('would notice a second copy, and does not mistake another name for it', () => {
    const lock = {
      packages: {
        'node_modules/yjs': { version: '13.0.0' },
        'node_modules/not-yjs': { version: '1.0.0' },
        'node_modules/a/node_modules/yjs': { version: '13.0.1' },
      },
    };
    expect(copiesOf('yjs', lock)).toEqual([
      'node_modules/yjs 13.0.0',
      'node_modules/a/node_modules/yjs 13.0.1',
    ]);
  });
});
