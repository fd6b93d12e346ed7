import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket as NodeWebSocket } from 'ws';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { declareRoots, rootOf } from '../../shared/document/roots.ts';
import { API, type Membership, membershipSchema } from '../../shared/messages/http.ts';
import { SYNC_MESSAGE, SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import { ratio, spread, spreadLine } from './percentiles.ts';
import { type Running, runUntil } from './processes.ts';

const ROUNDS = 1500;
const WARM_UP = 200;

/** Sends one message and resolves with the milliseconds until the other end had it. */
type Round = () => Promise<number>;

async function rawRounds(port: string): Promise<{ round: Round; close: () => void }> {
  const open = () =>
    new Promise<NodeWebSocket>((resolve, reject) => {
      const socket = new NodeWebSocket(`ws://127.0.0.1:${port}`, { perMessageDeflate: false });
      socket.once('open', () => resolve(socket));
      socket.once('error', reject);
    });
  const [from, to] = [await open(), await open()];
  // As many bytes as the update of one small change takes.
  const payload = Buffer.alloc(90, 7);
  return {
    round: () =>
      new Promise((resolve) => {
        const sentAt = performance.now();
        to.once('message', () => resolve(performance.now() - sentAt));
        from.send(payload);
      }),
    close: () => {
      from.close();
      to.close();
    },
  };
}

async function pairedPhone(url: string, secret: string): Promise<{ membership: Membership; cookie: string }> {
  const response = await fetch(`${url}${API.pair}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ secret, name: 'Bench' }),
  });
  const membership = membershipSchema.parse(await response.json());
  return { membership, cookie: response.headers.getSetCookie()[0]?.split(';')[0] ?? '' };
}

async function openPhone(url: string, membership: Membership, cookie: string): Promise<WebsocketProvider> {
  const withCookie = class extends NodeWebSocket {
    constructor(address: string | URL, protocols?: string | string[]) {
      super(address, protocols, { headers: { cookie }, perMessageDeflate: false });
    }
  } as unknown as typeof WebSocket;
  const doc = new Y.Doc();
  declareRoots(doc);
  const provider = new WebsocketProvider(`${url.replace('http', 'ws')}${SYNC_PATH}`, membership.night, doc, {
    WebSocketPolyfill: withCookie,
    params: { as: membership.role },
    disableBc: true,
  });
  for (const type of [SYNC_MESSAGE.durable, SYNC_MESSAGE.heartbeat])
    provider.messageHandlers[type] = () => undefined;
  await new Promise<void>((resolve) => provider.on('sync', (synced) => synced && resolve()));
  return provider;
}

async function storedRounds(url: string, secret: string): Promise<{ round: Round; close: () => void }> {
  const { membership, cookie } = await pairedPhone(url, secret);
  const from = await openPhone(url, membership, cookie);
  const to = await openPhone(url, membership, cookie);
  let count = 0;
  return {
    round: () =>
      new Promise((resolve) => {
        const log = rootOf(to.doc, 'log');
        const key = `bench-${count++}`;
        const look = () => {
          if (!log.has(key)) return;
          log.unobserve(look);
          resolve(performance.now() - sentAt);
        };
        log.observe(look);
        const sentAt = performance.now();
        rootOf(from.doc, 'log').set(key, { by: 'bench', at: count, what: 'bench', about: '', detail: null });
      }),
    close: () => {
      from.destroy();
      to.destroy();
    },
  };
}

/** A pause that lets the rate limit breathe, and is what a tapping person leaves. */
const pause = () => new Promise((resolve) => setTimeout(resolve, 6));

/**
 * One way from phone to phone through the server, stored before it is passed on, beside the bare relay, round by
 * round in turn, so that the machine's mood falls on both alike.
 */
export async function benchOneWay(): Promise<string[]> {
  const folder = await mkdtemp(join(tmpdir(), 'hushmark-bench-'));
  const running: Running[] = [];
  try {
    const relay = await runUntil(['tests/bench/raw-relay.ts'], /port (\d+)/);
    running.push(relay);
    const link = /(http:\/\/localhost:\d+)\/#pair=(\w+)/;
    const server = await runUntil(['server/main.ts', '--port', '0', '--data', folder], link, /Press Enter/);
    running.push(server);
    const raw = await rawRounds(relay.match[1] ?? '');
    const stored = await storedRounds(server.match[1] ?? '', server.match[2] ?? '');
    const [rawMs, storedMs]: [number[], number[]] = [[], []];
    for (let round = 0; round < ROUNDS + WARM_UP; round++) {
      const [one, other] = [await raw.round(), await stored.round()];
      if (round >= WARM_UP) {
        rawMs.push(one);
        storedMs.push(other);
      }
      await pause();
    }
    raw.close();
    stored.close();
    return [
      spreadLine('raw relay, one way', spread(rawMs), 'ms'),
      spreadLine('night, one way, stored first', spread(storedMs), 'ms'),
      spreadLine('night over raw relay', ratio(spread(storedMs), spread(rawMs)), '×'),
    ];
  } finally {
    for (const one of running) await one.stop();
    await rm(folder, { recursive: true, force: true });
  }
}
