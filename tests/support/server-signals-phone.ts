import { io, type Socket } from 'socket.io-client';
import { onTestFinished } from 'vitest';
import type {
  HeadsUp,
  HeadsUpNews,
  PresentPhone,
  Receipt,
  ToPhone,
  ToServer,
} from '../../shared/messages/signals.ts';
import { SIGNALS_PATH } from '../../shared/messages/sync-codes.ts';
import type { PairedPhone } from './server-scene.ts';

interface SignalsPhone {
  readonly socket: Socket<ToPhone, ToServer>;
  connected(): Promise<void>;
  /** Resolves with the reason of a refused connection. */
  refused(): Promise<string>;
  /** Every ring so far, repeated ones too, with the way to acknowledge it. */
  readonly rings: { readonly headsUp: HeadsUp; readonly rang: () => void }[];
  /** Resolves when there are so many rings. */
  ringsReach(count: number): Promise<void>;
  /** Resolves with the first news, past or coming, that fits. */
  news(fits: (news: HeadsUpNews) => boolean): Promise<HeadsUpNews>;
  readonly allNews: readonly HeadsUpNews[];
  /** Resolves with the first list of phones, past or coming, that fits. */
  presence(fits: (phones: readonly PresentPhone[]) => boolean): Promise<readonly PresentPhone[]>;
  call(headsUp: HeadsUp): Promise<Receipt>;
  heard(id: string): Promise<Receipt>;
}

function keeper<Value>() {
  const all: Value[] = [];
  const looks = new Set<() => void>();
  return {
    all,
    add(value: Value) {
      all.push(value);
      for (const look of [...looks]) look();
    },
    first: (fits: (value: Value, index: number) => boolean): Promise<Value> =>
      new Promise((resolve) => {
        const look = () => {
          const index = all.findIndex(fits);
          const found = all[index];
          if (found === undefined) return;
          looks.delete(look);
          resolve(found);
        };
        looks.add(look);
        look();
      }),
  };
}

/** Opens the signals socket as a phone does. Rings are acknowledged only when the test does it. */
export function openSignals(phone: PairedPhone, auth: unknown = { night: phone.night, as: phone.role }) {
  const socket: Socket<ToPhone, ToServer> = io(phone.url, {
    path: SIGNALS_PATH,
    transports: ['websocket'],
    extraHeaders: { cookie: phone.cookie },
    auth: auth as Record<string, unknown>,
    reconnection: false,
    forceNew: true,
  });
  const rings = keeper<{ headsUp: HeadsUp; rang: () => void }>();
  const news = keeper<HeadsUpNews>();
  const presence = keeper<readonly PresentPhone[]>();
  socket.on('heads-up', (headsUp, rang) => rings.add({ headsUp, rang }));
  socket.on('heads-up-news', (message) => news.add(message));
  socket.on('presence', (phones) => presence.add(phones));
  onTestFinished(() => {
    socket.disconnect();
  });
  const signals: SignalsPhone = {
    socket,
    connected: () =>
      new Promise((resolve, reject) => {
        if (socket.connected) return resolve();
        socket.once('connect', resolve);
        socket.once('connect_error', reject);
      }),
    refused: () => new Promise((resolve) => socket.once('connect_error', ({ message }) => resolve(message))),
    rings: rings.all,
    ringsReach: async (count) => void (await rings.first((_ring, index) => index >= count - 1)),
    news: (fits) => news.first(fits),
    allNews: news.all,
    presence: (fits) => presence.first(fits),
    call: (headsUp) => socket.emitWithAck('heads-up', headsUp),
    heard: (id) => socket.emitWithAck('heard', { id }),
  };
  return signals;
}
