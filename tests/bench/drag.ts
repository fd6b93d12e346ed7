import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CDPSession, chromium, type Page } from '@playwright/test';
import { findChromium } from '../find-chromium.mjs';
import { spread, spreadLine } from './percentiles.ts';
import { runUntil } from './processes.ts';

const DRAG_MS = 2000;
const RUNS = 5;
/** A phone of the lower middle against a desk machine, as the browser's own tools have it. */
const SLOWER = 4;
/** Longer than this and a finger feels it; the browser reports nothing shorter. */
const LONG_TASK_MS = 50;

declare global {
  interface Window {
    dragged: { longMs: number[]; frames: number; pictures: number };
  }
}

interface Drag {
  readonly longMs: readonly number[];
  readonly framesPerS: number;
  readonly picturesPerS: number;
}

/**
 * The page notes its long tasks, its frames and every picture of the camera's view that it draws. Handed over as
 * text: what runs this file gives each function a name by a helper of its own, which the page does not have.
 */
const NOTE = `
  window.dragged = { longMs: [], frames: 0, pictures: 0 };
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) window.dragged.longMs.push(duration);
  }).observe({ type: 'longtask' });
  new MutationObserver(() => {
    window.dragged.pictures += 1;
  }).observe(document.querySelector('.frame-inset canvas'), { attributes: true, attributeFilter: ['width'] });
  requestAnimationFrame(function frame() {
    window.dragged.frames += 1;
    requestAnimationFrame(frame);
  });
`;

const nextFrame = (lead: Page) =>
  lead.evaluate(() => new Promise<void>((resolve) => requestAnimationFrame(() => resolve())));

/** A finger goes down, round a circle with a move in every frame, and up. */
async function circle(lead: Page, session: CDPSession): Promise<void> {
  const box = await lead.locator('.plan').boundingBox();
  if (!box) throw new Error('no plan');
  const at = (turns: number) => ({
    x: box.x + box.width * (0.6 + 0.25 * Math.cos(2 * Math.PI * turns)),
    y: box.y + box.height * (0.62 + 0.2 * Math.sin(2 * Math.PI * turns)),
    id: 0,
  });
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', turns: number | null) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: turns === null ? [] : [at(turns)] });
  await send('touchStart', 0);
  const began = performance.now();
  for (let ms = 0; ms < DRAG_MS; ms = performance.now() - began) {
    await send('touchMove', ms / DRAG_MS);
    await nextFrame(lead);
  }
  await send('touchEnd', null);
}

/** How many tasks felt long, and the longest of them. */
function longLine(name: string, taskMs: readonly number[]): string {
  const long = taskMs.filter((ms) => ms > LONG_TASK_MS);
  const longest = long.length > 0 ? `${Math.max(...long).toFixed(0)} ms` : `at most ${LONG_TASK_MS} ms`;
  return `${name}: ${long.length} tasks over ${LONG_TASK_MS} ms, the longest ${longest}`;
}

async function oneDrag(lead: Page, session: CDPSession): Promise<Drag> {
  await lead.evaluate(() => Object.assign(window.dragged, { longMs: [], frames: 0, pictures: 0 }));
  const began = performance.now();
  await circle(lead, session);
  const tookS = (performance.now() - began) / 1000;
  // What the lifted finger sets going belongs to the drag.
  await nextFrame(lead);
  await nextFrame(lead);
  const { longMs, frames, pictures } = await lead.evaluate(() => window.dragged);
  return { longMs, framesPerS: frames / tookS, picturesPerS: pictures / tookS };
}

/**
 * The key dragged over the plan for two seconds on a page that is four times slower: tasks over 50 ms, frames drawn,
 * and pictures of the camera's view. The browser slows the page and not its workers: on a real phone of that speed
 * pictures come later, frames do not.
 */
export async function benchDrag(): Promise<string[]> {
  const { path, why } = findChromium();
  if (!path) return [`drag: not measured. ${why}`];
  const folder = await mkdtemp(join(tmpdir(), 'hushmark-bench-'));
  const link = /http:\/\/localhost:\d+\/#pair=\w+/;
  const server = await runUntil(['server/main.ts', '--port', '0', '--data', folder], link, /Press Enter/);
  const args = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'];
  const browser = await chromium.launch({ executablePath: path, args });
  try {
    const context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    const lead = await context.newPage();
    await lead.goto(server.match[0]);
    await lead.getByRole('button', { name: 'Join' }).click();
    await lead.locator('.frame-inset').waitFor();
    await lead.evaluate(NOTE);
    const session = await context.newCDPSession(lead);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    // The browser has compiled nothing yet: the first touch of the night is the slowest.
    const first = await oneDrag(lead, session);
    const drags: Drag[] = [];
    for (let run = 0; run < RUNS; run++) drags.push(await oneDrag(lead, session));
    const name = `drag, page ${SLOWER} × slower`;
    return [
      spreadLine(`${name}: frames`, spread(drags.map(({ framesPerS }) => framesPerS)), '/s'),
      spreadLine(`${name}: pictures`, spread(drags.map(({ picturesPerS }) => picturesPerS)), '/s'),
      longLine(
        `${name}, ${RUNS} drags`,
        drags.flatMap(({ longMs }) => longMs),
      ),
      longLine(`${name}, first touch of a fresh page`, first.longMs),
    ];
  } finally {
    await browser.close();
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  }
}
