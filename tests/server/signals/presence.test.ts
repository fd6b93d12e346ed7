import { expect, test } from 'vitest';
import { nightOf, pairPhone, startServer } from '../../support/server-scene.ts';
import { smallNight } from '../../support/server-seed.ts';
import { openSignals } from '../../support/server-signals-phone.ts';
import { heldTime } from '../../support/server-time.ts';

test('[PRE1 PRE2] each phone sees name, role, visibility and age of every phone of its night, gone ones included', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  const lead = openSignals(await pairPhone(server, 'lead'));
  await lead.connected();
  const assistant = openSignals(await pairPhone(server, 'assistant'));
  await lead.presence((phones) => phones.length === 2);
  assistant.socket.emit('beat', { visible: true });
  await lead.presence((phones) => phones.some(({ role, visible }) => role === 'assistant' && visible));
  time.advance(4000);
  lead.socket.emit('beat', { visible: false });
  const phones = await lead.presence((list) => list.some(({ agoMs }) => agoMs === 4000));
  expect(phones).toEqual([
    expect.objectContaining({ name: 'the lead', role: 'lead', visible: false, agoMs: 0, connected: true }),
    expect.objectContaining({ name: 'the assistant', role: 'assistant', visible: true, agoMs: 4000 }),
  ]);
  assistant.socket.disconnect();
  const without = await lead.presence((list) => list.some(({ connected }) => !connected));
  expect(without.map(({ role, connected }) => [role, connected])).toEqual([
    ['lead', true],
    ['assistant', false],
  ]);
});

test('[PRE2] a phone with two sockets is one phone, and is there until the last of them goes', async () => {
  const server = await startServer();
  const lead = openSignals(await pairPhone(server, 'lead'));
  const paired = await pairPhone(server, 'assistant');
  const [first, second] = [openSignals(paired), openSignals(paired)];
  await Promise.all([lead, first, second].map((phone) => phone.connected()));
  first.socket.disconnect();
  second.socket.emit('beat', { visible: true });
  const phones = await lead.presence((list) => list.some(({ visible }) => visible));
  expect(phones).toHaveLength(2);
  expect(phones.every(({ connected }) => connected)).toBe(true);
  second.socket.disconnect();
  await lead.presence((list) => list.some(({ role, connected }) => role === 'assistant' && !connected));
});

test('[PRE1] nights do not see each other, and a malformed beat is none', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  const here = openSignals(await pairPhone(server, 'lead', nightOf(server)));
  const other = (await server.makeNight(smallNight('Boat house'))).id;
  const there = openSignals(await pairPhone(server, 'lead', other));
  await Promise.all([here.connected(), there.connected()]);
  time.advance(1000);
  (here.socket.emit as (...args: unknown[]) => void)('beat', { visible: 'perhaps' });
  time.advance(500);
  here.socket.emit('beat', { visible: true });
  const phones = await here.presence((list) => list.some(({ visible }) => visible));
  expect(phones).toHaveLength(1);
  await there.presence((list) => list.length === 1);
});
