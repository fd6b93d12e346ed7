import { bearingDeg } from '../../../core/guidance/bearing.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { fitView, type PlanView, zoomed } from '../../parts/plan/plan-view.ts';
import type { LeadState } from './lead-state.ts';

/** Bearings that may be up: as the plan was drawn, its quarter turns, and what the camera looks at. */
function nextUp(night: Night, upDeg: number): number {
  const seen = night.moment?.view;
  const camera = seen ? bearingDeg(seen.camera.spot, seen.subject.spot) : null;
  const ways = [0, 90, 180, 270, ...(camera === null ? [] : [camera])];
  const now = ways.findIndex((way) => Math.abs(way - upDeg) < 0.5);
  return ways[(now + 1) % ways.length] ?? 0;
}

/** Keys for how the plan lies on the screen, and for the lines of equal light over it. */
export function ViewKeys({
  state,
  night,
  view,
  set,
}: {
  state: LeadState;
  night: Night;
  view: PlanView;
  set: (view: PlanView | null) => void;
}) {
  const size = { widthPx: view.widthPx, heightPx: view.heightPx };
  const turned = () => set(fitView(night.room?.outline ?? [], size, nextUp(night, view.upDeg)));
  return (
    <fieldset class="view-keys">
      <legend class="said-only">Plan on the screen</legend>
      <button type="button" aria-label="Larger" onClick={() => set(zoomed(view, 1.4))}>
        +
      </button>
      <button type="button" aria-label="Smaller" onClick={() => set(zoomed(view, 1 / 1.4))}>
        −
      </button>
      <button type="button" aria-label="Turn the plan" onClick={turned}>
        ↻
      </button>
      <button type="button" aria-label="Whole room" onClick={() => set(null)}>
        ▢
      </button>
      <button
        type="button"
        aria-label="Light map"
        aria-pressed={state.mapPinned.value}
        onClick={() => {
          state.mapPinned.value = !state.mapPinned.value;
        }}
      >
        ≋
      </button>
    </fieldset>
  );
}
