import { randomBytes } from 'node:crypto';
import { expect, test } from 'vitest';
import { createMemoryStore } from '../../../server/store/memory-store.ts';
import { callCarry } from '../../../shared/document/commands/call-carry.ts';
import { readNight } from '../../../shared/document/snapshot.ts';
import { makeId } from '../../../shared/ids.ts';
import { pairPhone, startServer } from '../../support/server-scene.ts';
import { openSignals } from '../../support/server-signals-phone.ts';
import { openSync } from '../../support/server-sync-phone.ts';

test('[MSG1] a call whose heads-up is lost with the server reaches the other phone all the same', async () => {
  const store = { ...createMemoryStore(), close: async () => undefined };
  const first = await startServer({ store });
  const [lead, assistant] = [await pairPhone(first, 'lead'), await pairPhone(first, 'assistant')];
  const [writer, bell] = [openSync(lead), openSignals(lead)];
  await Promise.all([writer.synced(), bell.connected()]);
  const hand = { person: lead.membership.person, now: Date.now, newId: () => makeId(randomBytes) };
  const mark = { spot: { x: 3, y: 4 }, heightM: 2.2, facingDeg: 90, tiltDeg: -15, powerStops: -3 };
  const called = callCarry(writer.doc, hand, { standId: 'k', mark });
  if (!called.ok) throw new Error(called.reason);
  await writer.everythingDurable();
  const headsUp = {
    id: 'h1',
    kind: 'call',
    carryId: called.carryId,
    expiresAt: Date.now() + 60_000,
  } as const;
  expect(await bell.call(headsUp)).toMatchObject({ ok: true });
  await first.close();
  const second = await startServer({ store });
  const [reader, ear] = [
    openSync({ ...assistant, url: second.url }),
    openSignals({ ...assistant, url: second.url }),
  ];
  await Promise.all([reader.synced(), ear.connected()]);
  await ear.socket.emitWithAck('clock'); // all that the server had to send on arrival has come
  expect(ear.rings).toHaveLength(0);
  const [carry] = readNight(reader.doc).carries;
  expect(carry).toMatchObject({ id: called.carryId, state: 'called', current: { mark } });
});
