/** The clock and the timers, passed in so that a test can hold them. */
export interface Time {
  /** Milliseconds since 1970 by this machine's clock. */
  readonly now: () => number;
  /** Runs `act` once after `delayMs`; gives back the way to stop it. */
  readonly after: (delayMs: number, act: () => void) => () => void;
}

/** The machine's own clock. Its timers never keep the process alive by themselves. */
export const machineTime: Time = {
  now: Date.now,
  after: (delayMs, act) => {
    const timer = setTimeout(act, delayMs);
    timer.unref();
    return () => clearTimeout(timer);
  },
};
