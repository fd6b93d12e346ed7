import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { askFrame } from '../../server/sync/frames.ts';
import { SYNC_LIMITS } from '../../server/sync/limits.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { asId, type NightId } from '../../shared/ids.ts';
import { CLOSE_REASONS } from '../../shared/messages/close-reasons.ts';
import { LARGEST_SYNC_BYTES, SYNC_MESSAGE, SYNC_PATH, SYNC_STEP } from '../../shared/messages/sync-codes.ts';
import { openRaw } from '../support/server-raw-socket.ts';
import { nightOf, pairPhone, startServer } from '../support/server-scene.ts';
import { smallNight } from '../support/server-seed.ts';
import { hasEntry, openSync } from '../support/server-sync-phone.ts';

/** An update frame, its length written as a varint. */
function updateFrame(update: Uint8Array): Uint8Array {
  const frame = Uint8Array.from(askFrame(update));
  frame[1] = SYNC_STEP.update;
  return frame;
}

/** Two updates of one phone, of which the second builds on the first. */
function chainedUpdates(): [Uint8Array, Uint8Array] {
  const doc = new Y.Doc();
  const updates: Uint8Array[] = [];
  doc.on('update', (update: Uint8Array) => updates.push(update));
  rootOf(doc, 'log').set('first', { what: 'one' });
  rootOf(doc, 'log').set('second', { what: 'two' });
  const [first, second] = updates;
  if (!first || !second) throw new Error('two changes give two updates');
  return [first, second];
}

/** A server with a bad phone (raw), and a good one that must come to no harm. */
async function scene(options: Parameters<typeof startServer>[0] = {}) {
  const server = await startServer(options);
  const bad = openRaw(await pairPhone(server, 'lead'));
  const good = openSync(await pairPhone(server, 'assistant'));
  await Promise.all([bad.opened, good.synced()]);
  let closes = 0;
  good.provider.on('connection-close', () => {
    closes += 1;
  });
  const staysWell = async () => {
    good.write('after', 'still here');
    await good.everythingDurable();
    expect(closes).toBe(0);
    expect(hasEntry('second')(good.doc)).toBe(false);
  };
  return { server, bad, good, staysWell };
}

const sync = (step: number, ...rest: number[]) => Uint8Array.of(SYNC_MESSAGE.sync, step, ...rest);
const garbage: [string, Uint8Array | string][] = [
  ['nothing at all', new Uint8Array()],
  ['a message type that there is not', Uint8Array.of(77)],
  ['a sync step that there is not', sync(9, 0)],
  ['an update that ends early', sync(SYNC_STEP.update, 200, 1, 2, 3)],
  ['an update with bytes behind it', sync(SYNC_STEP.update, 2, 0, 0, 9)],
  ['an update that is none', sync(SYNC_STEP.update, 4, 255, 255, 255, 255)],
  ['a state vector that is none', sync(SYNC_STEP.askWithVector, 3, 255, 255, 255)],
  ['a number without an end', new Uint8Array(30).fill(255)],
  ['an awareness update that is none', Uint8Array.of(SYNC_MESSAGE.awareness, 3, 1, 1, 1)],
  ['text', 'hello'],
];

test.each(garbage)('[SYN9] garbage closes the socket and harms nobody else: %s', async (_name, bytes) => {
  const { bad, staysWell } = await scene();
  bad.send(bytes);
  expect(await bad.closed).toBe(CLOSE_REASONS.garbage);
  await staysWell();
});

test('[SYN9] an update that builds on one that the server never got closes the socket, and leaves no trace', async () => {
  const { server, bad, staysWell } = await scene();
  const [first, second] = chainedUpdates();
  bad.send(sync(SYNC_STEP.answer, 2, 0, 0));
  bad.send(updateFrame(second));
  expect(await bad.closed).toBe(CLOSE_REASONS.garbage);
  await staysWell();
  // Had the second been kept waiting, it would show as soon as the first is there.
  const again = openRaw(await pairPhone(server, 'lead'));
  const witness = openSync(await pairPhone(server, 'assistant'));
  await Promise.all([again.opened, witness.synced()]);
  again.send(updateFrame(first));
  await witness.docShows((doc) => rootOf(doc, 'log').has('first'));
  expect(hasEntry('second')(witness.doc)).toBe(false);
});

test('[SYN10] a message above the limit closes the socket with that reason', async () => {
  const { bad, staysWell } = await scene();
  bad.send(new Uint8Array(LARGEST_SYNC_BYTES + 1));
  expect(await bad.closed).toBe(CLOSE_REASONS['too-large']);
  await staysWell();
});

test('[SYN10] a message far above the limit ends the socket before it is read', async () => {
  const { bad, staysWell } = await scene();
  bad.send(new Uint8Array(2 * LARGEST_SYNC_BYTES + 1));
  expect(await bad.closed).toBe(1009);
  await staysWell();
});

test('[SYN10] a flood of messages closes the socket', async () => {
  const { bad, staysWell } = await scene({
    syncLimits: { ...SYNC_LIMITS, messages: { perSecond: 1, burst: 20 } },
  });
  for (let sent = 0; sent < 60; sent += 1) bad.send(Uint8Array.of(SYNC_MESSAGE.heartbeat));
  expect(await bad.closed).toBe(CLOSE_REASONS['too-many']);
  expect(bad.frames.filter((frame) => frame[0] === SYNC_MESSAGE.heartbeat).length).toBeLessThanOrEqual(21);
  await staysWell();
});

test('[SYN10] a flood of bytes closes the socket', async () => {
  const { bad, staysWell } = await scene({
    syncLimits: { ...SYNC_LIMITS, bytes: { perSecond: 1, burst: 4000 } },
  });
  for (let sent = 0; sent < 10; sent += 1) bad.send(new Uint8Array(1000).fill(SYNC_MESSAGE.heartbeat));
  expect(await bad.closed).toBe(CLOSE_REASONS['too-many']);
  await staysWell();
});

test('[SYN10] an awareness message above its limit closes the socket', async () => {
  const { bad, staysWell } = await scene();
  const frame = Uint8Array.from(askFrame(new Uint8Array(SYNC_LIMITS.awarenessBytes + 1)));
  bad.send(Uint8Array.of(SYNC_MESSAGE.awareness, ...frame.slice(2)));
  expect(await bad.closed).toBe(CLOSE_REASONS['too-large']);
  await staysWell();
});

test('[AUT6] a looker-on sees the night and may not write to it', async () => {
  const server = await startServer();
  const lead = openSync(await pairPhone(server, 'lead'));
  const looker = openSync(await pairPhone(server, 'looker-on'));
  await Promise.all([lead.synced(), looker.synced()]);
  lead.write('seen', 'by all');
  lead.write('seen', 'twice'); // leaves a deletion, which a phone repeats whenever it answers
  await looker.docShows(hasEntry('seen'));
  looker.provider.disconnect();
  looker.provider.connect();
  await looker.synced();
  const closed = looker.closedForGood();
  looker.write('forbidden', 'by a looker-on');
  expect(await closed).toBe(CLOSE_REASONS['not-allowed']);
  lead.write('after', 'still here');
  await lead.everythingDurable();
  expect(hasEntry('forbidden')(lead.doc)).toBe(false);
});

test('[AUT1 SYN8] an unpaired phone is told so on the sync socket, and gets not a byte of the night', async () => {
  const server = await startServer();
  const night = nightOf(server);
  const lead = await pairPhone(server, 'lead');
  const strangers = [
    openRaw({ url: server.url, night, role: 'lead', cookie: '' }),
    openRaw({ url: server.url, night, role: 'lead', cookie: lead.cookie.replace(/=.*/, '=made-up') }),
    // A token is for one role: the lead's does not make an assistant.
    openRaw({ ...lead, role: 'assistant' }),
    openRaw({ ...lead, role: 'assistant', cookie: lead.cookie.replace('-lead-', '-assistant-') }),
    openRaw(lead, { path: `${SYNC_PATH}${night}` }),
  ];
  for (const stranger of strangers) {
    expect(await stranger.closed).toBe(CLOSE_REASONS.unpaired);
    expect(stranger.frames).toHaveLength(0);
  }
});

test('[SYN8] a night that the server does not have is refused as such', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  for (const night of ['anothernight', 'a%2Fb', '..%2F..', ''])
    expect(await openRaw({ ...lead, night: asId<NightId>(night) }).closed).toBe(
      CLOSE_REASONS['no-such-night'],
    );
});

test('[SYN12] two nights side by side do not see each other, and the token of one does not open the other', async () => {
  const server = await startServer();
  const first = nightOf(server);
  const second = (await server.makeNight(smallNight('Boat house'))).id;
  const here = openSync(await pairPhone(server, 'lead', first));
  const there = await pairPhone(server, 'lead', second);
  const elsewhere = openSync(there);
  await Promise.all([here.synced(), elsewhere.synced()]);
  here.write('here', 'in the first night');
  await here.everythingDurable();
  elsewhere.write('there', 'in the second night');
  await elsewhere.everythingDurable();
  expect(hasEntry('here')(elsewhere.doc)).toBe(false);
  expect(hasEntry('there')(here.doc)).toBe(false);
  expect(await openRaw({ ...there, night: first }).closed).toBe(CLOSE_REASONS.unpaired);
});

test('[DOC10] a night written by a newer app may be read, and a write to it is refused with that reason', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const newer = openSync(lead);
  await newer.synced();
  rootOf(newer.doc, 'about').set('schema', 99);
  await newer.everythingDurable();
  const older = openSync(await pairPhone(server, 'assistant'));
  await older.synced();
  expect(rootOf(older.doc, 'about').get('schema')).toBe(99);
  const closed = older.closedForGood();
  older.write('old', 'by an older app');
  expect(await closed).toBe(CLOSE_REASONS['other-version']);
});
