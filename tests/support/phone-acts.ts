import { isDeepStrictEqual } from 'node:util';
import type * as Y from 'yjs';
import type { Carry, CarryState } from '../../shared/document/carry.ts';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import {
  setAmbient,
  setExposure,
  setView,
  startMoment,
} from '../../shared/document/commands/change-moment.ts';
import { enterNight, setUnits } from '../../shared/document/commands/enter-night.ts';
import { markSet, markSetElsewhere, undoStamp } from '../../shared/document/commands/mark-set.ts';
import { type Nudge, nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import {
  cannotCarry,
  holdCall,
  releaseCall,
  type StampOn,
  stampDelivered,
  stampHeard,
  stampSeen,
  startCarrying,
} from '../../shared/document/commands/stamp-carry.ts';
import {
  acknowledgeWithdrawal,
  restoreCarry,
  withdrawCarry,
} from '../../shared/document/commands/withdraw-carry.ts';
import type { Outcome } from '../../shared/document/outcome.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { Mark } from '../../shared/document/schema.ts';
import { type Night, readNight } from '../../shared/document/snapshot.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { LIGHT_ACTS, type LightMoment, type Told } from './phone-light-acts.ts';
import { MOMENT_ACTS } from './phone-moment-acts.ts';
import { PLAN_ACTS, planUndoOf } from './phone-plan-acts.ts';

/** One press on one phone. The numbers choose among what that phone shows at that moment. */
export interface Act {
  readonly kind: ActKind;
  readonly pick: number;
  readonly size: number;
}

interface Moment extends LightMoment {
  readonly on: StampOn;
}

/** A mark anywhere in the hall of the demo night, drawn from one number. */
const markFrom = (size: number): Mark => ({
  spot: { x: (size * 7919) % 18, y: (size * 104729) % 12 },
  heightM: 1 + (size % 17) / 10,
  facingDeg: size % 360,
  tiltDeg: size % 45,
  powerStops: -(size % 22) / 3,
});

const NUDGES: readonly Nudge[] = [
  { kind: 'move', way: 'camera-left', byM: 0.5 },
  { kind: 'move', way: 'camera-right', byM: 0.25 },
  { kind: 'move', way: 'nearer', byM: 0.5 },
  { kind: 'move', way: 'farther', byM: 0.25 },
  { kind: 'height', byM: 0.2 },
  { kind: 'height', byM: -0.2 },
  { kind: 'tilt', byDeg: 5 },
  { kind: 'turn', byDeg: -15 },
  { kind: 'power', byStops: 1 / 3 },
  { kind: 'power', byStops: -1 / 3 },
];
const nth = <Item>(items: readonly Item[], at: number): Item => {
  const item = items[at % items.length];
  if (item === undefined) throw new Error(`nothing to choose from at ${at}`);
  return item;
};

const carryIn = (night: Night, id: string): Carry | undefined =>
  night.carries.find((carry) => carry.id === id);
const standIn = (night: Night, id: string): Stand | undefined =>
  night.stands.find((stand) => stand.id === id);
const inState =
  (on: StampOn, ...states: CarryState[]) =>
  (night: Night): boolean =>
    states.includes(carryIn(night, on.carryId)?.state ?? 'replaced');

/** A called or nudged mark is the current revision of an open carry, and nothing has been said of it. */
function called(standId: string, mark: Mark | null, outcome: Outcome<StampOn>): Told['shows'] {
  return (night) => {
    if (!outcome.ok) return true;
    const carry = carryIn(night, outcome.carryId);
    return (
      carry?.state === 'called' &&
      carry.standId === standId &&
      carry.current.id === outcome.revisionId &&
      (mark === null || isDeepStrictEqual(carry.current.mark, mark))
    );
  };
}

/** A nudge folds nothing, or the revision that was current on this phone: a nudge that nobody was known to have seen. */
function foldsRightly(before: Night, after: Night, outcome: Outcome<StampOn>): boolean {
  if (!outcome.ok) return true;
  const { current } = carryIn(after, outcome.carryId) ?? {};
  const was = carryIn(before, outcome.carryId)?.current;
  if (current?.folds === undefined) return current?.from !== undefined;
  return (
    current.folds === was?.id &&
    was.why === 'nudge' &&
    was.by === current.by &&
    was.stamps.seen === undefined &&
    isDeepStrictEqual(current.from, was.from)
  );
}

/** The stand stands there, and the stamp says so with its reason; what was called is as it was. */
const isSetTo =
  ({ on, night }: Moment, mark: Mark | undefined, note: string | null) =>
  (after: Night): boolean => {
    const [carry, was] = [carryIn(after, on.carryId), carryIn(night, on.carryId)];
    return (
      carry?.state === 'set' &&
      isDeepStrictEqual(standIn(after, carry.standId)?.place.mark, mark) &&
      isDeepStrictEqual(carry.current.stamps.set?.echo, mark) &&
      carry.current.stamps.set?.reason === note &&
      isDeepStrictEqual(carry.current.mark, was?.current.mark)
    );
  };

function setTo(moment: Moment, mark?: Mark): Told {
  const { doc, hand, on, night } = moment;
  const carry = carryIn(night, on.carryId);
  const outcome = mark ? markSet(doc, hand, on, mark) : markSet(doc, hand, on);
  return { outcome, shows: isSetTo(moment, mark ?? carry?.current.mark, null) };
}

const stamped = (on: StampOn, kind: 'delivered' | 'seen' | 'heard' | 'held') => (after: Night) =>
  carryIn(after, on.carryId)?.current.stamps[kind] !== undefined;

const undone = (moment: Moment, kind: 'carrying' | 'cant' | 'set'): Told => ({
  outcome: undoStamp(moment.doc, moment.hand, moment.on, kind),
  shows: (after) => carryIn(after, moment.on.carryId)?.current.stamps[kind] === undefined,
});

const momentId = ({ night, size }: Moment): string =>
  night.moments.length > 0 ? nth(night.moments, size).id : 'none';

const ACTS = {
  call: ({ doc, hand, standId, size }: Moment): Told => {
    const mark = markFrom(size);
    const outcome = callCarry(doc, hand, { standId, mark });
    return { outcome, shows: called(standId, mark, outcome) };
  },
  nudge: ({ doc, hand, standId, size, night }: Moment): Told => {
    const outcome = nudgeCarry(doc, hand, { standId, nudge: nth(NUDGES, size) });
    return {
      outcome,
      shows: (after) => called(standId, null, outcome)(after) && foldsRightly(night, after, outcome),
    };
  },
  withdraw: ({ doc, hand, on }: Moment): Told => ({
    outcome: withdrawCarry(doc, hand, on.carryId),
    // A withdrawal is news to the assistant, whatever was acknowledged before it.
    shows: (after) => inState(on, 'withdrawn')(after) && carryIn(after, on.carryId)?.withdrawalSeen === false,
  }),
  restore: ({ doc, hand, on }: Moment): Told => ({
    outcome: restoreCarry(doc, hand, on.carryId),
    shows: (after) => carryIn(after, on.carryId)?.withdrawnAt === null,
  }),
  acknowledge: ({ doc, hand, on }: Moment): Told => ({
    outcome: acknowledgeWithdrawal(doc, hand, on.carryId),
    shows: (after) => carryIn(after, on.carryId)?.withdrawalSeen === true,
  }),
  deliver: ({ doc, hand, on }: Moment): Told => ({
    outcome: stampDelivered(doc, hand, on),
    shows: stamped(on, 'delivered'),
  }),
  see: ({ doc, hand, on, size }: Moment): Told => ({
    outcome: stampSeen(doc, hand, on, markFrom(size)),
    shows: stamped(on, 'seen'),
  }),
  hear: ({ doc, hand, on }: Moment): Told => ({
    outcome: stampHeard(doc, hand, on),
    shows: stamped(on, 'heard'),
  }),
  hold: ({ doc, hand, on }: Moment): Told => ({
    outcome: holdCall(doc, hand, on),
    shows: stamped(on, 'held'),
  }),
  release: ({ doc, hand, on }: Moment): Told => ({
    outcome: releaseCall(doc, hand, on),
    shows: (after) => carryIn(after, on.carryId)?.current.stamps.held === undefined,
  }),
  carry: ({ doc, hand, on }: Moment): Told => ({
    outcome: startCarrying(doc, hand, on),
    shows: inState(on, 'carrying'),
  }),
  cannot: ({ doc, hand, on, size }: Moment): Told => ({
    outcome: cannotCarry(doc, hand, on, `a chair stands there (${size})`),
    shows: inState(on, 'cant'),
  }),
  set: (moment: Moment): Told => setTo(moment),
  'set elsewhere': (moment: Moment): Told => setTo(moment, markFrom(moment.size + 1)),
  'set as near': (moment: Moment): Told => {
    const { doc, hand, on, size } = moment;
    const mark = markFrom(size + 2);
    const outcome = markSetElsewhere(doc, hand, { ...on, mark, note: `${size} cm short` });
    return { outcome, shows: (after) => isSetTo(moment, mark, `${size} cm short`)(after) };
  },
  'undo carrying': (moment: Moment): Told => undone(moment, 'carrying'),
  'undo cannot': (moment: Moment): Told => undone(moment, 'cant'),
  'undo set': (moment: Moment): Told => undone(moment, 'set'),
  'start moment': (moment: Moment): Told => {
    const id = momentId(moment);
    return { outcome: startMoment(moment.doc, moment.hand, id), shows: (after) => after.moment?.id === id };
  },
  exposure: (moment: Moment): Told => {
    const id = momentId(moment);
    const exposure = { iso: 100 * 2 ** (moment.size % 6), fNumber: 2, shutterS: 1 / 160 };
    return {
      outcome: setExposure(moment.doc, moment.hand, id, exposure),
      shows: (after) => isDeepStrictEqual(after.moments.find((known) => known.id === id)?.exposure, exposure),
    };
  },
  view: (moment: Moment): Told => {
    const id = momentId(moment);
    const known = moment.night.moments.find((one) => one.id === id)?.view;
    const camera = { spot: markFrom(moment.size).spot, heightM: 1.6 };
    const subject = { spot: { x: 9, y: 6 }, facingDeg: 180, eyeM: 1.6, name: 'The couple' };
    const frame = known?.frame ?? { focalMm: 35, sensorWidthMm: 36, sensorHeightMm: 24, upright: false };
    return {
      outcome: setView(moment.doc, moment.hand, id, { subject, camera, frame }),
      shows: (after) =>
        isDeepStrictEqual(after.moments.find((one) => one.id === id)?.view, { subject, camera, frame }),
    };
  },
  ambient: ({ doc, hand, size }: Moment): Told => ({
    outcome: setAmbient(doc, hand, (size % 60) / 10),
    shows: (after) => after.ambientEv100 === (size % 60) / 10,
  }),
  enter: ({ doc, hand, size }: Moment): Told => {
    const person = { name: hand.person, role: 'assistant' as const, stepM: 0.5 + (size % 5) / 10 };
    return {
      outcome: enterNight(doc, hand, person),
      shows: (after) => [...after.people.values()].some((known) => known.stepM === person.stepM),
    };
  },
  units: ({ doc, hand, size }: Moment): Told => {
    const units = size % 2 === 0 ? 'metric' : 'imperial';
    return { outcome: setUnits(doc, hand, units), shows: (after) => after.units === units };
  },
  ...LIGHT_ACTS,
  ...PLAN_ACTS,
  ...MOMENT_ACTS,
} as const;

export type ActKind = keyof typeof ACTS;
export const ACT_KINDS = Object.keys(ACTS) as readonly ActKind[];

/** What an undo needs to find: without it, random presses would hardly ever take anything back. */
const NEEDED: Partial<Record<ActKind, (carry: Carry) => boolean>> = {
  restore: ({ state }) => state === 'withdrawn',
  acknowledge: ({ state }) => state === 'withdrawn',
  release: ({ current }) => current.stamps.held !== undefined,
  'undo carrying': ({ current }) => current.stamps.carrying !== undefined,
  'undo cannot': ({ current }) => current.stamps.cant !== undefined,
  'undo set': ({ current }) => current.stamps.set !== undefined,
};

/** The revision a press is about: mostly the newest carry's current one, as on the screens; sometimes an old one. */
function chosen(night: Night, { kind, pick }: Act): StampOn {
  const fit = night.carries.filter(NEEDED[kind] ?? (() => true));
  const carries = fit.length > 0 ? fit : night.carries;
  if (carries.length === 0) return { carryId: 'none', revisionId: 'none' };
  const carry = pick % 4 === 0 ? nth(carries, pick >> 2) : nth([...carries].reverse(), (pick >> 2) % 2);
  const revision = pick % 7 === 0 ? nth(carry.revisions, pick) : carry.current;
  return { carryId: carry.id, revisionId: revision.id };
}

/** Does one act on one phone's document. */
export function perform(doc: Y.Doc, hand: Hand, act: Act): Told {
  const night = readNight(doc);
  planUndoOf(doc); // every press from the first on can be taken back
  return ACTS[act.kind]({
    doc,
    hand,
    night,
    standId: act.pick % 3 === 0 ? 'back' : 'key',
    on: chosen(night, act),
    size: act.size,
  });
}
