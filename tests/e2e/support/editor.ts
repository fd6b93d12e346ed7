import { expect, type Locator, type Page } from '@playwright/test';
import type { Spot } from '../../../core/geometry/spot.ts';
import { Finger } from './hands.ts';

/** The key with exactly this word on it. */
export const key = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });

/** Opens the plan's editor from the lead's face. */
export async function openEditor(lead: Page): Promise<void> {
  await key(lead, 'More').click();
  await key(lead, 'Plan of the room').click();
  await lead.locator('.plan-editor .room-drawing .wall').waitFor();
}

/** Opens a card of the editor, from whichever is open. */
export async function openCard(lead: Page, name: string): Promise<void> {
  if (await key(lead, 'Back').count()) await key(lead, 'Back').click();
  await key(lead, name).click();
}

/** Where a spot of the room is on the page, px. */
export const onPage = (page: Page, spot: Spot): Promise<Spot> =>
  page.locator('.plan-editor .room-drawing').evaluate((drawing, { x, y }) => {
    const matrix = (drawing as SVGGElement).getScreenCTM();
    if (!matrix) throw new Error('the plan is not drawn');
    const point = new DOMPoint(x, y).matrixTransform(matrix);
    return { x: point.x, y: point.y };
  }, spot);

/** What the editor says under the plan. */
export const saidBy = (lead: Page): Locator => lead.locator('.editor-said');

/** A finger goes down on one spot of the room and across to another; it is lifted by the returned call. */
export async function drag(lead: Page, from: Spot, to: Spot): Promise<() => Promise<void>> {
  const finger = await Finger.on(lead);
  const [start, end] = [await onPage(lead, from), await onPage(lead, to)];
  await finger.down(start);
  for (const part of [0.2, 0.5, 0.8, 1])
    await finger.move({ x: start.x + (end.x - start.x) * part, y: start.y + (end.y - start.y) * part });
  return finger.up;
}

/** A finger drags from one spot of the room to another and is lifted. */
export async function dragged(lead: Page, from: Spot, to: Spot): Promise<void> {
  const lift = await drag(lead, from, to);
  await lift();
}

/** A finger presses a spot of the room. */
export async function pressed(lead: Page, spot: Spot): Promise<void> {
  const finger = await Finger.on(lead);
  await finger.down(await onPage(lead, spot));
  await finger.up();
}

/** Goes on with the Tab key until this has the focus, as who has only keys does. */
export async function tabTo(page: Page, control: Locator): Promise<void> {
  for (let presses = 0; presses < 80; presses++) {
    if (await control.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  await expect(control, 'reached by the Tab key').toBeFocused();
}

/** Reaches a key by Tab and presses it with Enter. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, page.getByRole('button', { name, exact: typeof name === 'string' }).first());
  await page.keyboard.press('Enter');
}

/** Reaches a field by Tab, types over what it holds and leaves it with Enter. */
export async function typeByKeys(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, page.getByLabel(label, { exact: true }));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}
