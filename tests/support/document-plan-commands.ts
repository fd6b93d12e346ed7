import type * as Y from 'yjs';
import {
  addFeatures,
  changeFeature,
  changeFeatures,
  newPlan,
  removeFeatures,
  setOutline,
} from '../../shared/document/commands/change-plan.ts';
import { moveCamera, moveSubject } from '../../shared/document/commands/move-people.ts';
import type { Outcome } from '../../shared/document/outcome.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { boxOutline, emptyPlan, tableAt } from './plan-features.ts';

/** What a command about the plan can be asked with. */
interface PlanAsking {
  readonly momentId: string;
  readonly featureId: string;
  /** Put wherever a command takes a number, or times the usual value: 1 is what every command accepts. */
  readonly number: number;
}

type PlanCommand = (doc: Y.Doc, hand: Hand, asking: PlanAsking) => Outcome<object>;

/** Every command about the plan by the name it is exported under. */
export const PLAN_COMMANDS: Readonly<Record<string, PlanCommand>> = {
  setOutline: (doc, hand, { number }) => setOutline(doc, hand, boxOutline(20 * number, 12), 4 * number),
  newPlan: (doc, hand, { number }) =>
    newPlan(doc, hand, { ...emptyPlan(14 * number, 9), features: [tableAt(3 * number, 3)] }),
  addFeatures: (doc, hand, { number }) =>
    addFeatures(doc, hand, [tableAt(5 * number, 3, { turnDeg: number })]),
  changeFeature: (doc, hand, { featureId, number }) =>
    changeFeature(doc, hand, featureId, { at: { x: number, y: 2 } }),
  changeFeatures: (doc, hand, { featureId, number }) =>
    changeFeatures(doc, hand, { bar: { turnDeg: 0 }, [featureId]: { heightM: Math.abs(number) } }),
  removeFeatures: (doc, hand, { featureId }) => removeFeatures(doc, hand, ['bar', featureId]),
  moveSubject: (doc, hand, { momentId, number }) =>
    moveSubject(doc, hand, momentId, { x: 9 * number, y: 6 }, 90 * number),
  moveCamera: (doc, hand, { momentId, number }) => moveCamera(doc, hand, momentId, { x: 9, y: 10 * number }),
};
