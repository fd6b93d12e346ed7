import { expect, test } from 'vitest';
import { createMemoryStore } from '../../../server/store/memory-store.ts';
import { API, venueListSchema } from '../../../shared/messages/http.ts';
import { MOST_VENUE_BYTES, parseVenue } from '../../../shared/venue/venue-file.ts';
import { nightOf, pairPhone, startServer } from '../../support/server-scene.ts';
import { smallNight } from '../../support/server-seed.ts';
import { askVenue, demoVenue, venueUrl } from '../../support/server-venues.ts';

const reasonOf = async (response: Response) => [response.status, (await response.json()).reason];
const listOf = async (response: Response) =>
  venueListSchema.parse(await response.json()).venues.map(({ name, removedAt }) => [name, removedAt]);

/** The venue routes that change something, each as it would be granted. */
const WRITES = [
  ['PUT', '', demoVenue()],
  ['PATCH', '', { name: 'Barn' }],
  ['DELETE', '', undefined],
  ['POST', '/restore', undefined],
] as const;

test('[VEN3 AUT9] the lead of one night saves a venue; every phone of another night lists and reads it', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const saved = await askVenue(lead, 'PUT', { venue: 'mill', body: demoVenue() });
  expect(await saved.json()).toMatchObject({ id: 'mill', name: 'The old mill', featureCount: 13 });
  const other = (await server.makeNight(smallNight('Boat house'))).id;
  for (const role of ['lead', 'assistant', 'looker-on'] as const) {
    const phone = await pairPhone(server, role, other);
    expect(await listOf(await askVenue(phone, 'GET'))).toEqual([['The old mill', null]]);
    const read = await askVenue(phone, 'GET', { venue: 'mill' });
    expect(parseVenue(await read.json())).toEqual({ ok: true, venue: demoVenue() });
  }
});

test('[AUT9] an assistant or a looker-on changes nothing in the library', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  await askVenue(lead, 'PUT', { venue: 'mill', body: demoVenue() });
  for (const role of ['assistant', 'looker-on'] as const) {
    const phone = await pairPhone(server, role);
    for (const [method, part, body] of WRITES)
      expect(await reasonOf(await askVenue(phone, method, { venue: 'mill', part, body })), method).toEqual([
        403,
        'not-allowed',
      ]);
    // Nor by saying that it is the lead: its token is for its own role.
    const posing = { ...phone, role: 'lead' as const };
    expect(await reasonOf(await askVenue(posing, 'DELETE', { venue: 'mill' }))).toEqual([401, 'unpaired']);
  }
  expect(await listOf(await askVenue(lead, 'GET'))).toEqual([['The old mill', null]]);
});

test('[AUT1 AUT9] without pairing no route answers, and no body is read', async () => {
  const server = await startServer();
  const stranger = { ...(await pairPhone(server, 'lead')), cookie: '' };
  expect(await reasonOf(await askVenue(stranger, 'GET'))).toEqual([401, 'unpaired']);
  expect(await reasonOf(await askVenue(stranger, 'GET', { venue: 'mill' }))).toEqual([401, 'unpaired']);
  for (const [method, part, body] of WRITES)
    expect(await reasonOf(await askVenue(stranger, method, { venue: 'mill', part, body }))).toEqual([
      401,
      'unpaired',
    ]);
  // Were the body read first, it would be found not to be JSON.
  const garbage = await fetch(venueUrl(stranger, 'mill'), {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: '{"format":',
  });
  expect(await reasonOf(garbage)).toEqual([401, 'unpaired']);
  const nowhere = { ...stranger, night: 'nowhere' as typeof stranger.night };
  expect(await reasonOf(await askVenue(nowhere, 'GET'))).toEqual([404, 'no-such-night']);
  for (const query of ['', '?night=a/b&as=lead', `?night=${nightOf(server)}&as=guest`])
    expect(await reasonOf(await fetch(`${server.url}${API.venues}${query}`))).toEqual([400, 'malformed']);
});

test('[AUT5] a page of another origin may not use the library', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const foreign = await fetch(venueUrl(lead), {
    headers: { cookie: lead.cookie, origin: 'http://elsewhere.example' },
  });
  expect(await reasonOf(foreign)).toEqual([403, 'not-allowed']);
});

test('[VEN3] rename, remove, restore: each answers with the venue as it is then', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const mill = { venue: 'mill' };
  await askVenue(lead, 'PUT', { ...mill, body: demoVenue() });
  const renamed = await askVenue(lead, 'PATCH', { ...mill, body: { name: 'Mill' } });
  expect(await renamed.json()).toMatchObject({ id: 'mill', name: 'Mill' });
  expect(await (await askVenue(lead, 'GET', mill)).json()).toEqual(demoVenue('Mill'));
  const removed = await (await askVenue(lead, 'DELETE', mill)).json();
  expect(removed.removedAt).toBeGreaterThan(0);
  expect(await listOf(await askVenue(lead, 'GET'))).toEqual([['Mill', removed.removedAt]]);
  expect(await reasonOf(await askVenue(lead, 'GET', mill))).toEqual([404, 'no-such-venue']);
  const restored = await askVenue(lead, 'POST', { ...mill, part: '/restore' });
  expect(await restored.json()).toMatchObject({ name: 'Mill', removedAt: null });
  expect(await (await askVenue(lead, 'GET', mill)).json()).toEqual(demoVenue('Mill'));
});

test('[VEN2] what is no venue, or too large, is refused and changes nothing', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const put = async (body: unknown, venue = 'mill') => reasonOf(await askVenue(lead, 'PUT', { venue, body }));
  expect(await put({ ...demoVenue(), version: 2 })).toEqual([400, 'malformed']);
  expect(await put({ ...demoVenue(), room: null })).toEqual([400, 'malformed']);
  expect(await put(demoVenue(), 'a.b')).toEqual([400, 'malformed']);
  const large = { ...demoVenue(), padding: 'x'.repeat(MOST_VENUE_BYTES) };
  expect(await put(large)).toEqual([413, 'malformed']);
  for (const name of ['', 'x'.repeat(81), 7])
    expect(await reasonOf(await askVenue(lead, 'PATCH', { venue: 'mill', body: { name } }))).toEqual([
      400,
      'malformed',
    ]);
  expect(await listOf(await askVenue(lead, 'GET'))).toEqual([]);
  for (const [method, part, body] of WRITES.slice(1))
    expect(await reasonOf(await askVenue(lead, method, { venue: 'mill', part, body }))).toEqual([
      404,
      'no-such-venue',
    ]);
});

test('[VEN3] a disk that refuses is said so, and nothing is in the library', async () => {
  const store = {
    ...createMemoryStore(),
    putVenue: () => Promise.reject(new Error('no space left on device')),
  };
  const server = await startServer({ store });
  const lead = await pairPhone(server, 'lead');
  expect(await reasonOf(await askVenue(lead, 'PUT', { venue: 'mill', body: demoVenue() }))).toEqual([
    500,
    'failed',
  ]);
  expect(await listOf(await askVenue(lead, 'GET'))).toEqual([]);
});
