import { edgesOf } from '../../../core/geometry/polygon.ts';
import { midpoint } from '../../../core/geometry/spot.ts';
import type { OutlineOutcome } from '../../../core/plan/room-outline.ts';
import {
  wallLengthsM,
  withCornerAdded,
  withoutCorner,
  withWallLength,
} from '../../../core/plan/wall-edit.ts';
import { LengthField } from '../../parts/length-field/index.tsx';
import { Stepper } from '../../parts/stepper/index.tsx';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { MoveKeys } from './move-keys.tsx';

/** Which way a wall runs on the plan, so that a list of numbers can be told apart. */
function runs(dx: number, dy: number): string {
  if (Math.abs(dx) >= Math.abs(dy)) return dx > 0 ? 'to the right' : 'to the left';
  return dy > 0 ? 'down' : 'up';
}

/** Corners are dragged on the plan; lengths are typed here. */
export function WallsCard({ state }: { state: EditorState }) {
  const night = state.night.value;
  const outline = night?.room?.outline;
  if (!night || !outline) return null;
  const take = (outcome: OutlineOutcome, text: string) => {
    if ('reason' in outcome) state.said.value = outcome.reason;
    else state.outline(outcome.outline, text);
  };
  const corner = state.corner.value;
  const walls = edgesOf(outline);
  const choose = (by: number) => {
    const from = corner ?? (by > 0 ? -1 : 0);
    state.corner.value = (from + by + outline.length) % outline.length;
  };
  return (
    <div class="editor-card">
      <p class="quiet">
        Drag a corner, or type a wall’s length: the wall after it follows. +∠ puts a corner into its middle.
      </p>
      {wallLengthsM(outline).map((lengthM, wall) => {
        const [a, b] = walls[wall] ?? [];
        const way = a && b ? runs(b.x - a.x, b.y - a.y) : '';
        return (
          <div key={wall} class="wall-line">
            <LengthField
              name={`Wall ${wall + 1}, ${way}`}
              units={night.units}
              valueM={lengthM}
              leastM={0.1}
              mostM={300}
              set={(length) => take(withWallLength(outline, wall, length), `Wall ${wall + 1} changed.`)}
            />
            <button
              type="button"
              aria-label={`Corner in the middle of wall ${wall + 1}`}
              onClick={() =>
                a && b && take(withCornerAdded(outline, wall, midpoint(a, b)), 'Corner added: drag it.')
              }
            >
              +∠
            </button>
          </div>
        );
      })}
      <Stepper
        name="Corner"
        value={corner === null ? 'none chosen' : `${corner + 1} of ${outline.length}`}
        less={() => choose(-1)}
        more={() => choose(1)}
      />
      {corner !== null && <MoveKeys state={state} />}
      <div class="two-keys">
        <button
          type="button"
          disabled={corner === null}
          onClick={() => {
            if (corner !== null) take(withoutCorner(outline, corner), 'Corner taken away.');
            state.corner.value = null;
          }}
        >
          {corner === null ? 'Take corner away' : `Take corner ${corner + 1} away`}
        </button>
        <BackKey state={state} />
      </div>
    </div>
  );
}
