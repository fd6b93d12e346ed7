import { centroidOf } from '../../../core/geometry/polygon.ts';
import { add } from '../../../core/geometry/spot.ts';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { STAMP_ORDER, STAMPS } from './stamps.ts';

/** One in the middle of the room, or beside what was put there before, so that none hides another. */
function putInMiddle(state: EditorState): void {
  const tool = state.tool.peek();
  const night = state.night.peek();
  if (tool.kind !== 'stamp' || !night?.room) return;
  const taken = new Set(night.features.map(({ at }) => `${at.x.toFixed(2)}:${at.y.toFixed(2)}`));
  let spot = centroidOf(night.room.outline);
  while (taken.has(`${spot.x.toFixed(2)}:${spot.y.toFixed(2)}`)) spot = add(spot, { x: 0.5, y: 0.5 });
  state.stamp(tool.feature, spot);
  state.card.value = 'feature';
}

/** Choose what, then press the floor where: each press puts one down. */
export function AddCard({ state }: { state: EditorState }) {
  const tool = state.tool.value;
  const stamp = tool.kind === 'stamp' ? tool.feature : null;
  return (
    <div class="editor-card">
      <fieldset class="stamp-keys">
        <legend>
          {stamp
            ? `Press the floor for each ${STAMPS[stamp].word.toLowerCase()}`
            : 'Choose what, then press the floor'}
        </legend>
        {STAMP_ORDER.map((kind) => (
          <button
            key={kind}
            type="button"
            aria-pressed={kind === stamp}
            onClick={() => {
              state.tool.value = { kind: 'stamp', feature: kind };
            }}
          >
            {STAMPS[kind].word}
          </button>
        ))}
      </fieldset>
      <div class="three-keys">
        <button type="button" disabled={!stamp} onClick={() => putInMiddle(state)}>
          Put in the middle
        </button>
        <button
          type="button"
          onClick={() => {
            state.tool.value = { kind: 'pick' };
            state.card.value = 'rows';
          }}
        >
          Tables in rows
        </button>
        <BackKey state={state} />
      </div>
    </div>
  );
}
