import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { askFrame } from '../../server/sync/frames.ts';
import { DISK_REST_MS } from '../../server/sync/limits.ts';
import { SYNC_MESSAGE, SYNC_STEP } from '../../shared/messages/sync-codes.ts';
import { healthOf } from '../support/server-health.ts';
import { heldStore } from '../support/server-held-store.ts';
import { openRaw } from '../support/server-raw-socket.ts';
import { nightOf, pairPhone, startServer } from '../support/server-scene.ts';
import { hasEntry, openSync, payloadOf } from '../support/server-sync-phone.ts';
import { heldTime } from '../support/server-time.ts';

const isAnswer = (frame: Uint8Array) => frame[0] === SYNC_MESSAGE.sync && frame[1] === SYNC_STEP.answer;
const isUpdate = (frame: Uint8Array) => frame[0] === SYNC_MESSAGE.sync && frame[1] === SYNC_STEP.update;
const isHeartbeat = (frame: Uint8Array) => frame[0] === SYNC_MESSAGE.heartbeat;

async function twoPhones(options: Parameters<typeof startServer>[0] = {}) {
  const store = heldStore();
  const server = await startServer({ store, ...options });
  const [lead, assistant] = [await pairPhone(server, 'lead'), await pairPhone(server, 'assistant')];
  return { store, server, lead, assistant };
}

test('[SYN1] what one phone writes, the other phone gets', async () => {
  const { lead, assistant } = await twoPhones();
  const [a, b] = [openSync(lead), openSync(assistant)];
  await Promise.all([a.synced(), b.synced()]);
  a.write('one', 'from the lead');
  b.write('two', 'from the assistant');
  await Promise.all([a.docShows(hasEntry('two')), b.docShows(hasEntry('one'))]);
  expect(Y.encodeStateVector(a.doc)).toEqual(Y.encodeStateVector(b.doc));
});

test('[SYN2 SYN4] no phone is sent an update, or told that it is stored, before the disk has it', async () => {
  const { store, lead, assistant } = await twoPhones();
  const writer = openSync(lead);
  const [reader, echo] = [openRaw(assistant), openRaw(lead)];
  await Promise.all([writer.synced(), reader.opened, echo.opened]);
  store.hold();
  writer.write('held', 'on its way to the disk');
  await store.waiting(1);
  // The server answers heartbeats in order: what it sent before the answer has arrived when the answer has.
  for (const socket of [reader, echo]) {
    socket.send(Uint8Array.of(SYNC_MESSAGE.heartbeat));
    await socket.frame(isHeartbeat);
    expect(socket.frames.filter(isUpdate)).toHaveLength(0);
    expect(socket.frames.filter((frame) => frame[0] === SYNC_MESSAGE.durable)).toHaveLength(1);
  }
  const written = store.written;
  await store.release();
  await Promise.all([reader.frame(isUpdate), echo.frame(isUpdate), writer.everythingDurable()]);
  expect(store.written).toBe(written + 1);
});

test('[SYN2] the order in which updates were written is the order in which they are passed on', async () => {
  const { store, lead, assistant } = await twoPhones();
  const writer = openSync(lead);
  const reader = openRaw(assistant);
  await Promise.all([writer.synced(), reader.opened]);
  store.hold();
  const sent: Uint8Array[] = [];
  writer.doc.on('update', (update: Uint8Array, origin: unknown) => {
    if (origin !== writer.provider) sent.push(update);
  });
  for (const key of ['a', 'b', 'c']) writer.write(key, 'in order');
  await store.waiting(3);
  await store.release();
  await reader.frame((frame) => isUpdate(frame) && reader.frames.filter(isUpdate).length === 3);
  expect(reader.frames.filter(isUpdate).map((frame) => payloadOf(frame, 2))).toEqual(sent);
});

test('[SYN3] a phone that comes late gets what is on the disk and nothing that is still on its way there', async () => {
  const { store, lead, assistant } = await twoPhones();
  const writer = openSync(lead);
  await writer.synced();
  writer.write('stored', 'on the disk');
  await writer.everythingDurable();
  store.hold();
  writer.write('held', 'on its way to the disk');
  await store.waiting(1);
  const late = openRaw(assistant);
  await late.opened;
  late.send(askFrame(Y.encodeStateVector(new Y.Doc())));
  const doc = new Y.Doc();
  Y.applyUpdate(doc, payloadOf(await late.frame(isAnswer), 2));
  expect(hasEntry('stored')(doc)).toBe(true);
  expect(hasEntry('held')(doc)).toBe(false);
  await store.release();
  Y.applyUpdate(doc, payloadOf(await late.frame(isUpdate), 2));
  expect(hasEntry('held')(doc)).toBe(true);
});

test('[SYN5] what a phone wrote while it was away is asked for when it comes back', async () => {
  const { lead, assistant } = await twoPhones();
  const [a, b] = [openSync(lead), openSync(assistant)];
  await Promise.all([a.synced(), b.synced()]);
  a.provider.disconnect();
  a.write('away', 'written without a network');
  a.provider.connect();
  await Promise.all([b.docShows(hasEntry('away')), a.everythingDurable()]);
});

test('coming back with nothing new stores nothing', async () => {
  const { store, lead } = await twoPhones();
  const phone = openSync(lead);
  await phone.synced();
  phone.write('once', 'first');
  phone.write('once', 'second'); // leaves a deletion, which every answer repeats
  await phone.everythingDurable();
  const asked = store.asked;
  const reader = openSync(lead, phone.doc);
  await reader.synced();
  // Its own answer has been dealt with when a later update of it is stored.
  reader.write('later', 'third');
  await reader.everythingDurable();
  expect(store.asked).toBeLessThanOrEqual(asked + 2); // two providers share the document and both send the update
});

test('[SYN13] a full disk: the update is passed to nobody, all are asked to try again, health says so, and it mends', async () => {
  const time = heldTime();
  const { store, server, lead, assistant } = await twoPhones({ time });
  const [a, b] = [openSync(lead), openSync(assistant)];
  await Promise.all([a.synced(), b.synced()]);
  expect(await healthOf(server)).toMatchObject({ status: 200, health: { ok: true, nights: 1 } });
  store.fail();
  const codes = Promise.all([a.closed(), b.closed()]);
  a.write('lost?', 'while the disk is full');
  expect(await codes).toEqual([1013, 1013]);
  expect(await healthOf(server)).toMatchObject({ status: 503, health: { ok: false } });
  await b.synced();
  expect(hasEntry('lost?')(b.doc)).toBe(false);
  store.mend();
  time.advance(DISK_REST_MS);
  await Promise.all([b.docShows(hasEntry('lost?')), a.everythingDurable()]);
  expect(await healthOf(server)).toMatchObject({ status: 200, health: { ok: true } });
});

test('[SYN8] a server that stops waits for what is on its way to the disk', async () => {
  const { store, server, lead } = await twoPhones();
  const bystander = await startServer();
  const night = nightOf(server);
  const phone = openSync(lead);
  await phone.synced();
  store.hold();
  phone.write('last', 'just before the end');
  await store.waiting(1);
  const code = phone.closed();
  let writtenAtClose: number | null = null;
  store.close = async () => {
    writtenAtClose = store.written;
  };
  const stopped = server.close();
  expect(await code).toBe(1012);
  // While another server of this process answers questions, a hasty one would let go of its store.
  for (let question = 0; question < 20; question += 1) await healthOf(bystander);
  expect(writtenAtClose).toBeNull();
  const written = store.written;
  await store.release();
  await stopped;
  expect(writtenAtClose).toBe(written + 1);
  const kept = new Y.Doc();
  for (const update of (await store.loadNight(night)).updates) Y.applyUpdate(kept, update);
  expect(hasEntry('last')(kept)).toBe(true);
});
