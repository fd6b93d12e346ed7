import { type Browser, expect, type Page } from '@playwright/test';
import { join } from './support/evening.ts';
import { expectReach, moveByKeys, standKey } from './support/hands.ts';
import { test } from './support/server-process.ts';

async function openPhone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  return context.newPage();
}

/** The assistant joins as in the room: with the code that the lead's phone shows. */
async function invited(lead: Page, assistant: Page): Promise<void> {
  await lead.getByRole('button', { name: 'More' }).click();
  await lead.getByRole('button', { name: 'Code for the assistant’s phone' }).click();
  await expect(lead.locator('img.qr')).toBeVisible();
  const shown = await lead.locator('.pair-link a').getAttribute('href');
  // The code names an address for other machines; this test is on the same one.
  const link = new URL(shown ?? '');
  await join(assistant, `${new URL(lead.url()).origin}/${link.hash}`, 'assistant');
  await lead.getByRole('button', { name: 'Close' }).click();
  await lead.getByRole('button', { name: 'Close' }).click();
}

test('[SYN7][APP1][AUT4] the server is killed in the middle of a move: both phones go on and nothing is lost', async ({
  browser,
  serverProcess,
}) => {
  const [lead, assistant] = [await openPhone(browser), await openPhone(browser)];
  await join(lead, await serverProcess.start(), 'lead');
  await invited(lead, assistant);
  await moveByKeys(lead, 29, -27);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'K', 'seen');

  await serverProcess.kill();
  await expect(lead.locator('.own-link')).toContainText('No link');
  await expect(assistant.locator('.own-link')).toContainText('No link');
  await assistant.getByRole('button', { name: 'Carrying K' }).click();
  await assistant.getByRole('button', { name: 'K is set' }).click();
  await expect(assistant.locator('.own-link')).toContainText('Changes wait to be sent');
  await standKey(lead, 'B').click();
  await moveByKeys(lead, 10, 0);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'B', 'not-sent');
  await expectReach(lead, 'K', 'seen');

  await serverProcess.start();
  await expectReach(lead, 'K', 'set');
  await expectReach(lead, 'B', 'seen');
  await expect(lead.locator('.own-link')).toHaveCount(0);
  await expect(assistant.locator('.carry-card h2')).toContainText('B');
});

test('[APP1][SYN7] a phone that was reloaded keeps what it never could send', async ({
  browser,
  serverProcess,
}) => {
  const lead = await openPhone(browser);
  await join(lead, await serverProcess.start(), 'lead');
  await serverProcess.kill();
  await expect(lead.locator('.own-link')).toContainText('No link');
  await moveByKeys(lead, -20, 0);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'K', 'not-sent');
  // The page is gone before there was anybody to tell; the server that comes back knows nothing of the call.
  await lead.goto('about:blank');
  const link = await serverProcess.start();
  const night = new URL(link).origin;
  await lead.goto(`${night}/`);
  await lead.getByRole('link', { name: /as lead/ }).click();
  await expectReach(lead, 'K', 'called');
});
