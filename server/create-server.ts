import { createServer as createHttpServer, type Server as HttpServer } from 'node:http';
import type { NightSeed } from '../shared/document/create-night.ts';
import type { NightId } from '../shared/ids.ts';
import type { Role } from '../shared/roles.ts';
import { Attempts } from './access/attempts.ts';
import { Devices } from './access/devices.ts';
import { type Admission, LEAD_CODE_MS, Secrets } from './access/secrets.ts';
import type { Rate } from './access/token-bucket.ts';
import { loadAssets } from './http/assets.ts';
import { createApp } from './http/create-app.ts';
import { type Log, silentLog } from './logging.ts';
import { type Address, machineAddresses } from './network/addresses.ts';
import { NightList } from './nights/night-list.ts';
import { createSignals } from './signals/create-signals.ts';
import { SIGNAL_RATE } from './signals/guard.ts';
import { StartFailure } from './start-failure.ts';
import type { Device, NightRecord, Store } from './store/store.ts';
import { SYNC_LIMITS, type SyncLimits } from './sync/limits.ts';
import { SyncServer } from './sync/sync-server.ts';
import { machineTime, type Time } from './time.ts';
import { createUpgradeRouter } from './upgrade/router.ts';
import { VenueLibrary } from './venues/venue-library.ts';

export interface ServerOptions {
  /** 0 takes any free port. */
  readonly port: number;
  /** Where nights are kept; the server closes it when it closes. */
  readonly store: Store;
  /** The built client; without it the faces answer that it has not been built. */
  readonly clientDirectory?: string;
  /** The night to begin with where the store has none. */
  readonly firstNight?: NightSeed;
  readonly log?: Log;
  readonly time?: Time;
  readonly addresses?: () => readonly Address[];
  readonly onPaired?: (device: Device, admission: Admission) => void;
  readonly syncLimits?: SyncLimits;
  readonly signalRate?: Rate;
  /** Attempts to pair, for each address. */
  readonly pairingRate?: Rate;
  /** A wrong secret is answered so much later. */
  readonly wrongSecretMs?: number;
}

export interface HushmarkServer {
  /** Where this machine reaches it. */
  readonly url: string;
  readonly port: number;
  /** The nights, the newest first. */
  nights(): readonly NightRecord[];
  makeNight(seed: NightSeed): Promise<NightRecord>;
  /** A fresh single-use secret that pairs a phone in this role; the link for it is `pairLink(host, secret)`. */
  mint(night: NightId, role: Role): string;
  /** Ends all connections with "try again", waits for the disk, and lets go of everything. Calling it again waits for the same end. */
  close(): Promise<void>;
}

/** 20 attempts a minute: a hand that mistypes, not a machine that guesses. */
const PAIRING_RATE: Rate = { perSecond: 20 / 60, burst: 20 };
const WRONG_SECRET_MS = 250;

/** A request of a few hundred bytes is here by then, or its sender only holds the connection. */
const HEADERS_MS = 10_000;
const REQUEST_MS = 15_000;

async function listen(server: HttpServer, port: number): Promise<number> {
  await new Promise<void>((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(listenFailure(error, port)));
    server.listen(port, resolve);
  });
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : port;
}

function listenFailure(error: NodeJS.ErrnoException, port: number): Error {
  const another = 'Choose another: npm start -- --port 8081';
  if (error.code === 'EADDRINUSE')
    return new StartFailure(`Port ${port} is taken by another program. ${another}`);
  if (error.code === 'EACCES') return new StartFailure(`Port ${port} may not be used by you. ${another}`);
  return error;
}

/** Everything that ends sockets and waits for the disk, in the order in which nothing is lost. */
async function shutDown(parts: {
  http: HttpServer;
  sync: SyncServer;
  signals: { close(): Promise<void> };
  nights: NightList;
  store: Store;
}): Promise<void> {
  const stopped = new Promise<void>((resolve) => parts.http.close(() => resolve()));
  const goodbyes = parts.nights.close(); // asks every phone to come back later, and waits for the disk
  await parts.signals.close();
  await goodbyes;
  await parts.sync.close();
  parts.http.closeAllConnections();
  await stopped;
  await parts.store.close();
}

/**
 * Starts a server: loads every night, then listens.
 *
 * @throws StartFailure if the port cannot be had; the store is left open then
 */
export async function createServer(options: ServerOptions): Promise<HushmarkServer> {
  const { store, log = silentLog(), time = machineTime, addresses = machineAddresses } = options;
  const startedAt = time.now();
  const nights = await NightList.load({ store, time, log });
  if (nights.records().length === 0 && options.firstNight) await nights.make(options.firstNight);
  const devices = await Devices.load(store);
  const venues = await VenueLibrary.load(store);
  const secrets = new Secrets(time.now);
  const hasNight = (id: NightId) => nights.room(id) !== null;
  const sync = new SyncServer({
    roomOf: (id) => nights.room(id),
    devices,
    time,
    log,
    limits: options.syncLimits ?? SYNC_LIMITS,
  });
  const signals = createSignals({ hasNight, devices, time, log, rate: options.signalRate ?? SIGNAL_RATE });
  let port = options.port;
  const app = createApp({
    assets: loadAssets(options.clientDirectory ?? ''),
    nightOf: (id) => nights.room(id)?.record ?? null,
    secrets,
    devices,
    venues,
    attempts: new Attempts(options.pairingRate ?? PAIRING_RATE, time.now),
    time,
    log,
    addresses,
    port: () => port,
    onPaired: options.onPaired ?? (() => undefined),
    wrongSecretMs: options.wrongSecretMs ?? WRONG_SECRET_MS,
    health: () => ({
      ok: nights.rooms().every((room) => !room.failed),
      nights: nights.records().length,
      uptimeS: Math.max(0, Math.round((time.now() - startedAt) / 1000)),
    }),
  });
  const http = createHttpServer({ headersTimeout: HEADERS_MS, requestTimeout: REQUEST_MS }, app);
  http.on(
    'upgrade',
    createUpgradeRouter({ sync: (...args) => sync.upgrade(...args), signals: signals.upgrade, log }),
  );
  port = await listen(http, port);
  log.info({ port, nights: nights.records().length }, 'started');
  let closing: Promise<void> | null = null;
  return {
    url: `http://localhost:${port}`,
    port,
    nights: () => nights.records(),
    makeNight: (seed) => nights.make(seed),
    mint: (night, role) => secrets.mint({ night, role, by: 'terminal' }, LEAD_CODE_MS).secret,
    close() {
      closing ??= shutDown({ http, sync, signals, nights, store }).then(() => log.info('stopped'));
      return closing;
    },
  };
}
