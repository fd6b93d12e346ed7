import { beatSchema } from '../../shared/messages/signals.ts';
import type { PhoneSocket, SignalDeps } from './deps.ts';
import { guarded } from './guard.ts';

/** A sign of life. A malformed one is none. */
export function onBeat(socket: PhoneSocket, { presence, log }: SignalDeps): void {
  socket.on(
    'beat',
    guarded(log, (message) => {
      const beat = beatSchema.safeParse(message);
      if (beat.success) presence.beat(socket.data.device, beat.data.visible);
    }),
  );
}
