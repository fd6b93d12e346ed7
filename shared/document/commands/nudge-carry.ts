import type * as Y from 'yjs';
import { wrap360 } from '../../../core/geometry/angle.ts';
import { type NudgeWay, nudgeSpot } from '../../../core/guidance/camera-sense.ts';
import { asId, type CarryId, type RevisionId } from '../../ids.ts';
import { beginsAt, isNewer, latestCarry, standOf } from '../ask.ts';
import type { Carry } from '../carry.ts';
import { differenceWords } from '../change-words.ts';
import { markSchema } from '../fields.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import type { Mark } from '../schema.ts';
import { type Night, readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';
import type { Called } from './call-carry.ts';

/** A correction as the lead presses it: a way in the camera's own sense, or height, tilt, turn (clockwise from above) or power. */
export type Nudge =
  | { readonly kind: 'move'; readonly way: NudgeWay; readonly byM: number }
  | { readonly kind: 'height'; readonly byM: number }
  | { readonly kind: 'tilt'; readonly byDeg: number }
  | { readonly kind: 'turn'; readonly byDeg: number }
  | { readonly kind: 'power'; readonly byStops: number };

/**
 * A mark with a nudge applied: metres on the floor by the camera of the present moment, metres of height,
 * degrees of tilt or turn, stops of power. Null where the camera gives no sense of left and right (it stands on the subject).
 */
export function nudgedMark(night: Night, mark: Mark, nudge: Nudge): Mark | null {
  switch (nudge.kind) {
    case 'move': {
      const view = night.moment?.view;
      if (!view) return null;
      const { way, byM } = nudge;
      const spot = nudgeSpot({
        spot: mark.spot,
        camera: view.camera.spot,
        subject: view.subject.spot,
        way,
        byM,
      });
      return spot && { ...mark, spot };
    }
    case 'height':
      return { ...mark, heightM: mark.heightM + nudge.byM };
    case 'tilt':
      return { ...mark, tiltDeg: mark.tiltDeg + nudge.byDeg };
    case 'turn':
      return { ...mark, facingDeg: wrap360(mark.facingDeg + nudge.byDeg) };
    case 'power':
      return { ...mark, powerStops: mark.powerStops + nudge.byStops };
  }
}

function amountOf(nudge: Nudge): number {
  if (nudge.kind === 'tilt' || nudge.kind === 'turn') return nudge.byDeg;
  return nudge.kind === 'power' ? nudge.byStops : nudge.byM;
}

/** Nudges that come quicker than this after each other are one change: a hand that presses a key three times. */
const FOLDS_WITHIN_MS = 4000;

/**
 * The nudge that a further one by this hand folds: the carry's current revision, if it is a nudge by the same person a
 * moment ago and the assistant, as far as this phone knows, has not looked at it. Else null.
 */
function foldable(hand: Hand, going: Carry | null): { readonly id: string; readonly from: Mark } | null {
  if (!going) return null;
  const { id, why, by, at, from, stamps } = going.current;
  if (why !== 'nudge' || by !== hand.person || from === undefined) return null;
  if (Math.abs(hand.now() - at) > FOLDS_WITHIN_MS) return null;
  const isLookedAt = stamps.seen ?? stamps.heard ?? stamps.carrying ?? stamps.cant ?? stamps.set;
  return isLookedAt ? null : { id, from };
}

/**
 * Corrects where a stand was called to by a small step: the next revision of its last carry, so that an
 * earlier *set* no longer closes it. A stand with no carry, or whose carry was withdrawn, begins one where
 * it stands now.
 *
 * Quick nudges fold: the revision before it stays as it is, since it may be on the other phone by now, and the new one
 * says that it speaks for both; its `change` and `from` are those of all of them together.
 */
export function nudgeCarry(
  doc: Y.Doc,
  hand: Hand,
  request: { readonly standId: string; readonly nudge: Nudge },
): Outcome<Called> {
  if (isNewer(doc)) return refuse('newer-app');
  const night = readNight(doc);
  const stand = standOf(night, request.standId);
  if (!stand) return refuse('no-such-stand');
  // The geometry lets no NaN out: it would make a step of "NaN m" into one of none, and a revision of it.
  if (!Number.isFinite(amountOf(request.nudge))) return refuse('out-of-range');
  const last = latestCarry(night, request.standId);
  // A carry that was set and withdrawn too late is over too: its withdrawal would take the nudge back at once.
  const going = last && last.withdrawnAt === null ? last : null;
  // From where it really was set, if it was: the lead corrects what is seen, not what was asked for.
  const from = going?.current.stamps.set?.echo ?? going?.current.mark ?? stand.place.mark;
  const nudged = nudgedMark(night, from, request.nudge);
  if (!nudged) return refuse('no-camera-sense');
  const mark = markSchema.safeParse(nudged);
  if (!mark.success) return refuse('out-of-range');
  const carryId = asId<CarryId>(going?.id ?? hand.newId());
  const revisionId = asId<RevisionId>(hand.newId());
  const number = (going?.current.number ?? 0) + 1;
  const folded = foldable(hand, going);
  const told = folded ? { from: folded.from, folds: folded.id } : { from };
  const change = differenceWords(night, told.from, mark.data);
  const stamp = { by: hand.person, at: hand.now() };
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    if (!going)
      write('carries', key.carryOf(carryId), {
        standId: stand.id,
        from: stand.place.mark,
        by: hand.person,
        at: beginsAt(hand, last),
      });
    const revision = { number, mark: mark.data, why: 'nudge', change, ...told, ...stamp };
    write('carries', key.carryRevision(carryId, revisionId), revision);
    log('nudged', carryId, `${stand.kit.letter} r${number} ${change}`);
    return { ok: true, carryId, revisionId };
  });
}
