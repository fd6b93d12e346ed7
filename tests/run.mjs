// `npm test`: installs what the tests need, finds a browser, runs unit, sync and browser tests, and adds them up.
// Plain Node, builtins only: it must run in a fresh clone before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureBuilt } from '../server/build-client.mjs';
import { ensureInstalled } from '../server/install.mjs';
import { findChromium } from './find-chromium.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const results = join(root, '.build', 'test-results');

function run(command, args, env = {}) {
  const outcome = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  return outcome.status ?? 1;
}

/** Passed and failed of one runner, from the report it wrote; a runner without a report has failed. */
function tally(name, read) {
  const path = join(results, `${name}.json`);
  if (!existsSync(path)) return { passed: 0, failed: 1, skipped: 0 };
  return read(JSON.parse(readFileSync(path, 'utf8')));
}

function giveUp(why) {
  console.error(`\n${why}\n\n0 passed, 1 failed`);
  process.exit(1);
}

if (!ensureInstalled(root)) giveUp('The packages could not be installed; npm says why above.');
if (process.argv.includes('--install-only')) process.exit(0);
const wanted = process.argv.slice(2);
const browser = findChromium();
if (!ensureBuilt(root)) giveUp('The app could not be built; the lines above say why.');
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const unitStatus = run('npx', [
  'vitest',
  'run',
  '--config',
  'tests/vitest.config.ts',
  ...wanted,
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${join(results, 'unit.json')}`,
]);
const unit = tally('unit', (report) => ({
  passed: report.numPassedTests,
  failed: report.numFailedTests + (report.numFailedTestSuites > 0 && report.numFailedTests === 0 ? 1 : 0),
  skipped: report.numPendingTests + report.numTodoTests,
}));

let faces = { passed: 0, failed: 0, skipped: 0 };
let facesStatus = 0;
if (wanted.length === 0) {
  if (browser.path) {
    facesStatus = run('npx', ['playwright', 'test', '--config', 'tests/playwright.config.ts'], {
      HUSHMARK_CHROMIUM: browser.path,
      PLAYWRIGHT_JSON_OUTPUT_NAME: join(results, 'faces.json'),
    });
    faces = tally('faces', ({ stats }) => ({
      passed: stats.expected,
      failed: stats.unexpected + stats.flaky,
      skipped: stats.skipped,
    }));
  } else {
    console.error(`\nThe browser tests need Chromium, and there is none.\n${browser.why}\n`);
    faces = { passed: 0, failed: 1, skipped: 0 };
    facesStatus = 1;
  }
}

const passed = unit.passed + faces.passed;
const skipped = unit.skipped + faces.skipped;
let failed = unit.failed + faces.failed;
if (failed === 0 && (unitStatus !== 0 || facesStatus !== 0)) failed = 1;
// A test that is skipped proves nothing, so it is counted with the failed.
console.log(`\n${passed} passed, ${failed + skipped} failed`);
process.exit(failed + skipped === 0 && passed > 0 ? 0 : 1);
