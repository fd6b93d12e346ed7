// Finds a Chromium for the browser tests: one that is named or lies about, else Playwright's own, else Debian's
// package where this process may install it. Says in plain words why there is none.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
const PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

function onThePath() {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return (
    [...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))), ...PLACES].find(existsSync) ??
    null
  );
}

function playwrights() {
  const script = "import('@playwright/test').then(({ chromium }) => console.log(chromium.executablePath()))";
  const path = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' }).stdout?.trim();
  return path && existsSync(path) ? path : null;
}

function quiet(command, args) {
  return (
    spawnSync(command, args, {
      stdio: 'ignore',
      timeout: 300_000,
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0
  );
}

/** @returns {{ path: string | null, why: string }} */
export function findChromium() {
  const named = process.env.HUSHMARK_CHROMIUM;
  if (named)
    return existsSync(named)
      ? { path: named, why: '' }
      : { path: null, why: `HUSHMARK_CHROMIUM names ${named}, which is not there.` };
  const found = onThePath() ?? playwrights();
  if (found) return { path: found, why: '' };
  console.log('No Chromium found: fetching the one that Playwright brings …');
  if (quiet('npx', ['playwright', 'install', 'chromium-headless-shell', 'chromium'])) {
    const own = playwrights();
    if (own) return { path: own, why: '' };
  }
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log("That did not work: installing Debian's package chromium …");
    quiet('apt-get', ['update']);
    if (quiet('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'])) {
      const debians = onThePath();
      if (debians) return { path: debians, why: '' };
    }
  }
  return {
    path: null,
    why: 'Install Chromium (on Debian as root: apt-get install chromium), or name one in HUSHMARK_CHROMIUM, and run npm test again.',
  };
}
