import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { type WebSocket, WebSocketServer } from 'ws';
import { asId, ID_PATTERN, type NightId } from '../../shared/ids.ts';
import { CLOSE_REASONS, type CloseReason } from '../../shared/messages/close-reasons.ts';
import { LARGEST_SYNC_BYTES, SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import { isRole } from '../../shared/roles.ts';
import { tokenOf } from '../access/cookies.ts';
import type { Devices } from '../access/devices.ts';
import type { Log } from '../logging.ts';
import type { Device } from '../store/store.ts';
import type { Time } from '../time.ts';
import { SyncConnection } from './connection.ts';
import { GOODBYE_MS, PING_MS, type SyncLimits } from './limits.ts';
import type { Room } from './room.ts';

interface Deps {
  readonly roomOf: (night: NightId) => Room | null;
  readonly devices: Devices;
  readonly time: Time;
  readonly log: Log;
  readonly limits: SyncLimits;
}

type Admission = { readonly room: Room; readonly device: Device } | { readonly refused: CloseReason };

/** Takes sync sockets: `/y/<night>?as=<role>`, with the token of that night and role in its cookie. */
export class SyncServer {
  readonly #deps: Deps;
  // Above our own limit, so that a message that is merely too large is refused with our reason; far above
  // it the library cuts the socket with its own (1009).
  readonly #server = new WebSocketServer({
    noServer: true,
    maxPayload: 2 * LARGEST_SYNC_BYTES,
    perMessageDeflate: false,
  });
  readonly #connections = new Set<SyncConnection>();
  #stopPinging: () => void = () => undefined;

  constructor(deps: Deps) {
    this.#deps = deps;
    this.#keepPinging();
  }

  /** Answers an upgrade request. A refused phone is let in and shown out with a reason: a browser cannot read a refusal of the upgrade itself. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    const admission = this.#admit(request);
    this.#server.handleUpgrade(request, socket, head, (webSocket) => {
      webSocket.on('error', () => webSocket.terminate()); // a broken frame must not end the process
      if ('refused' in admission) this.#refuse(webSocket, admission.refused);
      else this.#connect(webSocket, admission.room, admission.device);
    });
  }

  /** Gives sockets that were asked to go a moment to say goodbye, then cuts what is left. */
  async close(): Promise<void> {
    this.#stopPinging();
    const gone = [...this.#server.clients].map(
      (client) => new Promise<void>((resolve) => client.once('close', () => resolve())),
    );
    const stopWaiting = this.#deps.time.after(GOODBYE_MS, () => {
      for (const client of this.#server.clients) client.terminate();
    });
    await Promise.all(gone);
    stopWaiting();
    this.#server.close();
  }

  #admit(request: IncomingMessage): Admission {
    const url = new URL(request.url ?? '', 'http://localhost');
    const name = url.pathname.slice(SYNC_PATH.length);
    const role = url.searchParams.get('as');
    if (!ID_PATTERN.test(name)) return { refused: 'no-such-night' };
    const night = asId<NightId>(name);
    const room = this.#deps.roomOf(night);
    if (!room) return { refused: 'no-such-night' };
    if (!isRole(role)) return { refused: 'unpaired' };
    const device = this.#deps.devices.find(tokenOf(request.headers.cookie, night, role), night, role);
    return device ? { room, device } : { refused: 'unpaired' };
  }

  #refuse(webSocket: WebSocket, reason: CloseReason): void {
    this.#deps.log.warn({ reason, socket: 'sync' }, 'refused');
    webSocket.close(CLOSE_REASONS[reason], reason);
    // Whoever does not take the hint holds no socket open.
    const stopWaiting = this.#deps.time.after(GOODBYE_MS, () => webSocket.terminate());
    webSocket.on('close', stopWaiting);
  }

  #connect(webSocket: WebSocket, room: Room, device: Device): void {
    const log = this.#deps.log.child({ night: room.id, person: device.person, role: device.role });
    const { limits, time } = this.#deps;
    const connection = new SyncConnection(webSocket, { room, device, limits, now: time.now, log });
    this.#connections.add(connection);
    log.info({ socket: 'sync' }, 'joined');
    webSocket.on('close', (code) => {
      this.#connections.delete(connection);
      log.info({ socket: 'sync', code }, 'left');
    });
  }

  #keepPinging(): void {
    this.#stopPinging = this.#deps.time.after(PING_MS, () => {
      for (const connection of this.#connections) connection.ping();
      this.#keepPinging();
    });
  }
}
