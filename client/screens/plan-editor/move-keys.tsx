import type { EditorState } from './editor-state.ts';
import { shiftChosen } from './shift-chosen.ts';

const STEP_M = 0.1;
const ARROWS: readonly (readonly [string, number, number])[] = [
  ['Left', -1, 0],
  ['Up', 0, -1],
  ['Down', 0, 1],
  ['Right', 1, 0],
];

/** Moves what is chosen without a finger on the plan. */
export function MoveKeys({ state }: { state: EditorState }) {
  return (
    <fieldset class="stamp-keys four">
      <legend>Move by 10 cm, or drag it</legend>
      {ARROWS.map(([word, x, y]) => (
        <button key={word} type="button" onClick={() => shiftChosen(state, x * STEP_M, y * STEP_M)}>
          {word}
        </button>
      ))}
    </fieldset>
  );
}
