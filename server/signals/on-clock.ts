import type { PhoneSocket, SignalDeps } from './deps.ts';
import { guarded } from './guard.ts';

/** What time is it at the server? Answered at once: the phone takes the half of the round trip for its error. */
export function onClock(socket: PhoneSocket, { time, log }: SignalDeps): void {
  socket.on(
    'clock',
    guarded(log, (answer) => {
      if (typeof answer === 'function') answer(time.now());
    }),
  );
}
