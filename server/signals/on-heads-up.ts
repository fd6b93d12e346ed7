import { headsUpSchema } from '../../shared/messages/signals.ts';
import { give, type PhoneSocket, type SignalDeps } from './deps.ts';
import { guarded } from './guard.ts';

/** "Look at your phone now": the receipt says that the server has it, the news how far it got. */
export function onHeadsUp(socket: PhoneSocket, { desk, log }: SignalDeps): void {
  socket.on(
    'heads-up',
    guarded(log, (message, receipt) => {
      const headsUp = headsUpSchema.safeParse(message);
      if (!headsUp.success) return give(receipt, { ok: false, reason: 'malformed' });
      const taken = desk.take(headsUp.data, socket.data.device);
      give(receipt, taken === 'not-allowed' ? { ok: false, reason: taken } : { ok: true, at: taken.at });
    }),
  );
}
