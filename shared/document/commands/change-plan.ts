import type * as Y from 'yjs';
import { isSimple } from '../../../core/geometry/polygon.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import { asId, type FeatureId, ID_PATTERN } from '../../ids.ts';
import { isNewer } from '../ask.ts';
import { bringPeopleInside, bringStandsInside } from '../bring-inside.ts';
import { checkedFeatures, type FeatureValue } from '../check-features.ts';
import { entryAt } from '../entries.ts';
import { type Outcome, refuse, refuseField } from '../outcome.ts';
import { type Entry, entrySchemas, MOST_FEATURES } from '../schema.ts';
import { readNight } from '../snapshot.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/**
 * The walls of the room. Stands that would stand outside are brought inside in the same transaction; features stay where
 * they are.
 *
 * @param outline corners in order, not closed [m]
 * @param ceilingM how high the ceiling is; as before where nothing is given
 */
export function setOutline(doc: Y.Doc, hand: Hand, outline: readonly Spot[], ceilingM?: number): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const before = entryAt(doc, 'room', 'shape', 'room/shape');
  const height = ceilingM ?? before?.ceilingM;
  if (height === undefined) return refuse('no-such-room');
  const checked = entrySchemas['room/shape'].safeParse({ outline, ceilingM: height });
  if (!checked.success) return refuseField(checked.error);
  if (!isSimple(checked.data.outline)) return refuse('crossing-outline');
  const night = readNight(doc);
  return commit(doc, LOCAL, hand, (pen) => {
    pen.write('room', 'shape', checked.data);
    bringStandsInside(pen, hand, night, checked.data.outline);
    pen.log('walls', 'room', `${checked.data.outline.length} corners`);
    return { ok: true };
  });
}

/** A whole plan; its features by their ids, or a list of them that have none yet. */
export interface Plan {
  readonly room: Entry<'room/shape'>;
  readonly roof: Entry<'room/roof'>;
  readonly finishes: Entry<'room/finishes'>;
  readonly features: Readonly<Record<string, FeatureValue>> | readonly FeatureValue[];
}

const isList = (features: Plan['features']): features is readonly FeatureValue[] => Array.isArray(features);

/**
 * Another room in the place of the present one: walls, roof, finishes and everything on the plan, in one transaction.
 * Stands, subjects and cameras that would be outside it are brought inside. Features keep ids that they have, so
 * that two phones which both take the same plan while apart do not hold everything twice. Ambient readings stay.
 *
 * @param name what the plan is called, for the log
 */
export function newPlan(doc: Y.Doc, hand: Hand, plan: Plan, name = 'new plan'): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const room = entrySchemas['room/shape'].safeParse(plan.room);
  if (!room.success) return refuseField(room.error);
  const roof = entrySchemas['room/roof'].safeParse(plan.roof);
  if (!roof.success) return refuseField(roof.error);
  const finishes = entrySchemas['room/finishes'].safeParse(plan.finishes);
  if (!finishes.success) return refuseField(finishes.error);
  const { features } = plan;
  const wanted: [string, unknown][] = isList(features)
    ? features.map((feature) => [hand.newId(), feature])
    : Object.entries(features);
  if (wanted.length > MOST_FEATURES) return refuse('too-many-features');
  if (wanted.some(([id]) => !ID_PATTERN.test(id))) return refuse('no-such-feature');
  const checked = checkedFeatures(wanted);
  if (!checked.ok) return checked;
  const { outline } = room.data;
  if (!isSimple(outline)) return refuse('crossing-outline');
  const night = readNight(doc);
  return commit(doc, LOCAL, hand, (pen) => {
    pen.write('room', 'shape', room.data);
    pen.replace('room', 'roof', roof.data);
    pen.replace('room', 'finishes', finishes.data);
    // What could not be read stays where it is (SPEC DOC3): only what a person saw is taken away.
    const stays = new Set(checked.features.map(([id]) => id));
    for (const { id } of night.features) if (!stays.has(id)) pen.remove('features', id);
    for (const [id, feature] of checked.features) pen.write('features', id, feature);
    bringStandsInside(pen, hand, night, outline);
    bringPeopleInside(pen, night, outline);
    pen.log('plan', 'room', name.slice(0, 400));
    return { ok: true };
  });
}

/** Nothing was given that could be done. */
const NOTHING_GIVEN = { ok: false, reason: 'out-of-range', field: 'features' } as const;

/**
 * Puts features on the plan, a single one or a whole row, in one transaction.
 *
 * @returns their fresh ids, in the order of the list
 */
export function addFeatures(
  doc: Y.Doc,
  hand: Hand,
  list: readonly FeatureValue[],
): Outcome<{ readonly featureIds: readonly FeatureId[] }> {
  if (isNewer(doc)) return refuse('newer-app');
  if (list.length === 0) return NOTHING_GIVEN;
  const checked = checkedFeatures(list.map((feature, index) => [`${index}`, feature]));
  if (!checked.ok) return checked;
  const { length: there } = readNight(doc).features;
  if (there + list.length > MOST_FEATURES) return refuse('too-many-features');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    const featureIds = checked.features.map(([, feature]) => {
      const featureId = asId<FeatureId>(hand.newId());
      write('features', featureId, feature);
      return featureId;
    });
    log('features added', featureIds[0] ?? '', `${list.length}`);
    return { ok: true, featureIds };
  });
}

/** Changes some fields of one feature: it is moved, turned, named, made larger. */
export const changeFeature = (
  doc: Y.Doc,
  hand: Hand,
  featureId: string,
  change: Partial<FeatureValue>,
): Outcome => changeFeatures(doc, hand, { [featureId]: change });

/**
 * Changes some fields of many features in one transaction: a row is aligned, turned, moved. All or none.
 *
 * @param changes by feature id
 */
export function changeFeatures(
  doc: Y.Doc,
  hand: Hand,
  changes: Readonly<Record<string, Partial<FeatureValue>>>,
): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const asked = Object.entries(changes);
  if (asked.length === 0) return NOTHING_GIVEN;
  const wanted: (readonly [string, unknown])[] = [];
  for (const [featureId, change] of asked) {
    const known = entryAt(doc, 'features', featureId, 'feature');
    if (!known) return refuse('no-such-feature');
    wanted.push([featureId, { ...known, ...change }]);
  }
  const checked = checkedFeatures(wanted);
  if (!checked.ok) return checked;
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    for (const [featureId, feature] of checked.features) write('features', featureId, feature);
    log('features changed', checked.features[0]?.[0] ?? '', `${asked.length}`);
    return { ok: true };
  });
}

/** Takes features off the plan in one transaction, all or none. Undo is the plan's own: `createPlanUndo`. */
export function removeFeatures(doc: Y.Doc, hand: Hand, featureIds: readonly string[]): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  if (featureIds.length === 0) return NOTHING_GIVEN;
  if (featureIds.some((id) => !entryAt(doc, 'features', id, 'feature'))) return refuse('no-such-feature');
  return commit(doc, LOCAL, hand, ({ remove, log }) => {
    const all = new Set(featureIds);
    for (const featureId of all) remove('features', featureId);
    log('features removed', featureIds[0] ?? '', `${all.size}`);
    return { ok: true };
  });
}
