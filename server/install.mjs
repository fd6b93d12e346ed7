// Brings the packages of package-lock.json into node_modules. Plain Node: it runs before there are any.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Where npm itself notes what it has installed; written last, so its date is that of a finished installation. */
const NPM_NOTE = join('node_modules', '.package-lock.json');
const STAMP = join('node_modules', '.hushmark-lock');
const LOCK = 'package-lock.json';

/** A reason why this Node cannot run the server; null if it can. The versions are those of package.json's engines. */
export function tooOld(version) {
  const [major = 0, minor = 0] = version.replace(/^v/, '').split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  return fits
    ? null
    : `Hushmark needs Node 20.19 or newer (of Node 22: 22.12 or newer). This is Node ${version}.`;
}

/** Is node_modules what package-lock.json asks for? */
export function isInstalled(root) {
  const note = join(root, NPM_NOTE);
  if (!existsSync(note)) return false;
  const hash = createHash('sha256')
    .update(readFileSync(join(root, LOCK)))
    .digest('hex');
  const stamp = join(root, STAMP);
  if (existsSync(stamp)) return readFileSync(stamp, 'utf8') === hash;
  // Somebody ran `npm ci` by hand: good if that was after the lock file changed last.
  if (statSync(note).mtimeMs < statSync(join(root, LOCK)).mtimeMs) return false;
  writeFileSync(stamp, hash);
  return true;
}

/** Runs `npm ci` if need be. False when that failed; npm has said why. */
export function ensureInstalled(root) {
  if (isInstalled(root)) return true;
  console.log('Installing packages (half a minute or more) ...');
  // Started by npm, its own program is named here; it need not be on the path.
  const npm = process.env.npm_execpath;
  const args = ['ci', '--no-audit', '--no-fund'];
  const options = { cwd: root, stdio: 'inherit' };
  const { status } = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  if (status !== 0) return false;
  const hash = createHash('sha256')
    .update(readFileSync(join(root, LOCK)))
    .digest('hex');
  writeFileSync(join(root, STAMP), hash);
  return true;
}
