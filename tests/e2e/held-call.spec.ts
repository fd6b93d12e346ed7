import { expect } from '@playwright/test';
import { test } from './support/evening.ts';
import { expectReach, moveByKeys } from './support/hands.ts';

test('[LEAD5][DOC11] a call that waited over a minute for the link asks before it goes out', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await lead.clock.install();
  await lead.context().setOffline(true);
  await expect(lead.locator('.own-link')).toContainText('No link', { timeout: 15_000 });
  await moveByKeys(lead, -20, 0);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'K', 'not-sent');
  await lead.clock.runFor(62_000);
  await expectReach(lead, 'K', 'held');
  await lead.context().setOffline(false);
  await expect
    .poll(async () => {
      await lead.clock.runFor(1000);
      return lead.locator('.own-link').count();
    })
    .toBe(0);
  // It has reached the server and the other phone's copy, and still nobody is asked to carry anything.
  await expect.poll(async () => (await evening.night()).carries[0]?.state).toBe('held');
  await expect(assistant.getByRole('heading', { name: 'Nothing to carry' })).toBeVisible();
  await lead.getByRole('button', { name: 'Send now' }).click();
  await expect(assistant.locator('.carry-card')).toBeVisible();
  await expectReach(lead, 'K', /seen|delivered/);
});
