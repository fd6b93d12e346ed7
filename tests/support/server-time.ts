import type { Time } from '../../server/time.ts';

/** A clock that stands still until it is moved; moving it runs the timers that come due, in order. */
export interface HeldTime extends Time {
  advance(byMs: number): void;
  /** Resolves when a timer of this length waits. */
  timerOf(delayMs: number): Promise<void>;
  /** How many timers wait. */
  waiting(): number;
}

export function heldTime(startMs = 1_750_000_000_000): HeldTime {
  let nowMs = startMs;
  const timers = new Set<{ dueMs: number; delayMs: number; act: () => void }>();
  const looks = new Set<() => void>();
  return {
    now: () => nowMs,
    after(delayMs, act) {
      const timer = { dueMs: nowMs + delayMs, delayMs, act };
      timers.add(timer);
      for (const look of [...looks]) look();
      return () => timers.delete(timer);
    },
    waiting: () => timers.size,
    timerOf: (delayMs) =>
      new Promise((resolve) => {
        const look = () => {
          if (![...timers].some((timer) => timer.delayMs === delayMs)) return;
          looks.delete(look);
          resolve();
        };
        looks.add(look);
        look();
      }),
    advance(byMs) {
      const endMs = nowMs + byMs;
      for (;;) {
        const [next] = [...timers].filter(({ dueMs }) => dueMs <= endMs).sort((a, b) => a.dueMs - b.dueMs);
        if (!next) break;
        timers.delete(next);
        nowMs = next.dueMs;
        next.act();
      }
      nowMs = endMs;
    },
  };
}
