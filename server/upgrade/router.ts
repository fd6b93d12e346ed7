import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { SIGNALS_PATH, SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import type { Log } from '../logging.ts';
import { isSameOrigin } from '../network/own-host.ts';

/** Takes over a socket that wants to speak something other than HTTP. */
export type Upgrade = (request: IncomingMessage, socket: Duplex, head: Buffer) => void;

function turnAway(socket: Duplex, status: string): void {
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

/**
 * The one listener for upgrades of the server: two of them would each end the other's sockets.
 * A page of another origin is turned away before anything else is looked at: the rules that keep pages of
 * different sites apart do not hold for WebSockets.
 */
export function createUpgradeRouter(routes: { sync: Upgrade; signals: Upgrade; log: Log }): Upgrade {
  return (request, socket, head) => {
    socket.on('error', () => socket.destroy()); // a connection that breaks off must not end the process
    const path = (request.url ?? '').split('?', 1)[0] ?? '';
    if (!isSameOrigin(request.headers)) {
      routes.log.warn({ reason: 'origin', socket: 'upgrade' }, 'refused');
      return turnAway(socket, '403 Forbidden');
    }
    if (path.startsWith(SYNC_PATH)) return routes.sync(request, socket, head);
    if (path.startsWith(SIGNALS_PATH)) return routes.signals(request, socket, head);
    turnAway(socket, '404 Not Found');
  };
}
