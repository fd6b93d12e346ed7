import { createServer, type IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { Server, type ServerOptions } from 'socket.io';
import { asId, type NightId } from '../../shared/ids.ts';
import type { HttpRefusal } from '../../shared/messages/http.ts';
import { handshakeSchema } from '../../shared/messages/signals.ts';
import { LARGEST_SIGNAL_BYTES, SIGNALS_PATH } from '../../shared/messages/sync-codes.ts';
import { tokenOf } from '../access/cookies.ts';
import type { Devices } from '../access/devices.ts';
import type { Rate } from '../access/token-bucket.ts';
import type { Log } from '../logging.ts';
import type { Device } from '../store/store.ts';
import type { Time } from '../time.ts';
import {
  nightRoom,
  type PhoneSocket,
  personRoom,
  roleRoom,
  type SignalDeps,
  type SignalsServer,
} from './deps.ts';
import { guardRate } from './guard.ts';
import { type Bell, HeadsUpDesk } from './heads-up-desk.ts';
import { onBeat } from './on-beat.ts';
import { onClock } from './on-clock.ts';
import { onHeadsUp } from './on-heads-up.ts';
import { onHeard } from './on-heard.ts';
import { PresenceBoard } from './presence-board.ts';

/** The signals socket of the server. */
export interface Signals {
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  close(): Promise<void>;
}

interface Deps {
  readonly hasNight: (night: NightId) => boolean;
  readonly devices: Devices;
  readonly time: Time;
  readonly log: Log;
  readonly rate: Rate;
}

const OPTIONS: Partial<ServerOptions> = {
  path: SIGNALS_PATH,
  transports: ['websocket'],
  // An upgrade to another path is the router's business; the library would end it after a second.
  destroyUpgrade: false,
  serveClient: false,
  // A dead phone is noticed within 9 s; the defaults take 45.
  pingInterval: 5000,
  pingTimeout: 4000,
  maxHttpBufferSize: LARGEST_SIGNAL_BYTES,
  // Who has not said who he is by then is not coming.
  connectTimeout: 5000,
};

function bellOf(io: SignalsServer): Bell {
  return {
    ring(to, headsUp, rang) {
      for (const socket of io.sockets.sockets.values()) {
        if (!socket.rooms.has(roleRoom(to))) continue;
        // No time limit: an acknowledgement that comes late is one.
        socket.emit('heads-up', headsUp, rang);
      }
    },
    tell: (night, person, news) => void io.to(personRoom(night, person)).emit('heads-up-news', news),
  };
}

/** Who is at the other end of a handshake; a reason where nobody known is. */
function whoIs(socket: PhoneSocket, { hasNight, devices }: Deps): Device | HttpRefusal {
  const handshake = handshakeSchema.safeParse(socket.handshake.auth);
  if (!handshake.success) return 'malformed';
  const night = asId<NightId>(handshake.data.night);
  if (!hasNight(night)) return 'no-such-night';
  const token = tokenOf(socket.handshake.headers.cookie, night, handshake.data.as);
  return devices.find(token, night, handshake.data.as) ?? 'unpaired';
}

function welcome(socket: PhoneSocket, deps: SignalDeps, { log: parent, time, rate }: Deps): void {
  const { device } = socket.data;
  const log = parent.child({ night: device.night, person: device.person, role: device.role });
  guardRate(socket, time.now, log, rate);
  for (const listen of [onHeadsUp, onHeard, onBeat, onClock]) listen(socket, deps);
  socket.on('disconnect', (reason) => {
    log.info({ socket: 'signals', reason }, 'left');
    deps.presence.left(device, socket.id);
  });
  void socket.join([nightRoom(device.night), roleRoom(device), personRoom(device.night, device.person)]);
  log.info({ socket: 'signals' }, 'joined');
  deps.presence.arrived(device, socket.id);
  deps.desk.arrived(device);
}

/** Opens the signals socket; requests reach it through `upgrade`. */
export function createSignals(deps: Deps): Signals {
  // socket.io wants a server to listen to. It gets one that never listens, so that one router sees each upgrade.
  const inner = createServer();
  const io: SignalsServer = new Server(inner, OPTIONS);
  const presence = new PresenceBoard(deps.time.now, (night, phones) =>
    io.to(nightRoom(night)).emit('presence', phones),
  );
  const desk = new HeadsUpDesk({ time: deps.time, bell: bellOf(io), log: deps.log });
  io.use((socket, next) => {
    const device = whoIs(socket, deps);
    if (typeof device === 'string') {
      deps.log.warn({ reason: device, socket: 'signals' }, 'refused');
      return next(new Error(device));
    }
    Object.assign(socket.data, { device });
    next();
  });
  io.on('connection', (socket) => welcome(socket, { time: deps.time, log: deps.log, desk, presence }, deps));
  return {
    upgrade: (request, socket, head) => void inner.emit('upgrade', request, socket, head),
    async close() {
      desk.close();
      await io.close();
    },
  };
}
