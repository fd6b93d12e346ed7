import { expect, type Page } from '@playwright/test';
import { test } from './support/evening.ts';

async function openOrder(lead: Page) {
  await lead.getByRole('button', { name: 'More' }).click();
  await lead.getByRole('button', { name: /^Running order/ }).click();
  return lead.getByRole('dialog', { name: 'Running order' });
}

test('[DOC29] a moment said by the lead fills the other phone until it is heard, and the lead sees that it was', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  const order = await openOrder(lead);
  await order.getByRole('button', { name: 'Toasts now' }).click();
  await expect(order.locator('.is-now')).toContainText('Toasts');
  await expect(order.locator('.is-now')).toContainText('not heard yet');
  const cover = assistant.getByRole('alertdialog', { name: 'Toasts now' });
  await expect(cover).toBeVisible();
  await cover.getByRole('button', { name: 'Heard' }).click();
  await expect(cover).toBeHidden();
  await expect(order.locator('.is-now')).toContainText('heard by Jo');
  expect((await evening.night()).moment?.name).toBe('Toasts');
});

test('[DOC29][DOC31] the assistant announces too, and one press takes it back on both phones', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await assistant.getByText('Announce a moment').click();
  await assistant.getByRole('button', { name: 'Cake now' }).click();
  const cover = lead.getByRole('alertdialog', { name: 'Cake now' });
  await expect(cover).toBeVisible();
  await expect(assistant.getByRole('alertdialog')).toBeHidden();
  await assistant.getByRole('button', { name: 'Undo' }).click();
  await expect(cover).toBeHidden();
  await expect(lead.getByRole('heading', { level: 1 })).toHaveText('First dance');
});

test('[DOC25][DOC27] moments are renamed, moved, skipped and taken out, each with its undo', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const order = await openOrder(lead);
  const names = () => order.locator('.order-name b').allTextContents();
  const before = await names();
  await order.getByRole('button', { name: /^Cake/ }).first().click();
  await order.getByLabel('Name').fill('Cutting the cake');
  await order.getByLabel('Name').press('Enter');
  await expect.poll(names).toContain('Cutting the cake');
  await order.getByRole('button', { name: 'Earlier' }).click();
  await expect.poll(async () => (await names()).indexOf('Cutting the cake')).toBe(before.indexOf('Cake') - 1);
  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await names()).indexOf('Cutting the cake')).toBe(before.indexOf('Cake'));
  await order.getByRole('button', { name: 'Skip', exact: true }).click();
  await expect(order.locator('.is-skipped')).toContainText('Cutting the cake');
  await order.getByRole('button', { name: 'Take out' }).click();
  await expect.poll(names).not.toContain('Cutting the cake');
  await order.getByRole('button', { name: 'Bring back' }).click();
  await expect.poll(names).toContain('Cutting the cake');
});

test('a pasted timeline is read, what it leaves open is asked, and nothing is taken before it is answered', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const order = await openOrder(lead);
  const count = (await evening.night()).moments.length;
  await order.getByText('Add moments from').click();
  await order.getByRole('textbox').fill('9:30 Cake');
  await expect(order.getByRole('button', { name: '1 to answer first' })).toBeDisabled();
  await order.getByRole('button', { name: /21:30/ }).click();
  await order.getByRole('button', { name: 'Add 1' }).click();
  await expect.poll(async () => (await evening.night()).moments.length).toBe(count + 1);
  expect((await evening.night()).moments.at(-1)).toMatchObject({ name: 'Cake', expected: '21:30' });
  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await evening.night()).moments.length).toBe(count);
});
