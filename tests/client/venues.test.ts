import { expect, onTestFinished, test, vi } from 'vitest';
import {
  type Asker,
  listVenues,
  readVenue,
  removeVenue,
  renameVenue,
  restoreVenue,
  saveVenue,
} from '../../client/session/venues.ts';
import { type PairedPhone, pairPhone, startServer } from '../support/server-scene.ts';
import { demoVenue } from '../support/server-venues.ts';

/** What a browser adds to a path: the host of its page, and the cookie that it was given. */
function asBrowserOf(phone: PairedPhone): Asker {
  const send = globalThis.fetch;
  vi.stubGlobal('fetch', (path: string, init: RequestInit) =>
    send(`${phone.url}${path}`, { ...init, headers: { ...init.headers, cookie: phone.cookie } }),
  );
  onTestFinished(() => void vi.unstubAllGlobals());
  return phone;
}

test('[VEN3] the lead’s phone saves, lists, reads, renames, removes and restores on a real server', async () => {
  const asker = asBrowserOf(await pairPhone(await startServer(), 'lead'));
  expect(await listVenues(asker)).toEqual({ ok: true, value: [] });
  expect(await saveVenue(asker, 'mill', demoVenue())).toMatchObject({ ok: true, value: { id: 'mill' } });
  expect(await listVenues(asker)).toMatchObject({ ok: true, value: [{ name: 'The old mill' }] });
  expect(await renameVenue(asker, 'mill', 'Mill')).toMatchObject({ ok: true, value: { name: 'Mill' } });
  expect(await readVenue(asker, 'mill')).toEqual({ ok: true, value: demoVenue('Mill') });
  expect(await removeVenue(asker, 'mill')).toMatchObject({
    ok: true,
    value: { removedAt: expect.any(Number) },
  });
  expect(await readVenue(asker, 'mill')).toEqual({ ok: false, reason: 'no-such-venue' });
  expect(await restoreVenue(asker, 'mill')).toMatchObject({ ok: true, value: { removedAt: null } });
  expect(await readVenue(asker, 'mill')).toMatchObject({ ok: true });
});

test('[AUT9] an assistant’s phone is told that it may not, and the server that is gone does not answer', async () => {
  const server = await startServer();
  const asker = asBrowserOf(await pairPhone(server, 'assistant'));
  expect(await saveVenue(asker, 'mill', demoVenue())).toEqual({ ok: false, reason: 'not-allowed' });
  await server.close();
  expect(await listVenues(asker)).toEqual({ ok: false, reason: 'no-answer' });
});
