import { wrap360 } from '../../../core/geometry/angle.ts';
import { add } from '../../../core/geometry/spot.ts';
import { withCornerAt } from '../../../core/plan/wall-edit.ts';
import type { EditorState } from './editor-state.ts';

/** Is there anything that an arrow key would move? */
export const isMovable = (state: EditorState): boolean =>
  state.chosen.peek().length > 0 || state.person.peek() !== null || state.corner.peek() !== null;

/** Moves what is chosen: things of the plan, the camera or the couple, or a corner of the walls. */
export function shiftChosen(state: EditorState, x: number, y: number): void {
  const night = state.night.peek();
  const by = { x, y };
  const [corner, person, chosen] = [state.corner.peek(), state.person.peek(), state.chosen.peek()];
  const from = corner === null ? undefined : night?.room?.outline[corner];
  if (corner !== null && from) {
    const moved = withCornerAt(night?.room?.outline ?? [], corner, add(from, by));
    if ('reason' in moved) state.said.value = moved.reason;
    else state.outline(moved.outline, `Corner ${corner + 1} moved.`);
    return;
  }
  const seen = night?.moment?.view;
  if (person && seen) {
    state.moving.value = { spots: new Map([[person, add(seen[person].spot, by)]]), outline: null };
    state.commitMoving();
    return;
  }
  if (chosen.length === 0) return;
  const changes = Object.fromEntries(chosen.map(({ id, at }) => [id, { at: add(at, by) }]));
  state.change(changes, 'Moved.');
}

/** Turns what is chosen, each thing about its own middle. */
export function turnChosen(state: EditorState, byDeg: number): void {
  const changes = state.chosen
    .peek()
    .map(({ id, turnDeg }) => [id, { turnDeg: wrap360(turnDeg + byDeg) }] as const);
  if (changes.length > 0) state.change(Object.fromEntries(changes), 'Turned.');
}
