import { expect, type Locator, type Page } from '@playwright/test';

/** Waits until the room has been worked out and the numbers on the strip are the room's. */
export const roomWorkedOut = (lead: Page) =>
  expect(lead.locator('.light-strip').first()).toContainText('Wanted: ', { timeout: 20_000 });

/** Waits until the power of the stand in hand is the one that is wanted: the worker has answered about where it is. */
export async function draftSolved(lead: Page, letter: string): Promise<void> {
  await roomWorkedOut(lead);
  const strip = lead.locator('.light-strip').first();
  await expect
    .poll(async () => {
      const own = await strip.locator('.power b').textContent();
      const wanted = new RegExp(`${letter} (?:off|[\\d/]+(?: \\+[⅓⅔])?)(?=,|$)`);
      return wanted.exec((await strip.locator('span').nth(1).textContent()) ?? '')?.[0] === own;
    })
    .toBe(true);
}

/** Opens the light sheet with its numbers. */
export async function openSheet(lead: Page): Promise<void> {
  await roomWorkedOut(lead);
  await lead.locator('.lead-hand .light-strip').click();
  await lead.locator('.levels').waitFor();
}

/** Closes the panel that is open and waits for what it was opened from. */
async function closeTo(lead: Page, behind: string | RegExp): Promise<void> {
  await lead.locator('.sheet-panel').getByRole('button', { name: 'Close' }).click();
  await lead.getByRole('dialog', { name: behind }).waitFor();
}

/** Opens one of the panels that the light sheet leads to. */
export async function openFromSheet(lead: Page, key: 'Test frames' | 'Room' | 'Heads'): Promise<Locator> {
  const sheet = lead.getByRole('dialog', { name: /^Light sheet/ });
  await sheet.getByRole('button', { name: key, exact: true }).click();
  const title = { 'Test frames': 'Test frames', Room: 'Room and its light', Heads: 'Heads and modifiers' };
  const panel = lead.getByRole('dialog', { name: title[key] });
  await panel.waitFor();
  return panel;
}

/** From a panel that the light sheet led to, back to its numbers. */
export async function backToSheet(lead: Page): Promise<void> {
  await closeTo(lead, /^Light sheet/);
  await lead.locator('.levels').waitFor();
}

/** What stands beside a name in the table of the light sheet. */
export const row = (lead: Page, name: string): Locator =>
  lead.locator('.levels tr', { has: lead.getByRole('rowheader', { name, exact: true }) }).getByRole('cell');

export interface Level {
  readonly stops: number;
  readonly sdStops: number;
}

/** The words of an element, as they are in the page. */
export const textOf = async (element: Locator): Promise<string> => (await element.textContent()) ?? '';

const signed = (text: string): number => Number(text.replace('−', '-').replace('+', ''));

/** A level of the table, "−0.1 ±0.4"; the spread is NaN where none is shown. */
export async function level(lead: Page, name: string): Promise<Level> {
  const [stops = '', spread = '±NaN'] = (await textOf(row(lead, name))).split(' ');
  return { stops: signed(stops), sdStops: Number(spread.slice(1)) };
}

/** Every grey value of a picture of the camera's view. */
export const greyOf = (picture: Locator): Promise<number[]> =>
  picture.locator('canvas').evaluate((canvas) => {
    const { width, height } = canvas as HTMLCanvasElement;
    const data = (canvas as HTMLCanvasElement).getContext('2d')?.getImageData(0, 0, width, height).data ?? [];
    return Array.from(data).filter((_, index) => index % 4 === 0);
  });

/** Types into a field and leaves it, as the key of a phone's keyboard does. */
export async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}
