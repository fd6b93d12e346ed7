import { fileURLToPath } from 'node:url';
import type * as Y from 'yjs';
import { demoNight } from '../../server/nights/demo-night.ts';
import type { Carry } from '../../shared/document/carry.ts';
import { type Called, callCarry } from '../../shared/document/commands/call-carry.ts';
import type { StampOn } from '../../shared/document/commands/stamp-carry.ts';
import { createNight } from '../../shared/document/create-night.ts';
import type { Outcome, RefusedBecause } from '../../shared/document/outcome.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { Mark } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { asId } from '../../shared/ids.ts';
import { HeldClock, heldHand } from './phone-hand.ts';
import { HeldNetwork, type HeldPhone, openDoc } from './phone-network.ts';

/** A mark inside the hall of the demo night, in the key's usual set-up. */
export const markAt = (x: number, y: number, rest: Partial<Mark> = {}): Mark => ({
  spot: { x, y },
  heightM: 2.3,
  facingDeg: 310,
  tiltDeg: 15,
  powerStops: -4,
  ...rest,
});

/** The demo night in one document, with the two people's hands and a clock the test moves. */
export interface OneDocument {
  readonly doc: Y.Doc;
  readonly clock: HeldClock;
  readonly lead: Hand;
  readonly assistant: Hand;
}

export function demoDocument(clientId = 7): OneDocument {
  const doc = openDoc(clientId);
  const clock = new HeldClock();
  createNight(doc, heldHand('server', clock, { idSeed: 1 }), asId('demo'), demoNight('2026-05-16'));
  return {
    doc,
    clock,
    lead: heldHand('lead', clock, { idSeed: 2 }),
    assistant: heldHand('assistant', clock, { idSeed: 3 }),
  };
}

/** Lead's and assistant's phone and the server, joined and level. */
export interface Pair {
  readonly network: HeldNetwork;
  readonly clock: HeldClock;
  readonly lead: { readonly phone: HeldPhone; readonly doc: Y.Doc; readonly hand: Hand };
  readonly assistant: { readonly phone: HeldPhone; readonly doc: Y.Doc; readonly hand: Hand };
}

/**
 * @param assistantWinsTies which phone's client number is the greater: Yjs lets it win between two values of one key
 *   that were written apart
 */
export function phonePair({ assistantWinsTies = true, clockErrorMs = 0 } = {}): Pair {
  const { doc, clock, lead, assistant } = demoDocument(1);
  const network = new HeldNetwork(doc, assistantWinsTies ? [10, 20] : [20, 10]);
  network.joinAllAndDrain();
  const [first, second] = network.phones;
  if (!first || !second) throw new Error('a pair has two phones');
  const skewed: Hand = { ...lead, now: () => lead.now() + clockErrorMs };
  return {
    network,
    clock,
    lead: { phone: first, doc: first.doc, hand: skewed },
    assistant: { phone: second, doc: second.doc, hand: assistant },
  };
}

/** What an accepted command answered; a refusal fails the test with its reason. */
export function done<Result extends object>(outcome: Outcome<Result>): { readonly ok: true } & Result {
  if (!outcome.ok) throw new Error(`refused: ${outcome.reason}`);
  return outcome;
}

/** Why a command was refused; null when it was not. */
export const refusal = (outcome: Outcome<object>): RefusedBecause | null =>
  outcome.ok ? null : outcome.reason;

export const carryOf = (doc: Y.Doc, { carryId }: Pick<StampOn, 'carryId'>): Carry => {
  const carry = readNight(doc).carries.find((known) => known.id === carryId);
  if (!carry) throw new Error(`no carry ${carryId}`);
  return carry;
};

export const standOf = (doc: Y.Doc, id: string): Stand => {
  const stand = readNight(doc).stands.find((known) => known.id === id);
  if (!stand) throw new Error(`no stand ${id}`);
  return stand;
};

/** Calls the key stand to a spot. */
export const callKey = (doc: Y.Doc, hand: Hand, mark: Mark = markAt(9, 6)): Called =>
  done(callCarry(doc, hand, { standId: 'key', mark }));

/** A path of the project, from its root. */
export const projectPath = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
