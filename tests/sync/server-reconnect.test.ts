import { expect, test } from 'vitest';
import { pairPhone, startServer } from '../support/server-scene.ts';
import { hasEntry, openSync } from '../support/server-sync-phone.ts';

test('[SYN5][SYN9] what is written in the moment of coming back, before the server was answered, is not lost', async () => {
  const server = await startServer();
  const [lead, other] = [
    openSync(await pairPhone(server, 'lead')),
    openSync(await pairPhone(server, 'assistant')),
  ];
  await lead.synced();
  await other.synced();
  let refused = false;
  lead.provider.on('closed', () => {
    refused = true;
  });
  lead.provider.disconnect();
  lead.write('apart', 'written without a link');
  // The socket is open, and the server knows nothing yet of what was written apart: this builds on it.
  lead.provider.once('status', ({ status }) => {
    if (status === 'connecting') lead.provider.once('status', () => lead.write('early', 'written at once'));
  });
  lead.provider.connect();
  await other.docShows(hasEntry('early'));
  expect(hasEntry('apart')(other.doc)).toBe(true);
  lead.write('after', 'written later');
  await other.docShows(hasEntry('after'));
  await lead.everythingDurable();
  expect(refused).toBe(false);
});
