import { expect, type Locator, type Page } from '@playwright/test';
import { test } from './support/evening.ts';
import { backToSheet, level, openFromSheet, openSheet, row, textOf, type } from './support/light.ts';

async function openFrames(lead: Page): Promise<Locator> {
  if ((await lead.locator('.sheet-panel').count()) === 0) await openSheet(lead);
  return openFromSheet(lead, 'Test frames');
}

/** The subject's level on the light sheet, once it reads otherwise than before. */
async function subjectUnlike(lead: Page, before: string): Promise<string> {
  await backToSheet(lead);
  const cell = row(lead, 'Subject, all light');
  await expect(cell).not.toHaveText(before);
  return textOf(cell);
}

test('a test frame in two presses narrows the numbers; undo and taking out bring them back', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openSheet(lead);
  const before = await textOf(row(lead, 'Subject, all light'));
  const first = await level(lead, 'Subject, all light');
  const panel = await openFrames(lead);
  await expect(panel.getByRole('button', { name: 'K alone' })).toHaveAttribute('aria-pressed', 'true');
  await expect(panel).toContainText(/K alone, a stand-in where the couple will be: ±\d\.\d becomes ±\d\.\d/);
  await panel.getByRole('button', { name: '⅔ over', exact: true }).click();
  await expect(panel.locator('.list-line')).toHaveText(/^K alone: subject ⅔ over, as seen/);
  await expect(panel.getByRole('heading', { name: 'What they have taught' })).toBeVisible();
  await expect(panel).toContainText(/Head for the key: \d\.\d more than listed, ±\d\.\d stops/);
  const [frame] = (await evening.night()).frames;
  expect(frame).toMatchObject({ source: 'seen', what: 'subject', exposure: { iso: 1600, fNumber: 2 } });
  expect(frame?.stops).toBeCloseTo(2 / 3, 9);
  expect(frame?.lights.map((light) => (light.on === 'stand' ? light.job : light.on))).toEqual(['key']);

  const after = await subjectUnlike(lead, before);
  const taught = await level(lead, 'Subject, all light');
  expect(taught.sdStops).toBeLessThan(first.sdStops);
  expect(taught.stops).toBeGreaterThan(first.stops);

  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect(row(lead, 'Subject, all light')).toHaveText(before);
  expect((await evening.night()).frames).toHaveLength(0);

  await openFrames(lead);
  await panel.getByRole('button', { name: '⅔ over', exact: true }).click();
  expect(await subjectUnlike(lead, before)).toBe(after);
  await openFrames(lead);
  await panel.getByRole('button', { name: 'Take out' }).click();
  await expect(panel.locator('.list-line')).toHaveCount(0);
  expect(await subjectUnlike(lead, after)).toBe(before);
  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect(row(lead, 'Subject, all light')).toHaveText(after);
  expect((await evening.night()).frames).toHaveLength(1);
});

test('a flash meter is read against the aperture that is set; nonsense is refused at the field', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const panel = await openFrames(lead);
  await panel.getByRole('button', { name: 'Flash meter' }).click();
  const field = panel.getByRole('textbox');
  for (const [typed, said] of [
    ['four', '“four” is not a number. Nothing is in use yet.'],
    ['0', '0 is too small: at least 0.5. Nothing is in use yet.'],
    ['1000', '1000 is too much: at most 90. Nothing is in use yet.'],
  ] as const) {
    await type(field, typed);
    await expect(panel.locator('.number-field').getByRole('alert')).toHaveText(said);
  }
  expect((await evening.night()).frames).toHaveLength(0);
  // ISO 2720: two stops lie between f/2, which is set, and f/4.
  await type(field, '4');
  await expect(panel.locator('.list-line')).toHaveText(/^K alone: subject 2 over, by the meter/);
  expect((await evening.night()).frames).toMatchObject([{ source: 'meter', stops: 2 }]);
});

/** A JPEG of one grey on the left and another on the right, made by the browser. */
async function picture(page: Page, left: number, right: number) {
  const base64 = await page.evaluate(
    ([a, b]) => {
      const canvas = Object.assign(document.createElement('canvas'), { width: 300, height: 200 });
      const context = canvas.getContext('2d');
      for (const [index, grey] of [a, b].entries()) {
        if (!context) continue;
        context.fillStyle = `rgb(${grey} ${grey} ${grey})`;
        context.fillRect(index * 150, 0, 150, 200);
      }
      return canvas.toDataURL('image/jpeg', 0.95).split(',')[1] ?? '';
    },
    [left, right] as const,
  );
  return { name: 'frame.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(base64, 'base64') };
}

test('a picture is read where it is touched, or it is said why it cannot be', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const panel = await openFrames(lead);
  await panel.getByRole('button', { name: 'Picture' }).click();
  const file = panel.locator('input[type=file]');
  const touch = async (across: number) => {
    const shown = panel.locator('.picture');
    await expect(shown).toBeVisible();
    const box = await shown.boundingBox();
    await shown.tap({ position: { x: (box?.width ?? 0) * across, y: (box?.height ?? 0) / 2 } });
  };
  const keep = panel.getByRole('button', { name: /^Keep: / });
  await file.setInputFiles({
    name: 'notes.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from('This is no picture at all.'),
  });
  await expect(panel).toContainText('“notes.jpg” cannot be read as a picture.');
  await expect(panel.locator('.picture')).toBeHidden();

  // 118 is what an 18 % card comes out as; 188 is half of white's light, IEC 61966-2-1: log2(0.503 / 0.181) = 1.47.
  await file.setInputFiles(await picture(lead, 118, 188));
  await touch(0.25);
  await expect(keep).toHaveText('Keep: right');
  await touch(0.75);
  await expect(keep).toHaveText('Keep: 1⅓ over');
  // Skin shown as it should be lies half a stop over the card (common practice).
  await panel.getByRole('button', { name: 'Medium skin' }).click();
  await expect(keep).toHaveText('Keep: 1 over');
  await panel.getByRole('button', { name: 'Grey card' }).click();

  await file.setInputFiles(await picture(lead, 2, 255));
  await touch(0.75);
  await expect(panel).toContainText('Burnt out there: touch a darker place');
  await expect(keep).toBeHidden();
  await touch(0.25);
  await expect(panel).toContainText('Too dark there to tell.');
  await expect(keep).toBeHidden();
  expect((await evening.night()).frames).toHaveLength(0);

  await file.setInputFiles(await picture(lead, 118, 188));
  await touch(0.75);
  await keep.click();
  await expect(panel.locator('.list-line')).toHaveText(/^K alone: subject 1⅓ over, read from the picture/);
  const [frame] = (await evening.night()).frames;
  expect(frame?.source).toBe('picture');
  expect(frame?.stops).toBeCloseTo(1.47, 1);
});
