import { execFile } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { projectPath } from '../support/document-night.ts';

const run = promisify(execFile);

/** What a fresh Node prints while it loads these. */
async function printedBy(code: string): Promise<string> {
  const { stdout, stderr } = await run(
    process.execPath,
    ['--import', 'tsx', '--input-type=module', '-e', code],
    {
      cwd: projectPath(''),
    },
  );
  return stdout + stderr;
}

/** Every copy of a package, however deep it is nested. */
function copiesOf(name: string, folder = 'node_modules'): string[] {
  const here = existsSync(projectPath(`${folder}/${name}/package.json`)) ? [`${folder}/${name}`] : [];
  const packages = readdirSync(projectPath(folder), { withFileTypes: true }).flatMap((entry) => {
    if (!entry.isDirectory() || entry.name.startsWith('.')) return [];
    if (!entry.name.startsWith('@')) return [`${folder}/${entry.name}`];
    return readdirSync(projectPath(`${folder}/${entry.name}`)).map(
      (inner) => `${folder}/${entry.name}/${inner}`,
    );
  });
  const nested = packages
    .map((path) => `${path}/node_modules`)
    .filter((path) => existsSync(projectPath(path)))
    .flatMap((path) => copiesOf(name, path));
  return [...here, ...nested];
}

// Two copies of Yjs look alike and fail each other's instance checks: documents then merge wrongly.
const WARNING = 'Yjs was already imported';

describe('one copy of Yjs', () => {
  it('is installed, and one of what the protocol needs beside it, so that both ends share their classes', () => {
    for (const name of ['yjs', 'lib0', 'y-protocols', 'y-websocket'])
      expect(copiesOf(name), name).toEqual([`node_modules/${name}`]);
  });

  it('is loaded when the server, the shared commands and all that the phones sync with are loaded together', async () => {
    const printed = await printedBy(`
      await import('./server/create-server.ts');
      await import('./shared/document/commands/call-carry.ts');
      await import('y-websocket');
      await import('y-indexeddb');
      await import('y-protocols/sync');
      console.log('all loaded');`);
    expect(printed).toContain('all loaded');
    expect(printed).not.toContain(WARNING);
  });

  it('is loaded by what the phones hold their nights with', async () => {
    const printed = await printedBy(`
      await import('./client/session/sync-link.ts');
      await import('./client/session/keeping.ts');
      await import('./shared/document/snapshot.ts');
      console.log('all loaded');`);
    expect(printed).toContain('all loaded');
    expect(printed).not.toContain(WARNING);
  });

  it('would be missed: a second copy makes Yjs print the words that these tests look for', async () => {
    const printed = await printedBy(`
      import { createRequire } from 'node:module';
      await import('yjs');
      createRequire(process.cwd() + '/package.json')('yjs');`);
    expect(printed).toContain(WARNING);
  });
});
