import type { Carry, CarryState } from '../../shared/document/carry.ts';
import { isSetElsewhere } from '../state/elsewhere.ts';
import { ageWords } from './ages.ts';

/** How far a call got, as the lead's phone knows it: the document's word, and whether it has left this phone. */
export type Reach = 'not-sent' | CarryState;

export const reachOf = (carry: Carry, sent: boolean): Reach =>
  carry.state === 'called' && !sent ? 'not-sent' : carry.state;

const WORDS: Record<Reach, string> = {
  'not-sent': 'not sent',
  called: 'sent, not delivered',
  held: 'held back',
  delivered: 'delivered, not seen',
  seen: 'seen',
  carrying: 'carrying',
  cant: "can't",
  set: 'set',
  withdrawn: 'withdrawn',
  replaced: 'replaced',
};

/** "sent, not delivered, 12 s": never a bare sign, always with its age. */
export function reachWords(carry: Carry, sent: boolean, nowMs: number): string {
  const reach = reachOf(carry, sent);
  const reason = reach === 'cant' ? carry.current.stamps.cant?.reason : null;
  const age = ageWords(nowMs - carry.since);
  const word = reach === 'set' && isSetElsewhere(carry) ? 'set elsewhere' : WORDS[reach];
  return `${word}${reason ? `: ${reason}` : ''}, ${age}`;
}

/** A sign for each state beside its word and colour: shape tells it too. */
export const REACH_SIGN: Record<Reach, string> = {
  'not-sent': '◌',
  called: '○',
  held: '‖',
  delivered: '◔',
  seen: '◑',
  carrying: '▲',
  cant: '△!',
  set: '■',
  withdrawn: '⊘',
  replaced: '⊘',
};

/** Reasons an assistant may give with one press. */
export const CANT_REASONS = [
  'no room there',
  'guests in the way',
  'venue says no',
  'cannot find it',
  'no hand free',
] as const;
