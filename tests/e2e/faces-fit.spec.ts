import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { test } from './support/evening.ts';
import { moveByKeys } from './support/hands.ts';
import { backToSheet, openFromSheet, openSheet, type } from './support/light.ts';

const LEAST_PX = 60;
const SCREENS = [
  { name: '390 × 844', width: 390, height: 844 },
  { name: '844 × 390', width: 844, height: 390 },
  { name: '320 × 640', width: 320, height: 640 },
] as const;

/** Controls that a thumb could miss: smaller than 60 px in either direction. */
function smallControls(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const small: string[] = [];
    for (const control of document.querySelectorAll<HTMLElement>('button, a, input, select, summary')) {
      const box = (control.closest('label') ?? control).getBoundingClientRect();
      if (box.width === 0 || control.closest('.pair-link')) continue;
      if (box.width < least - 0.5 || box.height < least - 0.5)
        small.push(
          `${control.textContent || control.getAttribute('aria-label')} ${box.width} × ${box.height}`,
        );
    }
    return small;
  }, LEAST_PX);
}

/** Keys and cells of the panel that is open whose words are wider than they are. */
function cutWords(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        '.sheet-panel :is(button, td, th, li, p, label, legend, output)',
      ),
    ]
      .filter((element) => element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0)
      .map((element) => `${element.textContent} ${element.scrollWidth} in ${element.clientWidth}`),
  );
}

async function expectClean(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`),
    where,
  ).toEqual([]);
  expect(await smallControls(page), where).toEqual([]);
  expect(await cutWords(page), where).toEqual([]);
  await expectNoSideways(page, where);
}

/** Neither the page nor the body of a panel can be pushed sideways. */
async function expectNoSideways(page: Page, where: string): Promise<void> {
  const sideways = await page.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll('.sheet-body')].map(
      (element) => element.scrollWidth - Math.min(innerWidth, element.clientWidth),
    ),
  );
  expect(Math.max(...sideways), where).toBeLessThanOrEqual(0);
}

for (const screen of SCREENS) {
  test(`[APP2][APP3] the lead's face and its panels at ${screen.name}`, async ({ evening }) => {
    const lead = await evening.phone('lead', screen);
    await evening.phone('assistant');
    await expectClean(lead, 'the face');
    await moveByKeys(lead, -10, 0);
    await expectClean(lead, 'with a draft');
    await lead.locator('.call-key').click();
    await expectClean(lead, 'with a call');
    for (const name of ['Nudge', 'List', 'More']) {
      await lead.getByRole('button', { name, exact: true }).click();
      await expectClean(lead, name);
      await lead.getByRole('button', { name: 'Close' }).click();
    }
    await openSheet(lead);
    await expectClean(lead, 'light sheet');
    await lead.getByRole('button', { name: 'Close' }).click();
    await lead.getByRole('button', { name: 'More' }).click();
    await lead.getByRole('button', { name: 'Code for the assistant’s phone' }).click();
    await lead.locator('img.qr').waitFor();
    await expectClean(lead, 'the code');
  });

  test(`[APP2][APP3] the light sheet and its panels at ${screen.name}`, async ({ evening }) => {
    const lead = await evening.phone('lead', screen);
    await openSheet(lead);
    await lead.getByRole('button', { name: 'Card', exact: true }).click();
    await expect(lead.getByRole('button', { name: /^Take / })).toHaveText(/, C\s/);
    await expectClean(lead, 'with the flash on the camera');
    const frames = await openFromSheet(lead, 'Test frames');
    await expectClean(lead, 'test frames');
    await frames.getByRole('button', { name: '⅔ over', exact: true }).click();
    await frames.getByRole('heading', { name: 'What they have taught' }).waitFor();
    await expectClean(lead, 'a frame kept');
    await frames.getByRole('button', { name: 'Flash meter' }).click();
    await frames.getByRole('textbox').fill('a nonsense that is longer than the field');
    await expectClean(lead, 'a reading refused');
    await frames.getByRole('button', { name: 'Picture' }).click();
    await expectClean(lead, 'no picture yet');
    await backToSheet(lead);
    const room = await openFromSheet(lead, 'Room');
    await room.getByRole('button', { name: 'Tent, ridge' }).click();
    await expectClean(lead, 'room');
    await type(room.getByLabel('Height of the peak'), '3');
    await room.getByRole('alert').filter({ hasText: 'not above the walls' }).waitFor();
    await expectClean(lead, 'a roof that cannot be');
    await backToSheet(lead);
    const heads = await openFromSheet(lead, 'Heads');
    await heads.getByRole('button', { name: 'Measured', exact: true }).click();
    await expectClean(lead, 'heads');
    // Text twice as large, as who needs it sets it: nothing may run out of the side of the screen.
    await lead.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await expectNoSideways(lead, 'heads, large text');
    await backToSheet(lead);
    await expectNoSideways(lead, 'light sheet, large text');
    for (const key of ['Room', 'Test frames'] as const) {
      await openFromSheet(lead, key);
      await expectNoSideways(lead, `${key}, large text`);
      await backToSheet(lead);
    }
  });

  test(`[APP2][APP3] the assistant's face at ${screen.name}`, async ({ evening }) => {
    const lead = await evening.phone('lead');
    const assistant = await evening.phone('assistant', screen);
    await expectClean(assistant, 'nothing to carry');
    await moveByKeys(lead, 29, -27);
    await lead.locator('.call-key').click();
    await assistant.locator('.carry-card').waitFor();
    await expectClean(assistant, 'carry card');
    const main = await assistant.locator('.carry-card .main-key').boundingBox();
    expect((main?.y ?? 0) + (main?.height ?? 0)).toBeLessThanOrEqual(screen.height);
    await assistant.getByRole('button', { name: 'Can’t' }).click();
    await expectClean(assistant, 'why not');
    await assistant.getByRole('button', { name: 'Close' }).click();
    await lead.getByRole('button', { name: 'Withdraw' }).click();
    await assistant.locator('.carry-card.is-withdrawn').waitFor();
    await expectClean(assistant, 'withdrawn');
  });
}

test('[APP2] what is read on the card is large enough for an arm’s length', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await moveByKeys(lead, 29, -27);
  await lead.locator('.call-key').click();
  const size = (selector: string) =>
    assistant.locator(selector).evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
  expect(await size('.carry-card .sentence')).toBeGreaterThanOrEqual(36);
  expect(await size('.carry-card .distance b')).toBeGreaterThanOrEqual(72);
  const arrow = await assistant.locator('.big-arrow').boundingBox();
  expect(arrow?.height).toBeGreaterThanOrEqual(72);
  const main = await assistant.locator('.carry-card .main-key').boundingBox();
  expect(main?.height).toBeGreaterThanOrEqual(96);
});

test('[APP2] the start page and the pairing page', async ({ evening, page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(evening.server.url);
  await page.getByRole('heading', { name: 'Hushmark' }).waitFor();
  await expectClean(page, 'start');
  await page.goto(`${evening.server.url}/#pair=0123456789012345678901234`);
  await page.getByRole('heading', { name: 'Join the night' }).waitFor();
  await expectClean(page, 'pairing');
});
