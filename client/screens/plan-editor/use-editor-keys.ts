import type { PlanView } from '../../parts/plan/plan-view.ts';
import { panned, zoomed } from '../../parts/plan/plan-view.ts';
import type { EditorState } from './editor-state.ts';
import { isMovable, shiftChosen, turnChosen } from './shift-chosen.ts';

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const STEP_M = 0.1;
const LONG_STEP_M = 1;
const TURN_DEG = 15;
/** How far an arrow moves the plan when nothing is chosen, px. */
const PAN_PX = 60;
const ZOOM = 1.4;

/** Takes back what is chosen and what card is open, one key press after the other; the last one leaves the editor. */
function stepOut(state: EditorState, done: () => void): void {
  if (!isMovable(state) && state.card.peek() === 'keys') done();
  else state.toKeys();
}

function planKey(key: string, view: PlanView, setView: (view: PlanView | null) => void): boolean {
  const way = WAYS[key];
  if (way) setView(panned(view, way[0] * PAN_PX, way[1] * PAN_PX));
  else if (key === '+' || key === '=') setView(zoomed(view, ZOOM));
  else if (key === '-') setView(zoomed(view, 1 / ZOOM));
  else if (key === 'r') setView({ ...view, upDeg: (view.upDeg + TURN_DEG) % 360 });
  else if (key === '0') setView(null);
  else return false;
  return true;
}

/**
 * The keyboard. With something chosen, arrows move it by 10 cm, with Shift by a metre, [ and ] turn it, Delete takes
 * it off; with nothing chosen, arrows move the plan. + and − and 0 are its size, r turns it. Ctrl+Z and Ctrl+Y.
 */
export function useEditorKeys(props: {
  state: EditorState;
  view: PlanView | null;
  setView: (view: PlanView | null) => void;
  done: () => void;
}) {
  const { state, view, setView, done } = props;
  return (event: KeyboardEvent) => {
    const typed = event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement;
    const control = event.ctrlKey || event.metaKey;
    if (event.altKey || (typed && !control && event.key !== 'Escape')) return;
    const way = WAYS[event.key];
    const step = event.shiftKey ? LONG_STEP_M : STEP_M;
    if (control) {
      const key = event.key.toLowerCase();
      if (key === 'y' || (key === 'z' && event.shiftKey)) state.doAgain();
      else if (key === 'z') state.takeBack();
      else return;
    } else if (way && isMovable(state)) shiftChosen(state, way[0] * step, way[1] * step);
    else if (event.key === '[') turnChosen(state, -TURN_DEG);
    else if (event.key === ']') turnChosen(state, TURN_DEG);
    else if (event.key === 'Delete') state.remove();
    else if (event.key === 'Escape') stepOut(state, done);
    else if (!view || !planKey(event.key, view, setView)) return;
    event.preventDefault();
  };
}
