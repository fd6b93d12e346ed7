// `npm start`: installs, builds and runs the server, from a fresh clone. Plain Node: nothing may be installed yet.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ensureBuilt } from './build-client.mjs';
import { ensureInstalled, tooOld } from './install.mjs';

const root = join(import.meta.dirname, '..');

function fail(message) {
  console.error(message);
  process.exit(1);
}

const reason = tooOld(process.version);
if (reason) fail(reason);
if (!ensureInstalled(root)) fail('The packages could not be installed; npm says why above.');
if (!ensureBuilt(root)) fail('The app could not be built; the lines above say why.');

const server = spawn(
  process.execPath,
  ['--import', 'tsx', join('server', 'main.ts'), ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit' },
);
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => server.kill(signal));
server.on('exit', (code, signal) => process.exit(signal ? 1 : (code ?? 1)));
