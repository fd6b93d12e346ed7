import type { Server, Socket } from 'socket.io';
import type { NightId, PersonId } from '../../shared/ids.ts';
import type { Receipt, ToPhone, ToServer } from '../../shared/messages/signals.ts';
import type { Log } from '../logging.ts';
import type { Device } from '../store/store.ts';
import type { Time } from '../time.ts';
import type { HeadsUpDesk } from './heads-up-desk.ts';
import type { PresenceBoard } from './presence-board.ts';

/** What the middleware has found out about a phone before it is let in. */
interface SocketData {
  readonly device: Device;
}

export type SignalsServer = Server<ToServer, ToPhone, Record<string, never>, SocketData>;
export type PhoneSocket = Socket<ToServer, ToPhone, Record<string, never>, SocketData>;

/** What the handlers of the signals work with. */
export interface SignalDeps {
  readonly time: Time;
  readonly log: Log;
  readonly desk: HeadsUpDesk;
  readonly presence: PresenceBoard;
}

/** Names of socket.io rooms: the phones of one role of a night, the sockets of one person, all of a night. */
export const roleRoom = (device: Pick<Device, 'night' | 'role'>): string => `${device.night}/${device.role}`;
export const personRoom = (night: NightId, person: PersonId): string => `${night}/person/${person}`;
export const nightRoom = (night: NightId): string => night;

/** A phone may leave out its way to get the receipt; what it sends in that place is not trusted to be one. */
export function give(receipt: unknown, value: Receipt): void {
  if (typeof receipt === 'function') receipt(value);
}
