import { expect } from '@playwright/test';
import { pairFragment } from '../../shared/messages/http.ts';
import { join, test } from './support/evening.ts';
import { expectReach, moveByKeys } from './support/hands.ts';

test('[AUT3][LEAD2] two windows of one browser are two phones and play a whole move', async ({
  evening,
  context,
}) => {
  const night = evening.server.nights()[0];
  if (!night) throw new Error('no night');
  const link = (role: 'lead' | 'assistant') =>
    `${evening.server.url}/${pairFragment(evening.server.mint(night.id, role))}`;
  const [lead, assistant] = [await context.newPage(), await context.newPage()];
  await join(lead, link('lead'), 'lead');
  await join(assistant, link('assistant'), 'assistant');
  await moveByKeys(lead, -10, 0);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'K', /delivered|seen/);
  await assistant.getByRole('button', { name: 'Carrying K' }).click();
  await assistant.getByRole('button', { name: 'K is set' }).click();
  await expectReach(lead, 'K', 'set');
  // Each window is still itself after a reload, with the other's cookie beside its own.
  await lead.reload();
  await assistant.reload();
  await expectReach(lead, 'K', 'set');
  await expect(assistant.getByRole('heading', { name: 'Nothing to carry' })).toBeVisible();
});
