import { effect } from '@preact/signals';
import { isOpen } from '../../shared/document/carry.ts';
import { stampDelivered } from '../../shared/document/commands/stamp-carry.ts';
import type { NightSession } from './night-session.ts';

/**
 * The assistant's app acknowledges every call that has reached it, by itself: only this makes a call
 * *delivered* on the lead's screen. Held calls are not acknowledged: they are not meant to be here yet.
 */
export function acknowledgeCalls(session: NightSession): () => void {
  const acknowledge = () => {
    const night = session.night.peek();
    if (!night || night.fromNewerApp) return;
    for (const carry of night.carries) {
      if (!isOpen(carry) || carry.state === 'held' || carry.current.stamps.delivered) continue;
      stampDelivered(session.doc, session.hand, { carryId: carry.id, revisionId: carry.current.id });
    }
  };
  // The card is drawn first: its person is in more of a hurry than the stamp.
  return effect(() => {
    const carries = session.night.value?.carries;
    if (carries) setTimeout(acknowledge);
  });
}
