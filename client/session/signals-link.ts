import { type ReadonlySignal, signal } from '@preact/signals';
import { io, type Socket } from 'socket.io-client';
import {
  BEAT_MS,
  type HeadsUp,
  type HeadsUpReach,
  headsUpSchema,
  type PresentPhone,
  type ToPhone,
  type ToServer,
} from '../../shared/messages/signals.ts';
import { SIGNALS_PATH } from '../../shared/messages/sync-codes.ts';
import { type ClockOffset, type ClockProbe, clockOffset } from '../../shared/presence/clock-offset.ts';
import type { Role } from '../../shared/roles.ts';
import { pageVisible } from '../device/page-visible.ts';

/** Another phone as last heard of, with this phone's own time of hearing it. */
export interface Known extends PresentPhone {
  readonly heardAt: number;
}

export interface SignalsLink {
  readonly up: ReadonlySignal<boolean>;
  readonly phones: ReadonlySignal<readonly Known[]>;
  readonly clock: ReadonlySignal<ClockOffset | null>;
  /** How far each heads-up of this phone got, by its id. */
  readonly reach: ReadonlySignal<ReadonlyMap<string, HeadsUpReach>>;
  /** The heads-up that waits for this phone's person; null when none does. */
  readonly ringing: ReadonlySignal<HeadsUp | null>;
  /** Rings the other phone; sent again until its app answers or it expires. */
  readonly headsUp: (headsUp: HeadsUp) => void;
  /** This person has heard the ringing one. */
  readonly heard: () => void;
  readonly close: () => void;
}

type NightSocket = Socket<ToPhone, ToServer>;

const RESEND_MS = 2000;
const PROBES = 10;

/** Asks the server's clock ten times; the quickest answer counts. */
async function probeClock(socket: NightSocket): Promise<ClockOffset | null> {
  const probes: ClockProbe[] = [];
  for (let round = 0; round < PROBES && socket.connected; round++) {
    const askedAt = Date.now();
    const serverAt = await socket
      .timeout(2000)
      .emitWithAck('clock')
      .catch(() => Number.NaN);
    probes.push({ askedAt, serverAt, answeredAt: Date.now() });
  }
  return clockOffset(probes);
}

/** The rings of this phone that were not answered yet. Kept out of the socket's own buffer: a stale ring must not go out. */
class Outbox {
  readonly #waiting = new Map<string, HeadsUp>();
  readonly #timer: ReturnType<typeof setInterval>;
  readonly #socket: NightSocket;
  readonly #now: () => number;
  readonly #expired: (id: string) => void;

  constructor(socket: NightSocket, now: () => number, expired: (id: string) => void) {
    this.#socket = socket;
    this.#now = now;
    this.#expired = expired;
    this.#timer = setInterval(() => this.flush(), RESEND_MS);
  }
  add(headsUp: HeadsUp): void {
    this.#waiting.set(headsUp.id, headsUp);
    this.flush();
  }
  done(id: string): void {
    this.#waiting.delete(id);
  }
  flush(): void {
    for (const headsUp of this.#waiting.values()) {
      if (headsUp.expiresAt < this.#now()) {
        this.done(headsUp.id);
        this.#expired(headsUp.id);
      } else if (this.#socket.connected) this.#socket.emit('heads-up', headsUp, () => undefined);
    }
  }
  close(): void {
    clearInterval(this.#timer);
  }
}

/** Opens the signals socket of a night. Losing every signal loses no state: the document has it. */
export function openSignalsLink(night: string, role: Role): SignalsLink {
  const up = signal(false);
  const phones = signal<readonly Known[]>([]);
  const clock = signal<ClockOffset | null>(null);
  const reach = signal<ReadonlyMap<string, HeadsUpReach>>(new Map());
  const ringing = signal<HeadsUp | null>(null);
  const rungBefore = new Set<string>();
  const now = () => Date.now() + (clock.peek()?.offsetMs ?? 0);
  const socket: NightSocket = io({
    path: SIGNALS_PATH,
    transports: ['websocket'],
    auth: { night, as: role },
    reconnectionDelay: 200,
    reconnectionDelayMax: 1000,
  });
  const news = (id: string, far: HeadsUpReach) => {
    reach.value = new Map(reach.peek()).set(id, far);
  };
  const outbox = new Outbox(socket, now, (id) => news(id, 'expired'));
  const beat = () => socket.volatile.emit('beat', { visible: pageVisible.peek() });
  const beats = setInterval(beat, BEAT_MS);
  const stopWatching = pageVisible.subscribe(() => {
    if (socket.connected) beat();
  });
  socket.on('connect', () => {
    up.value = true;
    beat();
    outbox.flush();
    void probeClock(socket).then((measured) => {
      if (measured) clock.value = measured;
    });
  });
  socket.on('disconnect', () => {
    up.value = false;
  });
  socket.on('presence', (list) => {
    phones.value = list.map((phone) => ({ ...phone, heardAt: Date.now() }));
  });
  socket.on('heads-up-news', ({ id, reach: far }) => {
    if (far !== 'taken') outbox.done(id);
    news(id, far);
  });
  socket.on('heads-up', (raw, rang) => {
    const parsed = headsUpSchema.safeParse(raw);
    if (typeof rang === 'function') rang();
    if (!parsed.success || rungBefore.has(parsed.data.id) || parsed.data.expiresAt < now()) return;
    rungBefore.add(parsed.data.id);
    ringing.value = parsed.data;
  });
  return {
    up,
    phones,
    clock,
    reach,
    ringing,
    headsUp: (headsUp) => {
      news(headsUp.id, 'taken');
      outbox.add(headsUp);
    },
    heard: () => {
      const current = ringing.peek();
      ringing.value = null;
      if (current && socket.connected) socket.emit('heard', { id: current.id }, () => undefined);
    },
    close: () => {
      clearInterval(beats);
      outbox.close();
      stopWatching();
      socket.close();
    },
  };
}
