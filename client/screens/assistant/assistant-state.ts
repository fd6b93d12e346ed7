import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type Carry, isOpen } from '../../../shared/document/carry.ts';
import { markSet, markSetElsewhere, undoStamp } from '../../../shared/document/commands/mark-set.ts';
import { cannotCarry, stampHeard, startCarrying } from '../../../shared/document/commands/stamp-carry.ts';
import { acknowledgeWithdrawal } from '../../../shared/document/commands/withdraw-carry.ts';
import type { Outcome } from '../../../shared/document/outcome.ts';
import type { Stand } from '../../../shared/document/parts.ts';
import type { Mark } from '../../../shared/document/schema.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { buzz } from '../../device/buzz.ts';
import type { NightSession } from '../../session/night-session.ts';
import { REFUSED } from '../../words/refusal-words.ts';

/** What was just done on this phone, until the next thing: with the way to take it back. */
export interface Done {
  readonly text: string;
  readonly undo: (() => void) | null;
}

/** A carry with the stand it is about. */
export interface Asked {
  readonly carry: Carry;
  readonly stand: Stand;
}

/** What lies over the card. */
export type CardPanel = 'none' | 'cant' | 'elsewhere';

/** Where a stand was really set, why, and how that is said. */
export interface SetElsewhere {
  readonly mark: Mark;
  readonly note: string;
  readonly words: string;
}

export interface AssistantState {
  readonly session: NightSession;
  /** What is asked of the assistant, the oldest first; withdrawn ones stay until acknowledged. */
  readonly asked: ReadonlySignal<readonly Asked[]>;
  readonly chosenId: Signal<string | null>;
  readonly shown: ReadonlySignal<Asked | null>;
  /** What the assistant says to be facing; the couple at first. */
  readonly facingId: Signal<string>;
  readonly panel: Signal<CardPanel>;
  readonly done: Signal<Done | null>;
  readonly carrying: (asked: Asked) => void;
  readonly set: (asked: Asked) => void;
  readonly setElsewhere: (asked: Asked, where: SetElsewhere) => void;
  readonly cannot: (asked: Asked, reason: string) => void;
  readonly acknowledge: (asked: Asked) => void;
  readonly takeBack: (asked: Asked, kind: 'carrying' | 'cant') => void;
  readonly heard: () => void;
}

/** An open carry is shown; a withdrawn one only if it had reached this phone and was not acknowledged yet. */
const isAsked = (carry: Carry): boolean =>
  (isOpen(carry) && carry.state !== 'held') ||
  (carry.state === 'withdrawn' && !carry.withdrawalSeen && carry.current.stamps.delivered !== undefined);

function askedOf(night: Night): Asked[] {
  return night.carries.filter(isAsked).flatMap((carry) => {
    const stand = night.stands.find((known) => known.id === carry.standId);
    return stand ? [{ carry, stand }] : [];
  });
}

/** The state behind the assistant's face. */
export function createAssistantState(session: NightSession): AssistantState {
  const { doc, hand, signals } = session;
  const chosenId = signal<string | null>(null);
  const done = signal<Done | null>(null);
  const panel = signal<CardPanel>('none');
  const asked = computed(() => (session.night.value ? askedOf(session.night.value) : []));
  const shown = computed(
    () => asked.value.find(({ carry }) => carry.id === chosenId.value) ?? asked.value[0] ?? null,
  );
  const on = ({ carry }: Asked) => ({ carryId: carry.id, revisionId: carry.current.id });
  const heard = () => {
    const ring = signals.ringing.peek();
    if (!ring) return;
    signals.heard();
    const about = asked.peek().find(({ carry }) => carry.id === ring.carryId);
    if (about) stampHeard(doc, hand, on(about));
  };
  /** Says what was done; a refusal is said instead. */
  const act = (outcome: Outcome, text: string | null, undo: (() => Outcome) | null) => {
    heard();
    panel.value = 'none';
    if (!outcome.ok) {
      done.value = { text: REFUSED[outcome.reason], undo: null };
      return;
    }
    buzz('acknowledged');
    const takeBack = () => {
      const back = undo?.();
      done.value = back?.ok === false ? { text: REFUSED[back.reason], undo: null } : null;
    };
    // What the card itself shows needs no line of its own.
    done.value = text === null ? null : { text, undo: undo ? takeBack : null };
  };
  return {
    session,
    asked,
    chosenId,
    shown,
    facingId: signal('couple'),
    panel,
    done,
    heard,
    carrying: (one) => act(startCarrying(doc, hand, on(one)), null, null),
    set: (one) =>
      act(markSet(doc, hand, on(one)), `${one.stand.kit.letter} is set.`, () =>
        undoStamp(doc, hand, on(one), 'set'),
      ),
    setElsewhere: (one, { mark, note, words }) =>
      act(
        markSetElsewhere(doc, hand, { ...on(one), mark, note }),
        `${one.stand.kit.letter} is set, ${words}.`,
        () => undoStamp(doc, hand, on(one), 'set'),
      ),
    cannot: (one, reason) => act(cannotCarry(doc, hand, on(one), reason), null, null),
    takeBack: (one, kind) => act(undoStamp(doc, hand, on(one), kind), null, null),
    acknowledge: (one) => act(acknowledgeWithdrawal(doc, hand, one.carry.id), 'Withdrawal seen.', null),
  };
}
