import { expect, test } from 'vitest';
import { RING_AGAIN_MS } from '../../../server/signals/heads-up-desk.ts';
import type { HeadsUp, Receipt } from '../../../shared/messages/signals.ts';
import { LARGEST_SIGNAL_BYTES } from '../../../shared/messages/sync-codes.ts';
import { nightOf, pairPhone, startServer } from '../../support/server-scene.ts';
import { smallNight } from '../../support/server-seed.ts';
import { openSignals } from '../../support/server-signals-phone.ts';
import { heldTime } from '../../support/server-time.ts';

async function scene(options: Parameters<typeof startServer>[0] = {}) {
  const time = heldTime();
  const server = await startServer({ time, ...options });
  const headsUp = (id = 'h1', lifeMs = 60_000): HeadsUp => ({
    id,
    kind: 'call',
    carryId: null,
    expiresAt: time.now() + lifeMs,
  });
  const lead = openSignals(await pairPhone(server, 'lead'));
  await lead.connected();
  return { server, time, headsUp, lead };
}

test('[MSG4] rang means that the app of the other phone acknowledged, not that a socket was open', async () => {
  const { server, lead, headsUp } = await scene();
  const assistant = openSignals(await pairPhone(server, 'assistant'));
  await assistant.connected();
  expect(await lead.call(headsUp())).toMatchObject({ ok: true });
  await assistant.ringsReach(1);
  expect(lead.allNews.map(({ reach }) => reach)).toEqual(['taken']);
  assistant.rings[0]?.rang();
  await lead.news(({ id, reach }) => id === 'h1' && reach === 'rang');
  expect(await assistant.heard('h1')).toMatchObject({ ok: true });
  await lead.news(({ reach }) => reach === 'heard');
  expect(lead.allNews.map(({ reach }) => reach)).toEqual(['taken', 'rang', 'heard']);
});

test('[MSG3] a heads-up is sent again until it is acknowledged', async () => {
  const { server, lead, time, headsUp } = await scene();
  const assistant = openSignals(await pairPhone(server, 'assistant'));
  await assistant.connected();
  await lead.call(headsUp());
  await assistant.ringsReach(1);
  time.advance(RING_AGAIN_MS);
  await assistant.ringsReach(2);
  assistant.rings[0]?.rang();
  await lead.news(({ reach }) => reach === 'rang');
  time.advance(10 * RING_AGAIN_MS);
  // A second heads-up comes after all that the first could still have rung.
  await lead.call(headsUp('h2'));
  await assistant.ringsReach(3);
  expect(assistant.rings.map((ring) => ring.headsUp.id)).toEqual(['h1', 'h1', 'h2']);
});

test('[MSG3 MSG4] an assistant who comes later is rung at once; one who never comes is reported', async () => {
  const { server, lead, time, headsUp } = await scene();
  await lead.call(headsUp('waits'));
  await lead.call(headsUp('short', 1000));
  time.advance(1000);
  expect(await lead.news(({ reach }) => reach === 'expired')).toMatchObject({ id: 'short' });
  const assistant = openSignals(await pairPhone(server, 'assistant'));
  await assistant.ringsReach(1);
  expect(assistant.rings[0]?.headsUp).toEqual(headsUp('waits', 59_000));
});

test('no other night and no looker-on is rung', async () => {
  const { server, lead, headsUp } = await scene();
  const here = nightOf(server);
  const elsewhere = (await server.makeNight(smallNight('Boat house'))).id;
  const phones = [
    openSignals(await pairPhone(server, 'assistant', elsewhere)),
    openSignals(await pairPhone(server, 'looker-on', here)),
  ];
  await Promise.all(phones.map((phone) => phone.connected()));
  const assistant = openSignals(await pairPhone(server, 'assistant', here));
  await assistant.connected();
  await lead.call(headsUp());
  await assistant.ringsReach(1);
  // Each has had an answer of the server to a later question: what was sent before has arrived.
  for (const phone of phones) {
    await phone.socket.emitWithAck('clock');
    expect(phone.rings).toHaveLength(0);
  }
});

test('a looker-on is not allowed to call', async () => {
  const { server, headsUp } = await scene();
  const looker = openSignals(await pairPhone(server, 'looker-on'));
  await looker.connected();
  expect(await looker.call(headsUp())).toEqual({ ok: false, reason: 'not-allowed' });
});

const malformed: [string, unknown][] = [
  ['nothing', undefined],
  ['text', 'look!'],
  ['no id', { kind: 'call', carryId: null, expiresAt: 1 }],
  ['an id with a slash', { id: 'a/b', kind: 'call', carryId: null, expiresAt: 1 }],
  ['a kind that there is not', { id: 'a', kind: 'shout', carryId: null, expiresAt: 1 }],
  ['no number for a time', { id: 'a', kind: 'call', carryId: null, expiresAt: 'soon' }],
  ['a list', []],
];
test.each(malformed)(
  '[MSG5] a malformed heads-up gets a receipt that says so: %s',
  async (_name, message) => {
    const { lead } = await scene();
    expect(await lead.call(message as HeadsUp)).toEqual({ ok: false, reason: 'malformed' });
    expect(await lead.heard(message as string)).toEqual({ ok: false, reason: 'malformed' });
  },
);

test('[MSG5] signals without a way to answer, and unknown ones, do no harm', async () => {
  const { lead, time } = await scene();
  const emit = (...packet: unknown[]) => (lead.socket.emit as (...args: unknown[]) => void)(...packet);
  for (const name of ['heads-up', 'heard', 'beat', 'clock', 'no such signal', '__proto__']) {
    emit(name);
    emit(name, 'not a function', 7);
  }
  expect(await lead.socket.emitWithAck('clock')).toBe(time.now());
});

test('[PRE3] the clock answers with the time of the server', async () => {
  const { lead, time } = await scene();
  time.advance(1234);
  expect(await lead.socket.emitWithAck('clock')).toBe(time.now());
});

test('[MSG6] too many signals get a receipt that says so', async () => {
  const { lead } = await scene({ signalRate: { perSecond: 1, burst: 5 } });
  const receipts: Receipt[] = await Promise.all([...Array(8).keys()].map((count) => lead.heard(`h${count}`)));
  expect(receipts.map((receipt) => (receipt.ok ? 'ok' : receipt.reason))).toEqual([
    ...Array(5).fill('ok'),
    ...Array(3).fill('too-many'),
  ]);
});

test('[MSG6] a flood of signals, or one that is too large, ends the socket', async () => {
  const { server, lead } = await scene({ signalRate: { perSecond: 1, burst: 5 } });
  const gone = new Promise((resolve) => lead.socket.once('disconnect', resolve));
  for (let count = 0; count < 300; count += 1) lead.socket.emit('beat', { visible: true });
  await gone;
  const other = openSignals(await pairPhone(server, 'assistant'));
  await other.connected();
  const alsoGone = new Promise((resolve) => other.socket.once('disconnect', resolve));
  (other.socket.emit as (...args: unknown[]) => void)('heard', 'x'.repeat(LARGEST_SIGNAL_BYTES));
  await alsoGone;
});

test('[AUT1] an unpaired phone is refused on the signals socket with a reason that it can read', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const { night } = lead;
  const refused: [unknown, string, string][] = [
    [{ night, as: 'lead' }, '', 'unpaired'],
    [{ night, as: 'assistant' }, lead.cookie, 'unpaired'],
    [{ night, as: 'assistant' }, lead.cookie.replace('-lead-', '-assistant-'), 'unpaired'],
    [{ night: 'anothernight', as: 'lead' }, lead.cookie, 'no-such-night'],
    [{ night, as: 'guest' }, lead.cookie, 'malformed'],
    [{}, lead.cookie, 'malformed'],
  ];
  for (const [auth, cookie, reason] of refused)
    expect(await openSignals({ ...lead, cookie }, auth).refused()).toBe(reason);
});
