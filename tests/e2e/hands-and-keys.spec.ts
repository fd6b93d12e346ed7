import { expect } from '@playwright/test';
import { test } from './support/evening.ts';
import { expectReach, Finger, moveByKeys, planPoint } from './support/hands.ts';
import { draftSolved } from './support/light.ts';

test('[LEAD6] the keyboard alone places, calls and withdraws', async ({ evening }) => {
  const lead = await evening.phone('lead', { width: 1280, height: 800, touch: false });
  await lead.locator('body').press('Tab');
  for (let presses = 0; presses < 12; presses++) {
    if (await lead.locator('.arrow-key:focus').count()) break;
    await lead.keyboard.press('Tab');
  }
  await lead.keyboard.press('Shift+ArrowLeft');
  await lead.keyboard.press('ArrowUp');
  await expect(lead.locator('[data-draft="K"]')).toBeVisible();
  await lead.keyboard.press('Escape');
  await expect(lead.locator('[data-draft="K"]')).toBeHidden();
  await lead.keyboard.press('Shift+ArrowLeft');
  await lead.keyboard.press('Enter');
  await expectReach(lead, 'K', 'called');
  const [carry] = (await evening.night()).carries;
  expect(carry?.current.mark.spot.x).toBeCloseTo(11.9, 6);
  expect(carry?.current.mark.spot.y).toBeCloseTo(9.1, 6);
  const withdraw = lead.getByRole('button', { name: 'Withdraw' });
  for (let presses = 0; presses < 12; presses++) {
    if (await withdraw.evaluate((key) => key === document.activeElement)) break;
    await lead.keyboard.press('Tab');
  }
  await lead.keyboard.press('Enter');
  await expectReach(lead, 'K', 'stands');
});

test('[LEAD6] the list places and calls without the plan', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await lead.getByRole('button', { name: 'List' }).click();
  await lead.getByRole('button', { name: 'Left 1 m' }).click();
  await lead.getByRole('button', { name: 'Up 10 cm' }).click();
  await lead.locator('.sheet-panel').getByRole('button', { name: 'Call K' }).click();
  await expectReach(lead, 'K', 'called');
  const [carry] = (await evening.night()).carries;
  expect(carry?.current.mark.spot.x).toBeCloseTo(11.9, 6);
  expect(carry?.current.mark.spot.y).toBeCloseTo(9, 6);
});

test('[LEAD7] a touch that the system takes away leaves the draft as it was', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const draft = lead.locator('[data-draft="K"]');
  const finger = await Finger.on(lead);
  await finger.down(await planPoint(lead, 0.7, 0.7));
  await expect(draft).toBeVisible();
  await finger.cancel();
  await expect(draft).toBeHidden();
  await expect(lead.locator('.call-key')).toBeDisabled();
});

test('[LEAD7] two fingers size the plan and leave the draft as it was', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await moveByKeys(lead, -10, 0);
  const drawing = lead.locator('.plan svg > g').first();
  const [before, standing] = [
    await drawing.getAttribute('transform'),
    (await evening.night()).carries.length,
  ];
  // The draft's power follows the room's answer; from then on the strip has no reason to change.
  await draftSolved(lead, 'K');
  const strip = await lead.locator('.light-strip').textContent();
  const finger = await Finger.on(lead);
  const [left, right] = [await planPoint(lead, 0.4, 0.5), await planPoint(lead, 0.6, 0.5)];
  await finger.down(left);
  await finger.down(left, right);
  await finger.move({ x: left.x - 60, y: left.y }, { x: right.x + 60, y: right.y });
  await finger.up();
  await expect(drawing).not.toHaveAttribute('transform', before ?? '');
  expect(await lead.locator('.light-strip').textContent()).toBe(strip);
  expect(standing).toBe(0);
  await lead.getByRole('button', { name: 'Whole room' }).click();
  await expect(drawing).toHaveAttribute('transform', before ?? '');
});

test('[MSG4] a ring is shown as rung, then as heard', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await moveByKeys(lead, -10, 0);
  await lead.locator('.call-key').click();
  await expect(lead.locator('.notice')).toContainText('Their phone rang.');
  await assistant.getByRole('button', { name: 'Carrying K' }).click();
  await expect(lead.locator('.notice')).toContainText('Heard.');
  await lead.getByRole('button', { name: 'Ring', exact: true }).click();
  await assistant.getByRole('button', { name: 'Heard' }).click();
  await expect(lead.locator('.notice')).toContainText('Heard.');
});

test('[AUT1] a phone without a place in the night is told so in plain words', async ({ evening, page }) => {
  const night = evening.server.nights()[0];
  await page.goto(`${evening.server.url}/lead/${night?.id}`);
  await expect(page.getByRole('alert')).toContainText('Scan a new code');
});

test('[AUT2] a used code is refused in plain words', async ({ evening, page }) => {
  const night = evening.server.nights()[0];
  if (!night) throw new Error('no night');
  const link = `${evening.server.url}/#pair=${evening.server.mint(night.id, 'lead')}`;
  await page.goto(link);
  await page.getByRole('button', { name: 'Join' }).click();
  await expect(page.locator('.lead-face')).toBeVisible();
  await page.goto('about:blank');
  await page.goto(link);
  await page.getByRole('button', { name: 'Join' }).click();
  await expect(page.getByRole('alert')).toContainText('has been used');
});
