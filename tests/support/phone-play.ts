import * as fc from 'fast-check';
import { expect } from 'vitest';
import * as Y from 'yjs';
import { demoNight } from '../../server/nights/demo-night.ts';
import { createNight } from '../../shared/document/create-night.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { asId } from '../../shared/ids.ts';
import { valuesOf, vectorOf } from './document-values.ts';
import { ACT_KINDS, type Act, type ActKind, perform } from './phone-acts.ts';
import { HeldClock, heldHand } from './phone-hand.ts';
import { missingRevisions, wrongInNight } from './phone-invariants.ts';
import { Journal } from './phone-journal.ts';
import { LIGHT_ACTS } from './phone-light-acts.ts';
import { MOMENT_ACTS } from './phone-moment-acts.ts';
import { type Direction, HeldNetwork, type HeldPhone, openDoc } from './phone-network.ts';
import { PLAN_ACTS } from './phone-plan-acts.ts';

/** One thing that happens in a play. `phone` is its number, counted round. */
export type Step =
  | ({ readonly do: 'act'; readonly phone: number } & Act)
  | { readonly do: 'cut'; readonly phone: number }
  | { readonly do: 'join'; readonly phone: number }
  | { readonly do: 'deliver'; readonly phone: number; readonly way: Direction; readonly count: number }
  | { readonly do: 'pass'; readonly ms: number };

/** The people of a play: how many phones, whose number wins a tie, what their clocks are off by. */
export interface Cast {
  readonly clientIds: readonly number[];
  readonly clockErrorsMs: readonly number[];
}

export interface Played {
  readonly accepted: number;
  readonly refused: number;
  readonly cuts: number;
  readonly kinds: ReadonlySet<string>;
}

/** How often each press comes, where it is not once: what makes others possible, and what is seldom possible. */
const OFTEN: Partial<Record<ActKind, number>> = {
  call: 6,
  nudge: 5,
  set: 4,
  withdraw: 3,
  carry: 3,
  cannot: 3,
  hold: 3,
  restore: 4,
  release: 6,
  acknowledge: 4,
  'undo carrying': 4,
  'undo cannot': 6,
  'undo set': 3,
  'test frame': 5,
  'remove frame': 3,
  'restore frame': 4,
  'measure ambient': 3,
  'restore ambient': 4,
  'undo plan': 3,
  'redo plan': 3,
  'skip moment': 2,
  'unskip moment': 2,
  'remove moment': 2,
  'restore moment': 2,
  announce: 9,
  'hear announcement': 3,
  'undo announcement': 2,
  'settle announcement': 9,
};
/** The presses about light, plan and running order come once each: there are many, and few stand in another's way. */
const MANY = { ...LIGHT_ACTS, ...PLAN_ACTS, ...MOMENT_ACTS };
const KINDS = ACT_KINDS.flatMap((kind) =>
  Array.from({ length: OFTEN[kind] ?? (kind in MANY ? 1 : 2) }, () => kind),
);

const phoneNumber = fc.nat(2);
const stepArbitrary: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 20,
    arbitrary: fc.record({
      do: fc.constant('act' as const),
      phone: phoneNumber,
      kind: fc.constantFrom(...KINDS),
      pick: fc.nat(60),
      size: fc.nat(999),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('cut' as const), phone: phoneNumber }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('join' as const), phone: phoneNumber }) },
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('deliver' as const),
      phone: phoneNumber,
      way: fc.constantFrom('up' as const, 'down' as const),
      count: fc.integer({ min: 1, max: 4 }),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('pass' as const), ms: fc.nat(3000) }) },
);

export const stepsArbitrary = fc.array(stepArbitrary, { minLength: 30, maxLength: 90, size: 'max' });

/** A cast of so many phones with clocks that are off by up to two seconds. */
export const castArbitrary = (phones: number): fc.Arbitrary<Cast> =>
  fc.record({
    clientIds: fc.uniqueArray(fc.integer({ min: 2, max: 2 ** 31 }), { minLength: phones, maxLength: phones }),
    clockErrorsMs: fc.array(fc.integer({ min: -2000, max: 2000 }), { minLength: phones, maxLength: phones }),
  });

/** A night on a server, with phones that were joined to it once. */
class Play {
  readonly clock = new HeldClock();
  readonly journal = new Journal();
  readonly network: HeldNetwork;
  readonly hands: readonly Hand[];
  readonly kinds = new Set<string>();
  accepted = 0;
  refused = 0;

  constructor(cast: Cast) {
    const server = openDoc(1);
    this.network = new HeldNetwork(server, cast.clientIds);
    for (const doc of this.network.docs) this.journal.watch(doc);
    createNight(server, heldHand('server', this.clock, { idSeed: 1 }), asId('demo'), demoNight('2026-05-16'));
    this.hands = cast.clientIds.map((_, index) =>
      heldHand(`person-${index}`, this.clock, {
        idSeed: 100 + index,
        clockErrorMs: cast.clockErrorsMs[index] ?? 0,
      }),
    );
    this.network.joinAllAndDrain();
  }

  phone(number: number): { phone: HeldPhone; hand: Hand } {
    const index = number % this.network.phones.length;
    const phone = this.network.phones[index];
    const hand = this.hands[index];
    if (!phone || !hand) throw new Error(`no phone ${number}`);
    return { phone, hand };
  }

  step(step: Step): void {
    if (step.do === 'pass') {
      this.clock.pass(step.ms);
      return;
    }
    const { phone, hand } = this.phone(step.phone);
    if (step.do === 'cut') this.network.cut(phone);
    else if (step.do === 'join') this.network.join(phone);
    else if (step.do === 'act') this.act(phone, hand, step);
    else if (step.do === 'deliver') {
      for (let moved = 0; moved < step.count && this.network.deliver(phone, step.way); moved++);
    }
  }

  act(phone: HeldPhone, hand: Hand, act: Act): void {
    const origins: unknown[] = [];
    const count = (_update: Uint8Array, origin: unknown) => origins.push(origin);
    const before = Y.encodeStateVector(phone.doc);
    phone.doc.on('update', count);
    const { outcome, shows } = perform(phone.doc, hand, act);
    phone.doc.off('update', count);
    // [DOC4] one command is one transaction; [DOC6] a refused one is none.
    expect(origins.length, `${act.kind}: updates`).toBe(outcome.ok ? 1 : 0);
    if (outcome.ok) {
      expect(shows(readNight(phone.doc)), `${act.kind} was accepted and is shown`).toBe(true);
      this.accepted += 1;
      this.kinds.add(act.kind);
    } else {
      expect(Y.encodeStateVector(phone.doc), `${act.kind} was refused`).toEqual(before);
      this.refused += 1;
    }
  }

  /** After every step: each night can be read and makes sense, however little of it has arrived. */
  checkEachNight(): void {
    for (const doc of this.network.docs) expect(wrongInNight(readNight(doc))).toEqual([]);
  }

  /** After joining everybody again: all hold the same, nothing waits, nothing was lost. */
  checkTogether(): void {
    this.network.joinAllAndDrain();
    const { server, docs } = this.network;
    const rebuilt = openDoc(0);
    Y.applyUpdate(rebuilt, Y.mergeUpdates(docs.map((doc) => Y.encodeStateAsUpdate(doc))));
    const night = readNight(server);
    expect(missingRevisions(night)).toEqual([]);
    for (const doc of [...docs, rebuilt]) {
      expect(doc.store.pendingStructs, 'nothing waits for what comes before it').toBeNull();
      expect(doc.store.pendingDs).toBeNull();
      expect(readNight(doc)).toEqual(night);
      expect(valuesOf(doc)).toEqual(valuesOf(server));
      expect(vectorOf(doc)).toEqual(vectorOf(server));
      expect(this.journal.lostIn(doc)).toEqual([]);
    }
    // The seed is one command of the journal; every other one was an accepted act.
    expect(this.journal.commands).toBe(this.accepted + 1);
  }
}

/** Plays steps with a cast, looks at every phone after every step and at all of them together at the end. */
export function play(cast: Cast, steps: readonly Step[]): Played {
  const held = new Play(cast);
  for (const step of steps) {
    held.step(step);
    held.checkEachNight();
  }
  held.checkTogether();
  const { accepted, refused, kinds } = held;
  return { accepted, refused, kinds, cuts: held.network.cuts };
}
