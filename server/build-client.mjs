// Builds the client when it is missing or older than what it is made of. Plain Node.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const BUILT = join('.build', 'client', 'index.html');
const SOURCES = ['client', 'shared', 'core', 'package-lock.json'];

/** When the newest file at or below a path was changed, in milliseconds; 0 where there is none. */
function newest(path) {
  if (!existsSync(path)) return 0;
  if (!statSync(path).isDirectory()) return statSync(path).mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/** Is the built client there, and newer than every file it is made of? */
export function isBuilt(root) {
  const built = join(root, BUILT);
  if (!existsSync(built)) return false;
  const builtAt = statSync(built).mtimeMs;
  return SOURCES.every((source) => newest(join(root, source)) <= builtAt);
}

/** Builds the client if need be. False when that failed; the builder has said why. */
export function ensureBuilt(root) {
  if (isBuilt(root)) return true;
  console.log('Building the app ...');
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const { status } = spawnSync(
    process.execPath,
    [vite, 'build', '--config', join('client', 'vite.config.ts'), '--logLevel', 'warn'],
    { cwd: root, stdio: 'inherit' },
  );
  return status === 0;
}
