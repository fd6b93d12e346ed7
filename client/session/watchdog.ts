/** What the watchdog asks of a connection. */
export interface Watched {
  /** Sends a heartbeat; the other end must answer. */
  readonly probe: () => void;
  /** Throws the connection away and opens a new one at once. */
  readonly restart: () => void;
  /** Whether the socket claims to be open. */
  readonly isOpen: () => boolean;
  /** Whether it is being opened. */
  readonly isOpening: () => boolean;
}

/** Milliseconds. An open socket proves nothing: only an answer does. */
export const PROBE_EVERY_MS = 2000;
export const DEAD_AFTER_MS = 5000;
export const OPENING_LIMIT_MS = 4000;
/** A page that was asleep finds a gap between two ticks far longer than the tick. */
const SLEPT_MS = 3500;

/**
 * Watches a socket that may be half open: sends heartbeats, restarts a connection whose answers stop or that
 * hangs while opening, and probes at once when the page wakes or the network changes (a phone that slept finds
 * its socket "open" and dead).
 */
export class Watchdog {
  #lastAnswer = performance.now();
  #openingSince: number | null = null;
  #lastTick = performance.now();
  #timer: ReturnType<typeof setInterval>;
  readonly #watched: Watched;
  readonly #wake = () => this.#awake();

  constructor(watched: Watched) {
    this.#watched = watched;
    this.#timer = setInterval(() => this.#tick(), 500);
    document.addEventListener('visibilitychange', this.#wake);
    for (const name of ['pageshow', 'online', 'offline', 'focus']) addEventListener(name, this.#wake);
  }

  /** Any message from the other end counts as an answer. */
  answered(): void {
    this.#lastAnswer = performance.now();
  }

  /** Milliseconds since the other end was last heard. */
  silenceMs(): number {
    return performance.now() - this.#lastAnswer;
  }

  close(): void {
    clearInterval(this.#timer);
    document.removeEventListener('visibilitychange', this.#wake);
    for (const name of ['pageshow', 'online', 'offline', 'focus']) removeEventListener(name, this.#wake);
  }

  #awake(): void {
    if (document.visibilityState !== 'visible') return;
    this.#openingSince = null;
    if (this.#watched.isOpen()) {
      // Give an answer one second from now; the tick restarts the connection if none comes.
      this.#lastAnswer = Math.min(this.#lastAnswer, performance.now() - (DEAD_AFTER_MS - 1200));
      this.#watched.probe();
    } else {
      this.#watched.restart();
    }
  }

  #tick(): void {
    const now = performance.now();
    const slept = now - this.#lastTick > SLEPT_MS;
    this.#lastTick = now;
    if (slept) {
      this.#awake();
      return;
    }
    if (this.#watched.isOpening()) {
      this.#openingSince ??= now;
      if (now - this.#openingSince > OPENING_LIMIT_MS) this.#restart(now);
      return;
    }
    this.#openingSince = null;
    if (!this.#watched.isOpen()) return;
    if (now - this.#lastAnswer > DEAD_AFTER_MS) this.#restart(now);
    else if (now - this.#lastAnswer > PROBE_EVERY_MS) this.#watched.probe();
  }

  #restart(now: number): void {
    this.#openingSince = null;
    this.#lastAnswer = now;
    this.#watched.restart();
  }
}
