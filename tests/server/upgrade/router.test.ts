import { connect } from 'node:net';
import { expect, test } from 'vitest';
import type { HushmarkServer } from '../../../server/create-server.ts';
import { CLOSE_REASONS } from '../../../shared/messages/close-reasons.ts';
import { SIGNALS_PATH, SYNC_PATH } from '../../../shared/messages/sync-codes.ts';
import { openRaw } from '../../support/server-raw-socket.ts';
import { nightOf, pairPhone, startServer } from '../../support/server-scene.ts';
import { openSignals } from '../../support/server-signals-phone.ts';
import { openSync } from '../../support/server-sync-phone.ts';

/** Asks for an upgrade by hand; resolves with all that comes until the server ends the connection. */
function askUpgrade(
  server: HushmarkServer,
  path: string,
  headers: Record<string, string> = {},
): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(server.port, 'localhost');
    const lines = Object.entries({
      Host: `localhost:${server.port}`,
      Connection: 'Upgrade',
      Upgrade: 'websocket',
      'Sec-WebSocket-Version': '13',
      'Sec-WebSocket-Key': 'dGhlIHNhbXBsZSBub25jZQ==', // the example key of RFC 6455, section 1.3
      ...headers,
    }).map(([name, value]) => `${name}: ${value}`);
    socket.write(`GET ${path} HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n`);
    let answer = '';
    socket.setEncoding('utf8').on('data', (text: string) => {
      answer += text;
    });
    socket.on('error', reject).on('close', () => resolve(answer));
  });
}

test.each(['/', '/y', '/yy/night', '/sio', '/ws', '/api/health', '/socket.io/?EIO=4&transport=websocket'])(
  'an upgrade to a path that there is not gets 404 and the end: %s',
  async (path) => {
    const server = await startServer();
    expect(await askUpgrade(server, path)).toMatch(/^HTTP\/1\.1 404 /);
  },
);

test('[AUT5] an upgrade by a page of another origin, or under a public name, is turned away on both sockets', async () => {
  const server = await startServer();
  for (const path of [
    `${SYNC_PATH}${nightOf(server)}?as=lead`,
    `${SIGNALS_PATH}?EIO=4&transport=websocket`,
  ]) {
    for (const headers of [
      { Origin: 'http://elsewhere.example' },
      { Origin: `http://localhost:${server.port + 1}` },
      { Origin: 'null' },
      { Host: 'rebind.example.com', Origin: 'http://rebind.example.com' },
    ])
      expect(await askUpgrade(server, path, headers as Record<string, string>)).toMatch(/^HTTP\/1\.1 403 /);
  }
});

test('[AUT5] a page of this server is let in on both sockets', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const sync = openRaw(lead, { headers: { origin: server.url } });
  await sync.opened;
  const signals = openSignals(lead);
  await signals.connected();
  expect(await signals.socket.emitWithAck('clock')).toBeGreaterThan(0);
});

test('both sockets work side by side on one port, and one that is cut off ends nothing else', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const [sync, signals] = [openSync(lead), openSignals(lead)];
  await Promise.all([sync.synced(), signals.connected()]);
  const cut = connect(server.port, 'localhost');
  cut.write(`GET ${SYNC_PATH}${nightOf(server)} HTTP/1.1\r\nHost: localhost\r\nUpgrade: websocket\r\nConnec`);
  cut.resetAndDestroy();
  const broken = openRaw(lead);
  await broken.opened;
  sync.write('one', 'fine');
  await sync.everythingDurable();
  expect(await signals.socket.emitWithAck('clock')).toBeGreaterThan(0);
});

test('a broken frame ends its own socket alone', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const good = openSync(lead);
  await good.synced();
  const ended = new Promise<void>((resolve) => {
    const socket = connect(server.port, 'localhost');
    socket.write(
      `GET ${SYNC_PATH}${lead.night}?as=lead HTTP/1.1\r\nHost: localhost:${server.port}\r\n` +
        `Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\n` +
        `Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nCookie: ${lead.cookie}\r\n\r\n`,
    );
    socket.once('data', () => socket.write(Uint8Array.of(0xff, 0xff, 0xff, 0xff, 0xff, 0xff)));
    socket.on('error', () => undefined).on('close', () => resolve());
  });
  await ended;
  good.write('after', 'still here');
  await good.everythingDurable();
});

test('[SYN8] a stranger on the sync socket is shown out with a reason, since a page cannot read a refused upgrade', async () => {
  const server = await startServer();
  const answer = openRaw({ url: server.url, night: nightOf(server), role: 'lead', cookie: '' });
  expect(await answer.closed).toBe(CLOSE_REASONS.unpaired);
});
