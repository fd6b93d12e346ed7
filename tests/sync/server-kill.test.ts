import { expect, test } from 'vitest';
import { rootOf } from '../../shared/document/roots.ts';
import { leadLink, runServer } from '../support/server-child.ts';
import { ownFolder } from '../support/server-folder.ts';
import { pairWith } from '../support/server-scene.ts';
import { hasEntry, openSync } from '../support/server-sync-phone.ts';

const start = (folder: string) => runServer(['--port', '0', '--data', folder]);

/** How often the server is killed; each time at another moment of a burst of writes. */
const CYCLES = 5;

test('[SYN7] a server killed at any moment has, when it is back, all that a phone was told is stored or was passed on', async () => {
  const folder = ownFolder();
  let server = start(folder);
  let { url, secret } = await leadLink(server);
  const lead = await pairWith(url, secret, 'Noor');
  const promised: string[] = [];
  for (let cycle = 0; cycle < CYCLES; cycle += 1) {
    // Fresh documents each time: nothing can come back from a phone that the server has lost.
    const writer = openSync({ ...lead, url });
    const reader = openSync({ ...lead, url });
    await Promise.all([writer.synced(), reader.synced()]);
    for (const key of promised) expect(hasEntry(key)(reader.doc), key).toBe(true);
    for (let count = 0; count < 20; count += 1) writer.write(`told-${cycle}-${count}`, 'said to be stored');
    await writer.everythingDurable();
    for (let count = 0; count < 20; count += 1) promised.push(`told-${cycle}-${count}`);
    // The rest of the burst races with the kill: what the other phone saw of it is as good as promised.
    for (let count = 0; count < 50; count += 1) writer.write(`seen-${cycle}-${count}`, 'on its way');
    await reader.docShows(hasEntry(`seen-${cycle}-${cycle * 8}`));
    reader.provider.shouldConnect = false;
    writer.provider.shouldConnect = false;
    expect(await server.kill('SIGKILL')).toMatchObject({ signal: 'SIGKILL' });
    for (const key of rootOf(reader.doc, 'log').keys()) if (!promised.includes(key)) promised.push(key);
    server = start(folder);
    ({ url, secret } = await leadLink(server));
  }
  const last = openSync({ ...lead, url });
  await last.synced();
  expect(promised.length).toBeGreaterThan(CYCLES * 20);
  for (const key of promised) expect(hasEntry(key)(last.doc), key).toBe(true);
}, 60_000);

test('[SYN7] a phone stays connected in spirit: it comes back by itself to a server that was killed and started again', async () => {
  const folder = ownFolder();
  const first = start(folder);
  const { url, secret } = await leadLink(first);
  const port = new URL(url).port;
  const phone = openSync(await pairWith(url, secret, 'Noor'));
  await phone.synced();
  await first.kill('SIGKILL');
  phone.write('meanwhile', 'while the server was gone');
  const second = runServer(['--port', port, '--data', folder]);
  await second.says(/Press Enter/);
  await phone.everythingDurable();
}, 30_000);

test('[SYN8] asked to stop, the server tells every phone to try again, keeps everything, and ends with 0', async () => {
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    const folder = ownFolder();
    const server = start(folder);
    const { url, secret } = await leadLink(server);
    const lead = await pairWith(url, secret, 'Noor');
    const phone = openSync(lead);
    await phone.synced();
    phone.write('before', 'the end');
    await phone.everythingDurable();
    const closed = phone.closed();
    const ended = server.kill(signal);
    expect(await closed).toBe(1012);
    expect(await ended).toEqual({ code: 0, signal: null });
    const again = start(folder);
    const { url: nextUrl } = await leadLink(again);
    const later = openSync({ ...lead, url: nextUrl });
    await later.synced();
    expect(hasEntry('before')(later.doc)).toBe(true);
  }
}, 30_000);
