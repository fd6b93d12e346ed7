import type { Spot } from '../../../core/geometry/spot.ts';
import { newPlan } from '../../../shared/document/commands/change-plan.ts';
import { DEFAULT_FINISHES } from '../../../shared/document/defaults.ts';
import type { Outcome } from '../../../shared/document/outcome.ts';
import type { Entry } from '../../../shared/document/schema.ts';
import type { EditorState } from './editor-state.ts';

/** The height of a room that a drawing or a picture does not tell, m. ASSUMPTION: a usual hall; it can be changed. */
const CEILING_M = 3.5;

/** Makes the room of a drawing or a traced picture this night's room, as one step of undo. */
export function takeOutline(
  state: EditorState,
  outline: readonly Spot[],
  features: readonly Entry<'feature'>[],
): Outcome {
  const { doc, hand } = state.session;
  state.undo.startStep();
  return newPlan(doc, hand, {
    room: { outline: [...outline], ceilingM: CEILING_M },
    roof: { kind: 'flat' },
    finishes: DEFAULT_FINISHES,
    features,
  });
}
