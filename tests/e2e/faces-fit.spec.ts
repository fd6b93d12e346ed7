import { expect } from '@playwright/test';
import { expectClean, expectNoSideways, FIT_SCREENS } from './support/clean.ts';
import { test } from './support/evening.ts';
import { moveByKeys } from './support/hands.ts';
import { backToSheet, openFromSheet, openSheet, type } from './support/light.ts';

for (const screen of FIT_SCREENS) {
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
    await lead.getByRole('button', { name: 'Close' }).click();
    await lead.getByRole('button', { name: 'Hand signals' }).click();
    await lead.locator('.hand-signals').waitFor();
    await expectClean(lead, 'hand signals');
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
    await assistant.locator('.nothing summary', { hasText: 'Step' }).click();
    await expectClean(assistant, 'settings');
    await moveByKeys(lead, 29, -27);
    await lead.locator('.call-key').click();
    await assistant.locator('.carry-card').waitFor();
    await expectClean(assistant, 'carry card');
    const main = await assistant.locator('.carry-card .main-key').boundingBox();
    expect((main?.y ?? 0) + (main?.height ?? 0)).toBeLessThanOrEqual(screen.height);
    await assistant.getByRole('button', { name: 'Can’t' }).click();
    await expectClean(assistant, 'why not');
    await assistant.getByRole('button', { name: 'Close' }).click();
    await assistant.getByRole('button', { name: 'Set, but not there' }).click();
    await assistant.getByRole('button', { name: 'Back' }).click();
    await expectClean(assistant, 'set elsewhere');
    await assistant.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await expectNoSideways(assistant, 'set elsewhere, large text');
    await assistant.getByRole('button', { name: 'Close' }).click();
    await expectNoSideways(assistant, 'carry card, large text');
    await assistant.evaluate(() => {
      document.documentElement.style.fontSize = '';
    });
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
