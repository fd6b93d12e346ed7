import type * as Y from 'yjs';
import { entryAt } from '../entries.ts';
import { key } from '../keys.ts';
import { type Outcome, refuse } from '../outcome.ts';
import type { Entry } from '../schema.ts';
import type { Hand } from '../transact.ts';
import { setView } from './change-moment.ts';

type View = Entry<'moment/view'>;

function moveInView(doc: Y.Doc, hand: Hand, momentId: string, move: (view: View) => View): Outcome {
  const view = entryAt(doc, 'moments', key.momentView(momentId), 'moment/view');
  return view ? setView(doc, hand, momentId, move(view)) : refuse('no-such-moment');
}

/**
 * The subject of a moment stands somewhere else.
 *
 * @param facingDeg bearing that it faces, clockwise from plan-up [°]; as before where nothing is given
 */
export const moveSubject = (
  doc: Y.Doc,
  hand: Hand,
  momentId: string,
  spot: View['subject']['spot'],
  facingDeg?: number,
): Outcome =>
  moveInView(doc, hand, momentId, (view) => ({
    ...view,
    subject: { ...view.subject, spot, facingDeg: facingDeg ?? view.subject.facingDeg },
  }));

/** The camera of a moment is somewhere else; its height stays. */
export const moveCamera = (doc: Y.Doc, hand: Hand, momentId: string, spot: View['camera']['spot']): Outcome =>
  moveInView(doc, hand, momentId, (view) => ({ ...view, camera: { ...view.camera, spot } }));
