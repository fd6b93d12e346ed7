import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, chromium } from '@playwright/test';
import { createServer } from '../../server/create-server.ts';
import { demoNight } from '../../server/nights/demo-night.ts';
import { createMemoryStore } from '../../server/store/memory-store.ts';
import { pairFragment } from '../../shared/messages/http.ts';
import type { Role } from '../../shared/roles.ts';
import { findChromium } from '../find-chromium.mjs';

const BUILT = join(import.meta.dirname, '..', '..', '.build', 'client');

/** The files of the app that a phone fetches until its face stands, in bytes as they travel (gzip, level 9). */
async function loadOf(browser: Browser, link: string, face: string): Promise<number> {
  const page = await (await browser.newContext()).newPage();
  const fetched = new Set<string>();
  page.on('response', (response) => {
    const { pathname } = new URL(response.url());
    if (pathname.startsWith('/assets/')) fetched.add(pathname);
  });
  await page.goto(link);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.locator(face).first().waitFor();
  const files = ['index.html', ...fetched];
  return files.reduce((sum, file) => sum + gzipSync(readFileSync(join(BUILT, file)), { level: 9 }).length, 0);
}

/** The size of each face's first load. */
export async function benchFirstLoad(): Promise<string[]> {
  const { path, why } = findChromium();
  if (!path) return [`first load: not measured. ${why}`];
  const server = await createServer({
    port: 0,
    store: createMemoryStore(),
    clientDirectory: BUILT,
    firstNight: demoNight('2026-05-16'),
  });
  const browser = await chromium.launch({ executablePath: path, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const night = server.nights()[0];
    if (!night) return ['first load: the server holds no night'];
    const lines: string[] = [];
    for (const role of ['lead', 'assistant'] as const satisfies readonly Role[]) {
      const link = `${server.url}/${pairFragment(server.mint(night.id, role))}`;
      const bytes = await loadOf(browser, link, `.${role}-face`);
      lines.push(
        `${`first load of the ${role}'s face, gzip`.padEnd(46)} ${(bytes / 1000).toFixed(1).padStart(8)} kB`,
      );
    }
    return lines;
  } finally {
    await browser.close();
    await server.close();
  }
}
