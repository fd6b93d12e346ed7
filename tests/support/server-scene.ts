import { onTestFinished } from 'vitest';
import { createServer, type HushmarkServer, type ServerOptions } from '../../server/create-server.ts';
import { createMemoryStore } from '../../server/store/memory-store.ts';
import type { NightId } from '../../shared/ids.ts';
import { API, type Membership, membershipSchema } from '../../shared/messages/http.ts';
import type { Role } from '../../shared/roles.ts';
import { smallNight } from './server-seed.ts';

/** A real server on a free port, ended with the test; kept in memory unless the test says otherwise. */
export async function startServer(options: Partial<ServerOptions> = {}): Promise<HushmarkServer> {
  const server = await createServer({
    port: 0,
    store: createMemoryStore(),
    firstNight: smallNight(),
    wrongSecretMs: 0,
    ...options,
  });
  onTestFinished(() => server.close());
  return server;
}

/** The id of the newest night. */
export function nightOf(server: HushmarkServer): NightId {
  const night = server.nights()[0];
  if (!night) throw new Error('the server has no night');
  return night.id;
}

/** A phone that has been paired: what it knows, and the cookie it carries. */
export interface PairedPhone {
  readonly url: string;
  readonly night: NightId;
  readonly role: Role;
  readonly cookie: string;
  readonly membership: Membership;
}

const post = (url: string, body: unknown, headers: Record<string, string> = {}) =>
  fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });

/** Posts to a route of the API as a phone does. */
export const callApi = (
  server: Pick<HushmarkServer, 'url'>,
  route: keyof typeof API,
  body: unknown,
  headers: Record<string, string> = {},
): Promise<Response> => post(`${server.url}${API[route]}`, body, headers);

/** Uses a secret as a phone does. */
export async function pairWith(url: string, secret: string, name: string): Promise<PairedPhone> {
  const response = await post(`${url}${API.pair}`, { secret, name });
  if (!response.ok) throw new Error(`pairing was refused: ${response.status} ${await response.text()}`);
  const membership = membershipSchema.parse(await response.json());
  const cookie = response.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  return { url, night: membership.night as NightId, role: membership.role, cookie, membership };
}

/** Pairs one phone with a night, the newest if none is named. */
export async function pairPhone(
  server: HushmarkServer,
  role: Role,
  night: NightId = nightOf(server),
): Promise<PairedPhone> {
  return pairWith(server.url, server.mint(night, role), `the ${role}`);
}
