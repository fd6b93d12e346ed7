import * as Y from 'yjs';
import { demoNight } from '../../server/nights/demo-night.ts';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import { createNight } from '../../shared/document/create-night.ts';
import type { Mark } from '../../shared/document/schema.ts';
import { type Night, readNight } from '../../shared/document/snapshot.ts';
import type { NightId } from '../../shared/ids.ts';

/** The demo night with a hand to write in it. */
export function aNight() {
  const doc = new Y.Doc();
  let count = 0;
  let nowMs = 1000;
  const hand = { person: 'lead', now: () => nowMs, newId: () => `id-${count++}` };
  createNight(doc, hand, 'night' as NightId, demoNight('2026-05-16'));
  return {
    doc,
    hand,
    read: () => readNight(doc),
    later: (byMs: number) => {
      nowMs += byMs;
    },
  };
}

/** The key, which the demo night holds first, with its last call. */
export function keyOf(night: Night) {
  const [stand] = night.stands;
  const carry = night.carries.at(-1);
  if (!stand || !carry) throw new Error('no stand was called');
  return { carry, stand };
}

/** A night in which the key was called to a mark that differs in this from where it stands. */
export function calledTo(change: Partial<Mark>) {
  const evening = aNight();
  const [stand] = evening.read().stands;
  if (!stand) throw new Error('no stand');
  callCarry(evening.doc, evening.hand, { standId: stand.id, mark: { ...stand.place.mark, ...change } });
  const night = evening.read();
  return { ...evening, night, asked: keyOf(night), from: stand.place.mark.spot };
}
