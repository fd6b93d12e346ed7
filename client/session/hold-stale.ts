import { effect } from '@preact/signals';
import { holdCall } from '../../shared/document/commands/stamp-carry.ts';
import { key } from '../../shared/document/keys.ts';
import { everySecond } from '../device/ticking.ts';
import type { NightSession } from './night-session.ts';
import { isDurable } from './sent.ts';

/** A call that waits longer than this for the link is not sent by itself any more. */
const STALE_MS = 60_000;

/**
 * On the lead's phone: a call that could not leave for a minute is held, so that it does not surprise the
 * assistant when the link comes back. The lead is asked whether it still stands.
 */
export function holdStaleCalls(session: NightSession): () => void {
  return effect(() => {
    const now = everySecond.value + (session.signals.clock.value?.offsetMs ?? 0);
    const night = session.night.value;
    if (!night || night.fromNewerApp) return;
    for (const carry of night.carries) {
      if (carry.state !== 'called' || now - carry.current.at < STALE_MS) continue;
      const revision = key.carryRevision(carry.id, carry.current.id);
      if (isDurable(session.doc, 'carries', revision, session.sync.durable.value)) continue;
      holdCall(session.doc, session.hand, { carryId: carry.id, revisionId: carry.current.id });
    }
  });
}
