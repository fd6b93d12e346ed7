import { type CDPSession, chromium, type Page } from '@playwright/test';
import { createServer } from '../../server/create-server.ts';
import { demoNight } from '../../server/nights/demo-night.ts';
import { createMemoryStore } from '../../server/store/memory-store.ts';
import { pairFragment } from '../../shared/messages/http.ts';
import { findChromium } from '../find-chromium.mjs';
import { spread, spreadLine } from './percentiles.ts';

const DRAG_MS = 2000;
const DRAGS = 5;
const OPENINGS = 9;
const SLOWER = 4;
/** Longer than this and a finger feels it; the browser reports nothing shorter. */
const LONG_TASK_MS = 50;

/** Notes long tasks and frames; text, since what runs this file gives functions a helper that the page lacks. */
const NOTE = `
  window.noted = { longMs: [], frames: 0 };
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) window.noted.longMs.push(duration);
  }).observe({ type: 'longtask' });
  requestAnimationFrame(function frame() {
    window.noted.frames += 1;
    requestAnimationFrame(frame);
  });
`;

/** From the press on the key to the first frame in which every thing is on the plan. */
const OPEN = `
  new Promise((resolve) => {
    const key = [...document.querySelectorAll('button')].find((button) => button.textContent === 'Plan of the room');
    const began = performance.now();
    key.click();
    requestAnimationFrame(function look() {
      const there = document.querySelectorAll('.plan-editor .feature').length;
      if (there >= COUNT) requestAnimationFrame(() => resolve(performance.now() - began));
      else requestAnimationFrame(look);
    });
  })
`;

declare global {
  interface Window {
    noted: { longMs: number[]; frames: number };
  }
}

/** The demo night with a hall large enough for this many tables, in rows. */
function nightWith(count: number) {
  const night = demoNight('2026-05-16');
  const [table] = Object.values(night.features).filter(({ kind }) => kind === 'table');
  if (!table) throw new Error('the demo night has no table');
  const columns = Math.ceil(Math.sqrt(count * 1.5));
  const [widthM, depthM] = [columns * 3 + 3, Math.ceil(count / columns) * 3 + 3];
  const features = Object.fromEntries(
    Array.from({ length: count }, (_, index) => {
      const at = { x: 3 + (index % columns) * 3, y: 3 + Math.floor(index / columns) * 3 };
      return [`table-${index}`, { ...table, name: `Table ${index + 1}`, at }];
    }),
  );
  const outline = [
    { x: 0, y: 0 },
    { x: widthM, y: 0 },
    { x: widthM, y: depthM },
    { x: 0, y: depthM },
  ];
  return { ...night, room: { ...night.room, outline }, features };
}

/** A lead's phone that holds a night with this many things, at the panel from which the plan is opened. */
async function withLead<Result>(
  path: string,
  count: number,
  work: (lead: Page, session: CDPSession) => Promise<Result>,
): Promise<Result> {
  const server = await createServer({
    port: 0,
    store: createMemoryStore(),
    clientDirectory: `${import.meta.dirname}/../../.build/client`,
    firstNight: nightWith(count),
  });
  const browser = await chromium.launch({
    executablePath: path,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  });
  try {
    const context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    const lead = await context.newPage();
    const night = server.nights()[0];
    if (!night) throw new Error('the server holds no night');
    await lead.goto(`${server.url}/${pairFragment(server.mint(night.id, 'lead'))}`);
    await lead.getByRole('button', { name: 'Join' }).click();
    await lead.locator('.lead-face .stand-key').first().waitFor();
    await lead.evaluate(NOTE);
    const session = await context.newCDPSession(lead);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await lead.getByRole('button', { name: 'More', exact: true }).click();
    return await work(lead, session);
  } finally {
    await browser.close();
    await server.close();
  }
}

const nextFrame = (lead: Page) =>
  lead.evaluate(() => new Promise<void>((resolve) => requestAnimationFrame(() => resolve())));

/** The middle one of many things is taken hold of and led round a circle with a move in every frame. */
async function oneDrag(lead: Page, session: CDPSession): Promise<{ framesPerS: number; longMs: number[] }> {
  const things = lead.locator('.plan-editor .feature');
  const box = await things.nth(Math.floor((await things.count()) / 2)).boundingBox();
  if (!box) throw new Error('nothing to drag');
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', turns: number | null) => {
    const angle = 2 * Math.PI * (turns ?? 0);
    const at = { x: from.x + 60 * Math.sin(angle), y: from.y + 60 * (1 - Math.cos(angle)), id: 0 };
    return session.send('Input.dispatchTouchEvent', { type, touchPoints: turns === null ? [] : [at] });
  };
  await lead.evaluate(() => Object.assign(window.noted, { longMs: [], frames: 0 }));
  const began = performance.now();
  await send('touchStart', 0);
  for (let ms = 0; ms < DRAG_MS; ms = performance.now() - began) {
    await send('touchMove', ms / DRAG_MS);
    await nextFrame(lead);
  }
  const tookS = (performance.now() - began) / 1000;
  await send('touchEnd', null);
  await nextFrame(lead);
  await nextFrame(lead);
  const { frames, longMs } = await lead.evaluate(() => window.noted);
  return { framesPerS: frames / tookS, longMs };
}

/** A table among 60 dragged across the plan. */
const dragAmong60 = (path: string) =>
  withLead(path, 60, async (lead, session) => {
    await lead.getByRole('button', { name: 'Plan of the room' }).click();
    await lead.locator('.plan-editor .feature').first().waitFor();
    const drags = [];
    for (let run = 0; run < DRAGS; run++) drags.push(await oneDrag(lead, session));
    return drags;
  });

/** The plan of 200 things opened again and again; the first opening fetches the editor's code besides. */
const openWith200 = (path: string) =>
  withLead(path, 200, async (lead) => {
    const tookMs: number[] = [];
    for (let run = 0; run < OPENINGS; run++) {
      await lead.getByRole('button', { name: 'Plan of the room' }).waitFor();
      tookMs.push(Number(await lead.evaluate(OPEN.replace('COUNT', '200'))));
      await lead.getByRole('button', { name: 'Done', exact: true }).click();
      await lead.getByRole('button', { name: 'More', exact: true }).click();
    }
    return tookMs;
  });

/** The plan's editor on a page that is four times slower: a drag among 60 things, and 200 things opened. */
export async function benchPlan(): Promise<string[]> {
  const { path, why } = findChromium();
  if (!path) return [`plan: not measured. ${why}`];
  const drags = await dragAmong60(path);
  const [firstMs = 0, ...openMs] = await openWith200(path);
  const long = drags.flatMap(({ longMs }) => longMs).filter((ms) => ms > LONG_TASK_MS);
  const longest = long.length > 0 ? `${Math.max(...long).toFixed(0)} ms` : `at most ${LONG_TASK_MS} ms`;
  const name = `plan, page ${SLOWER} × slower`;
  return [
    spreadLine(`${name}: frames, 1 of 60`, spread(drags.map(({ framesPerS }) => framesPerS)), '/s'),
    `${name}, ${DRAGS} drags: ${long.length} tasks over ${LONG_TASK_MS} ms, the longest ${longest}`,
    spreadLine(`${name}: 200 things opened`, spread(openMs), 'ms'),
    `${name}: 200 things opened for the first time, with the code ${firstMs.toFixed(0)} ms`,
  ];
}
