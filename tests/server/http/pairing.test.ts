import { createHash } from 'node:crypto';
import jsQr from 'jsqr';
import { expect, test } from 'vitest';
import { INVITE_MS, LEAD_CODE_MS } from '../../../server/access/secrets.ts';
import { createMemoryStore } from '../../../server/store/memory-store.ts';
import { API, inviteSchema, refusalSchema } from '../../../shared/messages/http.ts';
import { svgPixels } from '../../support/server-qr.ts';
import { callApi, nightOf, pairPhone, pairWith, startServer } from '../../support/server-scene.ts';
import { smallNight } from '../../support/server-seed.ts';
import { heldTime } from '../../support/server-time.ts';

async function reasonOf(response: Response): Promise<[number, string]> {
  return [response.status, refusalSchema.parse(await response.json()).reason];
}

const membership = (url: string, night: string, as: string, cookie = '') =>
  fetch(`${url}${API.membership}?${new URLSearchParams({ night, as })}`, { headers: { cookie } });

test('[AUT3] a secret pairs one phone: it gets its face, and a token in a cookie that no script reads', async () => {
  const server = await startServer();
  const night = nightOf(server);
  const response = await callApi(server, 'pair', { secret: server.mint(night, 'lead'), name: '  Noor ' });
  expect(response.status).toBe(200);
  const body = await response.json();
  expect(body).toEqual({
    night,
    title: 'Barn dance',
    role: 'lead',
    person: expect.any(String),
    name: 'Noor',
  });
  const [cookie = ''] = response.headers.getSetCookie();
  expect(cookie).toMatch(new RegExp(`^hushmark-lead-${night}=[A-Za-z0-9_-]{43}; `));
  for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/', `Max-Age=${30 * 24 * 3600}`])
    expect(cookie.split('; ')).toContain(part);
  const again = await membership(server.url, night, 'lead', cookie.split(';')[0]);
  expect(await again.json()).toEqual(body);
});

test('[AUT2] a wrong secret, a used one and one that is over are refused alike', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  const night = nightOf(server);
  const used = server.mint(night, 'lead');
  await pairWith(server.url, used, 'Noor');
  const over = server.mint(night, 'lead');
  time.advance(LEAD_CODE_MS);
  for (const secret of ['a'.repeat(26), used, over])
    expect(await reasonOf(await callApi(server, 'pair', { secret, name: 'Noor' }))).toEqual([
      403,
      'bad-secret',
    ]);
});

test('[AUT2] a lead code works until just before its end', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  const secret = server.mint(nightOf(server), 'lead');
  time.advance(LEAD_CODE_MS - 1);
  expect((await pairWith(server.url, secret, 'Noor')).role).toBe('lead');
});

const notPairings: [string, unknown][] = [
  ['no secret', { name: 'Noor' }],
  ['no name', { secret: 'a'.repeat(26) }],
  ['a name of spaces', { secret: 'a'.repeat(26), name: '   ' }],
  ['a very long name', { secret: 'a'.repeat(26), name: 'n'.repeat(41) }],
  ['a number for a secret', { secret: 7, name: 'Noor' }],
  ['a list', []],
];
test.each(notPairings)(
  'a malformed request to pair says so, and uses up no secret: %s',
  async (_name, body) => {
    const server = await startServer();
    expect(await reasonOf(await callApi(server, 'pair', body))).toEqual([400, 'malformed']);
  },
);

test('what is not JSON, or too much of it, gets a reason too', async () => {
  const server = await startServer();
  const send = (body: string, type = 'application/json') =>
    fetch(`${server.url}${API.pair}`, { method: 'POST', headers: { 'content-type': type }, body });
  expect(await reasonOf(await send('{"secret":'))).toEqual([400, 'malformed']);
  expect(await reasonOf(await send('secret=1', 'text/plain'))).toEqual([400, 'malformed']);
  expect(await reasonOf(await send(JSON.stringify({ secret: 'a'.repeat(5000), name: 'x' })))).toEqual([
    413,
    'malformed',
  ]);
  expect(await reasonOf(await fetch(`${server.url}/api/no-such-route`))).toEqual([404, 'malformed']);
});

test('[AUT7] pairing is limited for each address', async () => {
  const time = heldTime();
  const server = await startServer({ time, pairingRate: { perSecond: 1, burst: 3 } });
  const attempt = async () => (await reasonOf(await callApi(server, 'pair', {})))[1];
  expect([await attempt(), await attempt(), await attempt(), await attempt()]).toEqual([
    'malformed',
    'malformed',
    'malformed',
    'too-many',
  ]);
  time.advance(1000);
  expect(await attempt()).toBe('malformed');
});

test('[AUT7] a wrong secret is answered late, a right one at once', async () => {
  const time = heldTime();
  const server = await startServer({ time, wrongSecretMs: 250 });
  let answered = false;
  const wrong = callApi(server, 'pair', { secret: 'a'.repeat(26), name: 'Noor' }).then((response) => {
    answered = true;
    return response;
  });
  await time.timerOf(250);
  expect((await pairPhone(server, 'lead')).role).toBe('lead');
  expect(answered).toBe(false);
  time.advance(250);
  expect(await reasonOf(await wrong)).toEqual([403, 'bad-secret']);
});

test('[AUT3] a phone that pairs again stays the same person, and its old token ends', async () => {
  const server = await startServer();
  const night = nightOf(server);
  const first = await pairPhone(server, 'lead');
  const secret = server.mint(night, 'lead');
  const response = await callApi(server, 'pair', { secret, name: 'Noor' }, { cookie: first.cookie });
  expect(await response.json()).toMatchObject({ person: first.membership.person, name: 'Noor' });
  expect(await reasonOf(await membership(server.url, night, 'lead', first.cookie))).toEqual([
    401,
    'unpaired',
  ]);
});

test('two phones in one role are two people', async () => {
  const server = await startServer();
  const [one, other] = [await pairPhone(server, 'looker-on'), await pairPhone(server, 'looker-on')];
  expect(one.membership.person).not.toBe(other.membership.person);
});

test('[AUT3] a token is stored as its hash alone, and has 256 bits', async () => {
  const store = createMemoryStore();
  const server = await startServer({ store });
  const { cookie, membership: who } = await pairPhone(server, 'lead');
  const token = cookie.split('=')[1] ?? '';
  expect(Buffer.from(token, 'base64url')).toHaveLength(32);
  const [entry] = [...(await store.listDevices())];
  expect(entry?.[0]).toBe(createHash('sha256').update(token).digest('hex'));
  expect(entry?.[1]).toMatchObject({ person: who.person, role: 'lead', name: 'the lead' });
  expect(JSON.stringify(entry)).not.toContain(token);
});

test('a paired phone stays paired when the server starts again', async () => {
  const store = { ...createMemoryStore(), close: async () => undefined };
  const first = await startServer({ store });
  const phone = await pairPhone(first, 'assistant');
  await first.close();
  const second = await startServer({ store });
  const answer = await membership(second.url, phone.night, 'assistant', phone.cookie);
  expect(await answer.json()).toEqual(phone.membership);
});

test('[AUT1] without a token for that night and role there is no membership', async () => {
  const server = await startServer();
  const night = nightOf(server);
  const lead = await pairPhone(server, 'lead');
  const other = (await server.makeNight(smallNight('Boat house'))).id;
  const ask = async (id: string, as: string, cookie: string) =>
    reasonOf(await membership(server.url, id, as, cookie));
  expect(await ask(night, 'lead', '')).toEqual([401, 'unpaired']);
  expect(await ask(night, 'assistant', lead.cookie)).toEqual([401, 'unpaired']);
  expect(await ask(other, 'lead', lead.cookie)).toEqual([401, 'unpaired']);
  expect(await ask(other, 'lead', lead.cookie.replace(night, other))).toEqual([401, 'unpaired']);
  expect(await ask('nowhere', 'lead', lead.cookie)).toEqual([404, 'no-such-night']);
  expect(await ask('a/b', 'lead', lead.cookie)).toEqual([400, 'malformed']);
  expect(await ask(night, 'guest', lead.cookie)).toEqual([400, 'malformed']);
});

test('[AUT2 AUT4] the lead invites: links for every address with QR codes that read back as the link, single use, ten minutes', async () => {
  const time = heldTime();
  const server = await startServer({
    time,
    addresses: () => [
      { card: 'wlan0', ip: '192.168.4.1' },
      { card: 'eth0', ip: '10.0.0.7' },
    ],
  });
  const lead = await pairPhone(server, 'lead');
  const wish = { night: lead.night, as: 'lead', role: 'assistant' };
  const response = await callApi(server, 'invite', wish, { cookie: lead.cookie });
  const invite = inviteSchema.parse(await response.json());
  expect(invite.expiresAt).toBe(time.now() + INVITE_MS);
  expect(invite.links.map(({ url }) => new URL(url).host)).toEqual([
    `192.168.4.1:${server.port}`,
    `10.0.0.7:${server.port}`,
    `localhost:${server.port}`,
  ]);
  for (const { url, qr } of invite.links) {
    const { data, width, height } = svgPixels(qr);
    expect(jsQr(data, width, height)?.data).toBe(url);
  }
  const secret = invite.links[0]?.url.split('#pair=')[1] ?? '';
  const phone = await pairWith(server.url, secret, 'Sam');
  expect(phone.role).toBe('assistant');
  expect(phone.night).toBe(lead.night);
  await expect(pairWith(server.url, secret, 'Sam again')).rejects.toThrow('bad-secret');
});

test('[AUT4] an invitation that is over pairs nobody', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  const lead = await pairPhone(server, 'lead');
  const wish = { night: lead.night, as: 'lead', role: 'assistant' };
  const invite = inviteSchema.parse(
    await (await callApi(server, 'invite', wish, { cookie: lead.cookie })).json(),
  );
  time.advance(INVITE_MS);
  const secret = invite.links[0]?.url.split('#pair=')[1] ?? '';
  await expect(pairWith(server.url, secret, 'Sam')).rejects.toThrow('bad-secret');
});

test('[AUT4] only a lead of that night invites', async () => {
  const server = await startServer();
  const lead = await pairPhone(server, 'lead');
  const assistant = await pairPhone(server, 'assistant');
  const { night } = lead;
  const ask = async (wish: unknown, cookie: string) =>
    reasonOf(await callApi(server, 'invite', wish, { cookie }));
  expect(await ask({ night, as: 'lead', role: 'assistant' }, '')).toEqual([401, 'unpaired']);
  expect(await ask({ night, as: 'lead', role: 'assistant' }, assistant.cookie)).toEqual([401, 'unpaired']);
  expect(await ask({ night, as: 'assistant', role: 'assistant' }, assistant.cookie)).toEqual([
    403,
    'not-allowed',
  ]);
  expect(await ask({ night: 'nowhere', as: 'lead', role: 'assistant' }, lead.cookie)).toEqual([
    404,
    'no-such-night',
  ]);
  expect(await ask({ night, as: 'lead', role: 'guest' }, lead.cookie)).toEqual([400, 'malformed']);
});

test('[AUT5] a page of another origin, or a name of the public internet, may not use the routes', async () => {
  const server = await startServer();
  const secret = server.mint(nightOf(server), 'lead');
  const foreign = await callApi(
    server,
    'pair',
    { secret, name: 'x' },
    { origin: 'http://elsewhere.example' },
  );
  expect(await reasonOf(foreign)).toEqual([403, 'not-allowed']);
  const own = await callApi(server, 'pair', { secret, name: 'x' }, { origin: server.url });
  expect(own.status).toBe(200);
});

test('[AUT1] health is open to all and tells nothing but that', async () => {
  const time = heldTime();
  const server = await startServer({ time });
  time.advance(61_000);
  const response = await fetch(`${server.url}${API.health}`);
  expect(await response.json()).toEqual({ ok: true, nights: 1, uptimeS: 61 });
});
