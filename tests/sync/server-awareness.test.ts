import { expect, test } from 'vitest';
import { SYNC_MESSAGE } from '../../shared/messages/sync-codes.ts';
import { openRaw } from '../support/server-raw-socket.ts';
import { pairPhone, startServer } from '../support/server-scene.ts';
import { openSync, type SyncPhone } from '../support/server-sync-phone.ts';

/** Resolves when this phone sees, or no longer sees, the state of the other. */
const sees = (phone: SyncPhone, other: SyncPhone, expected: boolean) =>
  new Promise<void>((resolve) => {
    const { awareness } = phone.provider;
    const look = () => {
      if (awareness.getStates().has(other.doc.clientID) !== expected) return;
      awareness.off('change', look);
      resolve();
    };
    awareness.on('change', look);
    look();
  });

test('[SYN6] a heartbeat comes back as the same bytes', async () => {
  const server = await startServer();
  const phone = openRaw(await pairPhone(server, 'lead'));
  await phone.opened;
  const beat = Uint8Array.of(SYNC_MESSAGE.heartbeat, 42, 7);
  phone.send(beat);
  expect(await phone.frame((frame) => frame[0] === SYNC_MESSAGE.heartbeat)).toEqual(beat);
});

test('[SYN11] what a phone shows of itself is seen by the others, by late ones too, and goes when it goes', async () => {
  const server = await startServer();
  const lead = openSync(await pairPhone(server, 'lead'));
  await lead.synced();
  lead.provider.awareness.setLocalState({ draft: { x: 1, y: 2 } });
  const assistant = openSync(await pairPhone(server, 'assistant'));
  await sees(assistant, lead, true);
  expect(assistant.provider.awareness.getStates().get(lead.doc.clientID)).toEqual({ draft: { x: 1, y: 2 } });
  lead.provider.destroy();
  await sees(assistant, lead, false);
});

test('[SYN11] a phone that came back over a new socket leaves no ghost when that one ends without a word', async () => {
  const server = await startServer();
  const lead = openSync(await pairPhone(server, 'lead'));
  const assistant = openSync(await pairPhone(server, 'assistant'));
  await Promise.all([lead.synced(), assistant.synced()]);
  lead.provider.awareness.setLocalState({ here: true });
  await sees(assistant, lead, true);
  lead.provider.disconnect();
  await sees(assistant, lead, false);
  lead.provider.connect();
  await lead.synced();
  lead.provider.awareness.setLocalState({ back: true });
  await sees(assistant, lead, true);
  // The socket is torn off: the phone cannot take its state back itself.
  lead.provider.shouldConnect = false;
  (lead.provider.ws as unknown as { terminate(): void }).terminate();
  await sees(assistant, lead, false);
});
