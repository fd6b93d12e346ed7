import { once } from 'node:events';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import { PING_MS } from '../../../server/sync/limits.ts';
import { SYNC_MESSAGE, SYNC_PATH } from '../../../shared/messages/sync-codes.ts';
import { pairPhone, startServer } from '../../support/server-scene.ts';
import { heldTime } from '../../support/server-time.ts';

test('a phone that answers pings stays; one that no longer does is cut off', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  const { cookie, night } = await pairPhone(server, 'lead');
  const open = async (autoPong: boolean) => {
    const url = `${server.url.replace('http', 'ws')}${SYNC_PATH}${night}?as=lead`;
    const socket = new WebSocket(url, { headers: { cookie }, autoPong });
    onTestFinished(() => socket.terminate());
    await once(socket, 'message'); // the server has it among its connections
    return socket;
  };
  const [alive, dead] = [await open(true), await open(false)];
  for (let round = 0; round < 3; round += 1) {
    const pinged = once(alive, 'ping');
    const gone = round === 1 ? once(dead, 'close') : null;
    time.advance(PING_MS);
    await pinged;
    // A heartbeat sent after the answer to the ping comes back after the server has read that answer.
    alive.send(Uint8Array.of(SYNC_MESSAGE.heartbeat));
    await once(alive, 'message');
    if (gone) expect((await gone)[0]).toBe(1006);
  }
  expect(alive.readyState).toBe(WebSocket.OPEN);
});
