import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Caution } from '../../../core/cautions/caution.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { CannotSheet, LightSheet } from '../../../core/light/light-sheet.ts';
import type { LightUnit } from '../../../core/light/report/light-input.ts';
import { latestCarry } from '../../../shared/document/ask.ts';
import { type Carry, isOpen } from '../../../shared/document/carry.ts';
import { callCarry } from '../../../shared/document/commands/call-carry.ts';
import { type Nudge, nudgeCarry, nudgedMark } from '../../../shared/document/commands/nudge-carry.ts';
import { releaseCall } from '../../../shared/document/commands/stamp-carry.ts';
import { restoreCarry, withdrawCarry } from '../../../shared/document/commands/withdraw-carry.ts';
import { key } from '../../../shared/document/keys.ts';
import type { Outcome } from '../../../shared/document/outcome.ts';
import type { Stand } from '../../../shared/document/parts.ts';
import type { Mark } from '../../../shared/document/schema.ts';
import type { HeadsUp, HeadsUpReach } from '../../../shared/messages/signals.ts';
import type { NightSession } from '../../session/night-session.ts';
import { isDurable } from '../../session/sent.ts';
import { aimedMark } from '../../state/aimed-mark.ts';
import { inOwnTask } from '../../state/in-own-task.ts';
import { type Added, cautionsAt, NOTHING_ADDED, sheetAt } from '../../state/reading.ts';
import { type RoomLightState, watchRoomLight } from '../../state/room-light.ts';
import { REFUSED } from '../../words/refusal-words.ts';
import type { Draft } from './draft.ts';
import { takePowers } from './take-powers.ts';

/** A line that says what was just done, with the way to undo it; stays until the next one. */
export interface Notice {
  readonly text: string;
  readonly undo: (() => void) | null;
}

export type Panel =
  | 'none'
  | 'light'
  | 'nudge'
  | 'list'
  | 'more'
  | 'invite'
  | 'frames'
  | 'room'
  | 'plan'
  | 'order'
  | 'hands'
  | 'gear';

/** How long a ring for a call is worth hearing. */
const RING_MS = 60_000;

/** What the lead has in hand; lives on this phone only, until a press sends it. */
export interface LeadState {
  readonly session: NightSession;
  readonly standId: Signal<string | null>;
  readonly panel: Signal<Panel>;
  /** Where the panel that is open was opened from: closing it leads back there. */
  readonly panelBehind: Signal<Panel>;
  readonly draft: Signal<Draft | null>;
  readonly notice: Signal<Notice | null>;
  readonly stand: ReadonlySignal<Stand | null>;
  readonly carry: ReadonlySignal<Carry | null>;
  /** Where the chosen stand is meant to be: the draft, else the open call, else where it stands. */
  readonly mark: ReadonlySignal<Mark | null>;
  readonly sheet: ReadonlySignal<LightSheet | CannotSheet | null>;
  readonly cautions: ReadonlySignal<readonly Caution[]>;
  /** The room's light, worked out beside the page. */
  readonly light: RoomLightState;
  readonly units: ReadonlySignal<readonly LightUnit[]>;
  /** Lines of equal light stay on the plan; else they come only while a finger is down. */
  readonly mapPinned: Signal<boolean>;
  /** A finger is on the plan. */
  readonly held: Signal<boolean>;
  readonly place: (spot: Spot) => void;
  readonly dropDraft: () => void;
  readonly call: () => void;
  readonly nudge: (nudge: Nudge) => void;
  readonly withdraw: () => void;
  readonly sendHeld: () => void;
  readonly ringAgain: () => void;
  /** Takes the solved power of every stand: a nudge for those that stand, the draft for the one in hand. */
  readonly takePowers: () => void;
  readonly isSent: (carry: Carry) => boolean;
  /** How far the last ring for a carry got; null when there was none from this page. */
  readonly ringReach: (carryId: string) => HeadsUpReach | null;
  readonly close: () => void;
}

const placedMark = (stand: Stand, carry: Carry | null): Mark =>
  carry && isOpen(carry) ? carry.current.mark : stand.place.mark;

/** The same mark, whatever the power. */
const isSamePlace = (a: Mark, b: Mark): boolean =>
  a.spot.x === b.spot.x &&
  a.spot.y === b.spot.y &&
  a.heightM === b.heightM &&
  a.tiltDeg === b.tiltDeg &&
  a.facingDeg === b.facingDeg;

/** The state behind the lead's face. */
export function createLeadState(session: NightSession): LeadState {
  const { doc, hand, signals, sync } = session;
  const standId = signal<string | null>(session.night.peek()?.stands[0]?.id ?? null);
  const panel = signal<Panel>('none');
  const panelBehind = signal<Panel>('more');
  const draft = signal<Draft | null>(null);
  const held = signal(false);
  const notice = signal<Notice | null>(null);
  const rung = signal<ReadonlyMap<string, string>>(new Map());
  const night = () => session.night.peek();
  const stand = computed(
    () => session.night.value?.stands.find((known) => known.id === standId.value) ?? null,
  );
  const carry = computed(() => {
    const known = session.night.value;
    return known && stand.value ? latestCarry(known, stand.value.id) : null;
  });
  const mark = computed(() => {
    if (!stand.value) return null;
    const own = draft.value?.standId === stand.value.id ? draft.value.mark : null;
    return own ?? placedMark(stand.value, carry.value);
  });
  const markOf = (one: Stand): Mark => {
    const own = draft.value?.standId === one.id ? draft.value.mark : null;
    const known = session.night.value;
    return own ?? placedMark(one, known ? latestCarry(known, one.id) : null);
  };
  const light = watchRoomLight(session.night, markOf, held);
  /** What the room and the other lights add, as last worked out: while a stand moves that changes little. */
  const addedTo = (id: string | undefined): Added =>
    light.lit.value?.report.units.find((unit) => unit.id === id) ?? NOTHING_ADDED;
  const solvedPower = (id: string): number | null =>
    light.lit.value?.report.powers.lights.find((one) => one.id === id)?.powerStops ?? null;
  // The power of a draft follows from its place as soon as the room has been asked about it.
  const stopPower = effect(() => {
    const [wanted, power] = [draft.value, draft.value && solvedPower(draft.value.standId)];
    if (!wanted?.autoPower || power === null || Math.abs(power - wanted.mark.powerStops) < 0.01) return;
    draft.value = { ...wanted, mark: { ...wanted.mark, powerStops: power } };
  });
  // Cautions do not hang on the power, and while a finger moves it changes once more for every answer.
  let lastPlace: Mark | null = null;
  const place = computed(() => {
    const now = mark.value;
    const isSame = now !== null && lastPlace !== null && isSamePlace(now, lastPlace);
    if (!isSame) lastPlace = now;
    return lastPlace;
  });
  const cautions = inOwnTask<readonly Caution[]>(
    () => {
      const [known, one, at] = [session.night.value, stand.value, place.value];
      return () => (known && one && at ? cautionsAt(known, one, at) : []);
    },
    held,
    [],
  );
  const say = (text: string, undo: (() => void) | null = null) => {
    notice.value = { text, undo };
  };
  const refused = (outcome: Outcome): boolean => {
    if (!outcome.ok) say(REFUSED[outcome.reason]);
    return !outcome.ok;
  };
  const ring = (kind: HeadsUp['kind'], carryId: string) => {
    const id = hand.newId();
    rung.value = new Map(rung.peek()).set(carryId, id);
    signals.headsUp({ id, kind, carryId, expiresAt: hand.now() + RING_MS });
  };
  const withdraw = () => {
    const open = carry.peek();
    const letter = stand.peek()?.kit.letter;
    if (!open || refused(withdrawCarry(doc, hand, open.id))) return;
    ring('withdrawn', open.id);
    say(`${letter} withdrawn.`, () => {
      if (refused(restoreCarry(doc, hand, open.id))) return;
      ring('call', open.id);
      say(`${letter} called again.`);
    });
  };
  const ringReach = (carryId: string): HeadsUpReach | null => {
    const id = rung.value.get(carryId);
    return id === undefined ? null : (signals.reach.value.get(id) ?? null);
  };
  return {
    session,
    standId,
    panel,
    panelBehind,
    draft,
    notice,
    stand,
    carry,
    mark,
    sheet: computed(() => {
      const [known, one, at] = [session.night.value, stand.value, mark.value];
      return known && one && at ? sheetAt(known, one, at, addedTo(one.id)) : null;
    }),
    cautions: cautions.value,
    light,
    units: light.units,
    mapPinned: signal(false),
    held,
    place: (spot) => {
      const [known, one, last] = [night(), stand.peek(), mark.peek()];
      if (!known || !one || !last) return;
      const before = draft.peek();
      const autoPower = before?.standId === one.id ? before.autoPower : true;
      const aimed = aimedMark(known, one, spot, last, addedTo(one.id));
      draft.value = {
        standId: one.id,
        mark: autoPower ? aimed : { ...aimed, powerStops: last.powerStops },
        autoPower,
      };
    },
    dropDraft: () => {
      draft.value = null;
    },
    call: () => {
      const [wanted, one] = [draft.peek(), stand.peek()];
      if (!wanted || !one) return;
      const outcome = callCarry(doc, hand, { standId: wanted.standId, mark: wanted.mark });
      if (refused(outcome) || !outcome.ok) return;
      draft.value = null;
      ring('call', outcome.carryId);
      say(`${one.kit.letter} called.`, withdraw);
    },
    nudge: (nudge) => {
      const [known, one, wanted] = [night(), stand.peek(), draft.peek()];
      if (!known || !one) return;
      if (wanted) {
        const nudged = nudgedMark(known, wanted.mark, nudge);
        if (!nudged) return say(REFUSED['no-camera-sense']);
        const moved =
          nudge.kind === 'move' ? aimedMark(known, one, nudged.spot, nudged, addedTo(one.id)) : nudged;
        draft.value = { ...wanted, mark: moved, autoPower: wanted.autoPower && nudge.kind !== 'power' };
        return;
      }
      const outcome = nudgeCarry(doc, hand, { standId: one.id, nudge });
      if (refused(outcome) || !outcome.ok) return;
      ring('change', outcome.carryId);
      say(`${one.kit.letter} corrected.`);
    },
    withdraw,
    sendHeld: () => {
      const held = carry.peek();
      if (!held) return;
      if (refused(releaseCall(doc, hand, { carryId: held.id, revisionId: held.current.id }))) return;
      ring('call', held.id);
      say('Sent after all.');
    },
    ringAgain: () => {
      const open = carry.peek();
      if (open) ring('look', open.id);
    },
    takePowers: () => takePowers({ session, draft, light, say, ring }),
    isSent: (one) => isDurable(doc, 'carries', key.carryRevision(one.id, one.current.id), sync.durable.value),
    ringReach,
    close: () => {
      stopPower();
      cautions.stop();
      light.close();
    },
  };
}
