import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { build } from 'vite';
import { createServer, type HushmarkServer } from '../../server/create-server.ts';
import { demoNight } from '../../server/nights/demo-night.ts';
import { createMemoryStore } from '../../server/store/memory-store.ts';
import { dxfText, lwpolyline } from '../client/import/dxf-text.ts';
import { pdfText } from './support/pdf-text.ts';

// A page that has only the reader of plans, built and served as the app is, with the app's own security headers.
test.describe.configure({ mode: 'default' });
const MAIN = new URL('./support/import-page/main.ts', import.meta.url);
let folder: string;
let server: HushmarkServer;

test.beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hushmark-import-'));
  await build({
    configFile: `${import.meta.dirname}/../../client/vite.config.ts`,
    root: fileURLToPath(new URL('.', MAIN)),
    publicDir: false,
    logLevel: 'warn',
    build: { outDir: folder },
  });
  server = await createServer({
    port: 0,
    store: createMemoryStore(),
    clientDirectory: folder,
    firstNight: demoNight('2026-05-16'),
  });
});

test.afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

/** What the page tried and was not allowed to. */
const forbidden: string[] = [];
/** What it asked for from elsewhere. */
const elsewhere: string[] = [];

test.beforeEach(async ({ page }) => {
  forbidden.length = 0;
  elsewhere.length = 0;
  page.on('console', (message) => {
    if (/Content Security Policy|Refused/.test(message.text())) forbidden.push(message.text());
  });
  page.on('pageerror', (error) => forbidden.push(error.message));
  page.on('request', (request) => {
    if (!/^(?:blob|data):/.test(request.url()) && !request.url().startsWith(server.url))
      elsewhere.push(request.url());
  });
  await page.goto(server.url);
});

/** Chooses a file on the page and waits for what it turned out to be. */
async function read(page: Page, content: string | Buffer): Promise<Record<string, unknown>> {
  const output = page.locator('output');
  await output.evaluate((element) => element.replaceChildren());
  await page.getByLabel('Plan').setInputFiles({
    name: 'plan',
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(content),
  });
  await expect(output).not.toBeEmpty();
  return JSON.parse((await output.textContent()) ?? '');
}

test('the first page of a PDF becomes a picture, in a worker of ours', async ({ page }) => {
  // An A4 sheet, landscape; a black box about its middle.
  const pdf = pdfText({ width: 842, height: 595, content: '0 g 221 147 400 300 re f' });
  const picture = await read(page, pdf);
  expect(picture).toMatchObject({
    kind: 'picture',
    widthPx: 2000,
    middle: [0, 0, 0],
    corner: [255, 255, 255],
  });
  expect(Number(picture.heightPx) / 2000).toBeCloseTo(595 / 842, 2);
  expect([...forbidden, ...elsewhere]).toEqual([]);
});

test('a PDF that is broken, or says only that it is one, gives a reason, and the next file is read', async ({
  page,
}) => {
  for (const broken of ['%PDF-1.7\n', pdfText({ width: 9, height: 9, content: '' }).slice(0, 60)])
    expect(await read(page, broken)).toMatchObject({
      kind: 'trouble',
      reason: expect.stringContaining('PDF'),
    });
  expect(await read(page, pdfText({ width: 300, height: 600, content: '9 9 m 99 99 l S' }))).toMatchObject({
    widthPx: 1000,
    heightPx: 2000,
  });
});

test('a PDF without anything to be seen is no plan', async ({ page }) => {
  expect(await read(page, pdfText({ width: 300, height: 600, content: '' }))).toMatchObject({
    reason: expect.stringContaining('Nothing can be seen'),
  });
});

test('a large picture is made smaller, in its own shape', async ({ page }) => {
  const large = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [3000, 1500];
    return canvas.toDataURL('image/png');
  });
  const opened = await read(page, Buffer.from(large.slice(large.indexOf(',') + 1), 'base64'));
  expect(opened).toMatchObject({ kind: 'picture', widthPx: 2000, heightPx: 1000 });
});

test('a picture is opened, whatever it is called', async ({ page }) => {
  const png =
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
  expect(await read(page, Buffer.from(png, 'base64'))).toMatchObject({
    kind: 'picture',
    widthPx: 1,
    heightPx: 1,
  });
  expect(await read(page, Buffer.from(png, 'base64').subarray(0, 30))).toMatchObject({ kind: 'trouble' });
});

test('a DXF drawing is read', async ({ page }) => {
  const hall = dxfText(
    [
      lwpolyline([
        [0, 0],
        [18000, 0],
        [18000, 12000],
        [0, 12000],
      ]),
    ],
    { insunits: 4 },
  );
  expect(await read(page, hall)).toMatchObject({ kind: 'shapes', unit: 'mm' });
});

test('an SVG drawing is read; nothing in it runs, nothing is fetched', async ({ page }) => {
  const svg = `<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://elsewhere.invalid/svg.dtd">
    <?xml-stylesheet href="http://elsewhere.invalid/a.css"?>
    <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="180mm" height="120mm"
      viewBox="0 0 18 12" onload="document.title='ran'">
      <script>document.title = 'ran'</script><script href="http://elsewhere.invalid/a.js"/>
      <style>@import url(http://elsewhere.invalid/b.css);</style>
      <image href="http://elsewhere.invalid/a.png" onerror="document.title='ran'" width="1" height="1"/>
      <foreignObject><iframe xmlns="http://www.w3.org/1999/xhtml" src="http://elsewhere.invalid/"/></foreignObject>
      <use xlink:href="http://elsewhere.invalid/a.svg#a"/>
      <g id="tables" transform="translate(2 1)"><circle r="0.9" onclick="document.title='ran'"/></g>
      <rect id="hall" width="18" height="12"/>
    </svg>`;
  const drawn = await read(page, svg);
  expect(drawn).toMatchObject({
    kind: 'shapes',
    unit: 'mm',
    boxNative: { left: 0, top: 0, right: 180, bottom: 120 },
    leftOut: 3,
  });
  expect((drawn.shapes as { name: string }[]).map(({ name }) => name)).toEqual(['tables', 'hall']);
  expect(await page.title()).toBe('Reading plans');
  expect([...forbidden, ...elsewhere]).toEqual([]);
});

test('an SVG that is broken, or grows without end, gives a reason, and the page goes on', async ({
  page,
}) => {
  const entities = Array.from(
    { length: 12 },
    (_, level) => `<!ENTITY e${level + 1} "${`&e${level};`.repeat(10)}">`,
  );
  const bomb = `<!DOCTYPE svg [<!ENTITY e0 "ha">${entities.join('')}]><svg xmlns="http://www.w3.org/2000/svg">&e12;</svg>`;
  const nested = `<svg xmlns="http://www.w3.org/2000/svg">${'<g>'.repeat(5000)}${'</g>'.repeat(5000)}</svg>`;
  for (const svg of [
    bomb,
    nested,
    '<svg xmlns="http://www.w3.org/2000/svg"><g></svg>',
    '<svg width="1">&nbsp;</svg>',
  ])
    expect(await read(page, svg)).toMatchObject({ kind: 'trouble' });
  const many = `<svg xmlns="http://www.w3.org/2000/svg">${'<rect width="2" height="2"/>'.repeat(60_000)}</svg>`;
  expect(await read(page, many)).toMatchObject({ reason: expect.stringContaining('more than 50000 things') });
  // The browser's own page about broken XML has styles of its own, which are refused: only that is let pass.
  expect([...forbidden.filter((said) => !said.includes('inline style')), ...elsewhere]).toEqual([]);
});
