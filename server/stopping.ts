/** One press of Ctrl-C reaches this process twice: from the terminal, and passed on by the program that started it. */
const SAME_PRESS_MS = 500;

/**
 * Stops at SIGINT, SIGTERM or SIGHUP: the first lets `close` finish and exits with 0 (1 if it fails); a second one, later than
 * the echo of the first, exits at once with 1.
 */
export function stopOnSignal(close: () => Promise<void>): void {
  let askedAt: number | null = null;
  const stop = () => {
    if (askedAt === null) {
      askedAt = Date.now();
      close().then(
        () => process.exit(0),
        () => process.exit(1),
      );
    } else if (Date.now() - askedAt > SAME_PRESS_MS) process.exit(1);
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
  process.on('SIGHUP', stop);
}
