import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { findChromium } from '../find-chromium.mjs';
import { spread, spreadLine } from './percentiles.ts';
import { runUntil } from './processes.ts';

const TAPS = 150;
const WARM_UP = 15;

declare global {
  interface Window {
    taps: number[];
    drawn: number[];
  }
}

async function openPhone(browser: Browser, link: string, face: string): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  const page = await context.newPage();
  await page.goto(link);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.locator(face).first().waitFor();
  return page;
}

/** The lead's page notes when each press was let go; both pages count from the same epoch. */
const noteTaps = (lead: Page) =>
  lead.evaluate(() => {
    window.taps = [];
    addEventListener(
      'pointerup',
      (event) => window.taps.push(performance.timeOrigin + event.timeStamp),
      true,
    );
  });

/** The assistant's page notes when each new revision has been painted: the frame after the change, and what follows it. */
const noteDrawn = (assistant: Page) =>
  assistant.evaluate(() => {
    window.drawn = [];
    const channel = new MessageChannel();
    channel.port1.onmessage = () => window.drawn.push(performance.timeOrigin + performance.now());
    new MutationObserver(() => requestAnimationFrame(() => channel.port2.postMessage(null))).observe(
      document.body,
      {
        subtree: true,
        attributes: true,
        attributeFilter: ['data-revision'],
      },
    );
  });

async function tapAndWait(lead: Page, assistant: Page, name: string, revision: number): Promise<number> {
  await lead.getByRole('button', { name }).tap();
  await assistant.locator(`[data-revision="${revision}"]`).waitFor();
  await assistant.waitForFunction((count) => window.drawn.length >= count, revision - 1);
  const tapped = await lead.evaluate(() => window.taps.at(-1) ?? Number.NaN);
  const drawn = await assistant.evaluate(() => window.drawn.at(-1) ?? Number.NaN);
  return drawn - tapped;
}

/** From a press on the lead's phone to its effect painted on the assistant's: nudges, up and down in turn. */
export async function benchTapToDrawn(): Promise<string[]> {
  const { path, why } = findChromium();
  if (!path) return [`tap to drawn: not measured. ${why}`];
  const folder = await mkdtemp(join(tmpdir(), 'hushmark-bench-'));
  const link = /http:\/\/localhost:\d+\/#pair=\w+/;
  const server = await runUntil(['server/main.ts', '--port', '0', '--data', folder], link, /Press Enter/);
  const args = [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
  ];
  const browser = await chromium.launch({ executablePath: path, args });
  try {
    const lead = await openPhone(browser, server.match[0], '.lead-face .stand-key');
    await lead.getByRole('button', { name: 'More' }).click();
    await lead.getByRole('button', { name: 'Code for' }).click();
    const shown = new URL((await lead.locator('.pair-link a').getAttribute('href')) ?? '');
    const own = `${new URL(lead.url()).origin}/${shown.hash}`;
    const assistant = await openPhone(browser, own, '.assistant-face .nothing');
    await lead.getByRole('button', { name: 'Close' }).click();
    await lead.getByRole('button', { name: 'Close' }).click();
    await lead.getByRole('button', { name: 'Nudge' }).click();
    await lead.getByRole('button', { name: 'Up 10 cm' }).tap();
    await assistant.locator('[data-revision="1"]').waitFor();
    await noteTaps(lead);
    await noteDrawn(assistant);
    const taken: number[] = [];
    for (let tap = 0; tap < TAPS + WARM_UP; tap++) {
      const name = tap % 2 === 0 ? 'Down 10 cm' : 'Up 10 cm';
      const ms = await tapAndWait(lead, assistant, name, tap + 2);
      if (tap >= WARM_UP) taken.push(ms);
    }
    return [spreadLine('tap to painted on the other phone, Chromium', spread(taken), 'ms')];
  } finally {
    await browser.close();
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  }
}
