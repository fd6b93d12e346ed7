import { isDeepStrictEqual } from 'node:util';
import type * as Y from 'yjs';
import { contains } from '../../core/geometry/polygon.ts';
import {
  addFeatures,
  changeFeature,
  changeFeatures,
  newPlan,
  removeFeatures,
  setOutline,
} from '../../shared/document/commands/change-plan.ts';
import { moveCamera, moveSubject } from '../../shared/document/commands/move-people.ts';
import { refuse } from '../../shared/document/outcome.ts';
import { createPlanUndo, type PlanUndo } from '../../shared/document/plan-undo.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { useVenue, venueOf } from '../../shared/venue/venue-file.ts';
import type { LightMoment, Told } from './phone-light-acts.ts';
import { boxOutline, emptyPlan, tableAt } from './plan-features.ts';

const undos = new WeakMap<Y.Doc, PlanUndo>();

/** A phone's undo of the plan, from its first press on. */
export function planUndoOf(doc: Y.Doc): PlanUndo {
  const known = undos.get(doc) ?? createPlanUndo(doc);
  undos.set(doc, known);
  return known;
}

const momentId = ({ night, size }: LightMoment): string =>
  night.moments[size % Math.max(1, night.moments.length)]?.id ?? 'none';
const viewIn = (night: Night, id: string) => night.moments.find((known) => known.id === id)?.view;
const featureId = ({ night, size }: LightMoment): string =>
  night.features[size % Math.max(1, night.features.length)]?.id ?? 'none';
const featureIn = (night: Night, id: string) => night.features.find((known) => known.id === id);

const allInside = ({ room, stands }: Night): boolean =>
  room !== null && stands.every(({ place }) => contains(room.outline, place.mark.spot));

/** Rooms of 5 × 4 m to 24 × 15 m: small enough that stands of the demo night stand outside of some. */
const sizeOf = (size: number) => [5 + (size % 20), 4 + (size % 12)] as const;

/** What is pressed about the plan: walls, features, people, venues, undo. */
export const PLAN_ACTS = {
  outline: ({ doc, hand, size }: LightMoment): Told => {
    const outline = boxOutline(...sizeOf(size));
    return {
      outcome: setOutline(doc, hand, outline),
      shows: (after) => isDeepStrictEqual(after.room?.outline, outline) && allInside(after),
    };
  },
  'add features': ({ doc, hand, size }: LightMoment): Told => {
    const row = Array.from({ length: 1 + (size % 4) }, (_, place) => tableAt(2 + 2 * place, size % 10));
    const outcome = addFeatures(doc, hand, row);
    return {
      outcome,
      shows: (after) =>
        outcome.ok &&
        isDeepStrictEqual(
          outcome.featureIds.map((id) => featureIn(after, id)),
          row.map((feature, index) => ({ ...feature, id: outcome.featureIds[index] })),
        ),
    };
  },
  'change feature': (moment: LightMoment): Told => {
    const id = featureId(moment);
    const at = { x: moment.size % 18, y: moment.size % 11 };
    return {
      outcome: changeFeature(moment.doc, moment.hand, id, { at }),
      shows: (after) => isDeepStrictEqual(featureIn(after, id)?.at, at),
    };
  },
  'turn all': ({ doc, hand, night, size }: LightMoment): Told => {
    const turnDeg = size % 360;
    const changes = Object.fromEntries(night.features.map(({ id }) => [id, { turnDeg }]));
    return {
      outcome: changeFeatures(doc, hand, changes),
      shows: (after) => after.features.every((feature) => feature.turnDeg === turnDeg),
    };
  },
  'remove features': (moment: LightMoment): Told => {
    const id = featureId(moment);
    return {
      outcome: removeFeatures(moment.doc, moment.hand, [id]),
      shows: (after) => featureIn(after, id) === undefined,
    };
  },
  'new plan': ({ doc, hand, size }: LightMoment): Told => {
    const plan = { ...emptyPlan(...sizeOf(size)), features: [tableAt(2, 2), tableAt(4, 2)] };
    return {
      outcome: newPlan(doc, hand, plan),
      shows: (after) =>
        isDeepStrictEqual(after.room, plan.room) && after.features.length === 2 && allInside(after),
    };
  },
  'use venue': ({ doc, hand, night, size }: LightMoment): Told => {
    const saved = venueOf({ ...night, features: night.features.slice(0, size % 5) }, 'Hall', hand.now());
    if (!saved.ok) return { outcome: refuse('no-such-room'), shows: () => false };
    const { venue } = saved;
    return {
      outcome: useVenue(doc, hand, venue),
      shows: (after) => {
        const again = venueOf(after, 'Hall', venue.savedAt);
        return again.ok && isDeepStrictEqual(again.venue, venue) && allInside(after);
      },
    };
  },
  'move subject': (moment: LightMoment): Told => {
    const id = momentId(moment);
    const spot = { x: moment.size % 17, y: moment.size % 9 };
    return {
      outcome: moveSubject(moment.doc, moment.hand, id, spot, moment.size % 360),
      shows: (after) =>
        isDeepStrictEqual(viewIn(after, id)?.subject.spot, spot) &&
        viewIn(after, id)?.subject.facingDeg === moment.size % 360,
    };
  },
  'move camera': (moment: LightMoment): Told => {
    const id = momentId(moment);
    const spot = { x: moment.size % 13, y: moment.size % 7 };
    return {
      outcome: moveCamera(moment.doc, moment.hand, id, spot),
      shows: (after) => isDeepStrictEqual(viewIn(after, id)?.camera.spot, spot),
    };
  },
  'undo plan': ({ doc }: LightMoment): Told => ({
    outcome: planUndoOf(doc).undo() ? { ok: true } : refuse('nothing-to-undo'),
    shows: () => planUndoOf(doc).canRedo(),
  }),
  'redo plan': ({ doc }: LightMoment): Told => ({
    outcome: planUndoOf(doc).redo() ? { ok: true } : refuse('nothing-to-undo'),
    shows: () => planUndoOf(doc).canUndo(),
  }),
} as const;
