import { expect, type Page } from '@playwright/test';
import { dxfText, lwpolyline } from '../client/import/dxf-text.ts';
import { key, openCard, openEditor, saidBy } from './support/editor.ts';
import { test } from './support/evening.ts';
import { PICTURE, pngOfRoom } from './support/room-picture.ts';

const chooseFile = (lead: Page, name: string, text: string) =>
  lead.locator('.editor-card input[type=file]').setInputFiles({
    name,
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(text),
  });

/** A finger presses a point of the picture, given in the picture's own px. */
async function pressPicture(lead: Page, x: number, y: number): Promise<void> {
  const box = await lead.locator('.trace canvas').boundingBox();
  if (!box) throw new Error('no picture');
  const position = { x: (x / PICTURE.width) * box.width, y: (y / PICTURE.height) * box.height };
  await lead.locator('.trace').tap({ position });
}

const CORNERS = [
  [PICTURE.left, PICTURE.top],
  [PICTURE.right, PICTURE.top],
  [PICTURE.right, PICTURE.bottom],
  [PICTURE.left, PICTURE.bottom],
] as const;

for (const screen of [
  { width: 390, height: 844 },
  { width: 844, height: 390 },
])
  test(`[PLAN5] a traced picture gives the room within 2 %, at ${screen.width} px`, async ({ evening }) => {
    const lead = await evening.phone('lead', screen);
    await openEditor(lead);
    await openCard(lead, 'From a file');
    await lead.locator('.editor-card input[type=file]').setInputFiles(await pngOfRoom(lead));
    const [first, second] = CORNERS;
    await pressPicture(lead, ...first);
    await pressPicture(lead, ...second);
    // Until the length is known there is no room for corners to be in.
    await pressPicture(lead, 500, 300);
    const length = lead.getByLabel('Its length in the room');
    await expect(length).toHaveValue('');
    await length.fill('40');
    await length.press('Enter');
    await expect(lead.locator('.editor-card')).toContainText(/may be off by [\d.]+ %/);
    await expect(key(lead, 'Use these corners')).toBeDisabled();
    for (const [x, y] of CORNERS) await pressPicture(lead, x, y);
    await key(lead, 'Use these corners').tap();
    await expect(saidBy(lead)).toContainText('The traced room.');
    await expect.poll(async () => (await evening.night()).features.length).toBe(0);
    const outline = (await evening.night()).room?.outline ?? [];
    expect(outline).toHaveLength(4);
    const [widthM, depthM] = (['x', 'y'] as const).map(
      (axis) => Math.max(...outline.map((c) => c[axis])) - Math.min(...outline.map((c) => c[axis])),
    );
    expect(Math.abs((widthM ?? 0) - 40) / 40).toBeLessThan(0.02);
    expect(Math.abs((depthM ?? 0) - 25) / 25).toBeLessThan(0.02);
    await key(lead, 'Undo').tap();
    await expect.poll(async () => (await evening.night()).features.length).toBeGreaterThan(10);
  });

test('a point of a picture is put by keys alone', async ({ evening }) => {
  const lead = await evening.phone('lead', { width: 1280, height: 800, touch: false });
  await openEditor(lead);
  await openCard(lead, 'From a file');
  await lead.locator('.editor-card input[type=file]').setInputFiles(await pngOfRoom(lead));
  await lead.locator('.trace').focus();
  // From the middle, eight long steps of a twentieth of the picture's longer side to each end of the top wall's line.
  for (let step = 0; step < 8; step++) await lead.keyboard.press('Shift+ArrowLeft');
  await lead.keyboard.press('Enter');
  for (let step = 0; step < 16; step++) await lead.keyboard.press('Shift+ArrowRight');
  await lead.keyboard.press('Enter');
  const dots = lead.locator('.trace circle');
  await expect(dots).toHaveCount(2);
  expect(await dots.evaluateAll((all) => all.map((dot) => Number(dot.getAttribute('cx'))))).toEqual([
    expect.closeTo(PICTURE.left, 6),
    expect.closeTo(PICTURE.right, 6),
  ]);
});

const WALLS = [
  [0, 0],
  [2000, 0],
  [2000, 1400],
  [0, 1400],
] as const;

test('[PLAN5] a DXF that does not say its unit asks for it, and is the room in the one that is chosen', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  await openCard(lead, 'From a file');
  await chooseFile(lead, 'hall.dxf', dxfText([lwpolyline(WALLS)]));
  await lead.getByText('The file does not say what its lengths are in').waitFor();
  await expect(key(lead, 'Use this room')).toHaveCount(0);
  await key(lead, 'centimetres').tap();
  await key(lead, 'Use this room').tap();
  await expect.poll(async () => (await evening.night()).room?.outline.length).toBe(4);
  const outline = (await evening.night()).room?.outline ?? [];
  expect(Math.max(...outline.map(({ x }) => x))).toBeCloseTo(20, 6);
  expect(Math.max(...outline.map(({ y }) => y))).toBeCloseTo(14, 6);
});

test('an SVG with a size gives the room and what stands in it, by name', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  await openCard(lead, 'From a file');
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="1600cm" height="900cm" viewBox="0 0 16 9">' +
    '<rect id="walls" x="0" y="0" width="16" height="9"/><rect id="Bar" x="1" y="1" width="4" height="1"/>' +
    '<circle id="Rose" cx="8" cy="5" r="0.9"/></svg>';
  await chooseFile(lead, 'hall.svg', svg);
  await key(lead, 'Use this room').tap();
  await expect.poll(async () => (await evening.night()).features.length).toBe(2);
  const { room, features } = await evening.night();
  expect(Math.max(...(room?.outline ?? []).map(({ x }) => x))).toBeCloseTo(16, 6);
  expect(Object.fromEntries(features.map(({ name, kind, at }) => [name, { kind, ...at }]))).toEqual({
    Bar: { kind: 'bar', x: expect.closeTo(3, 6), y: expect.closeTo(1.5, 6) },
    Rose: { kind: 'table', x: expect.closeTo(8, 2), y: expect.closeTo(5, 2) },
  });
});

test('[PLAN4] a broken or foreign file gets a clear error and changes nothing', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  await openCard(lead, 'From a file');
  const { room, features } = await evening.night();
  const trouble = lead.locator('.editor-card').getByRole('alert').first();
  const said = new Set<string>();
  for (const [name, text] of [
    ['hall.dxf', dxfText([lwpolyline(WALLS)]).slice(0, 90)],
    ['hall.svg', '<svg xmlns="http://www.w3.org/2000/svg"><rect width="3"'],
    ['hall.pdf', '%PDF-1.7\n'],
    ['hall.txt', 'tables for eighty, please'],
  ] as const) {
    await chooseFile(lead, name, text);
    await expect(trouble).not.toBeEmpty();
    said.add((await trouble.textContent()) ?? '');
    await expect(key(lead, 'Use this room')).toHaveCount(0);
    await key(lead, 'Back').tap();
    await key(lead, 'From a file').tap();
    await expect(trouble).toHaveCount(0);
  }
  // Each kind of file says what is wrong with it, not that something is.
  expect(said.size).toBeGreaterThanOrEqual(3);
  expect((await evening.night()).room).toEqual(room);
  expect((await evening.night()).features).toEqual(features);
  await expect(key(lead, 'Undo')).toBeDisabled();
});
