import { heardSchema } from '../../shared/messages/signals.ts';
import { give, type PhoneSocket, type SignalDeps } from './deps.ts';
import { guarded } from './guard.ts';

/** The person answered. One that the desk no longer knows is received all the same: the document has the stamp. */
export function onHeard(socket: PhoneSocket, { desk, time, log }: SignalDeps): void {
  socket.on(
    'heard',
    guarded(log, (message, receipt) => {
      const heard = heardSchema.safeParse(message);
      if (!heard.success) return give(receipt, { ok: false, reason: 'malformed' });
      desk.heard(heard.data.id, socket.data.device);
      give(receipt, { ok: true, at: time.now() });
    }),
  );
}
