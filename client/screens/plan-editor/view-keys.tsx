import type { PlanView } from '../../parts/plan/plan-view.ts';
import { zoomed } from '../../parts/plan/plan-view.ts';

const ZOOM = 1.4;
const QUARTER_DEG = 90;

/** How the plan lies on the screen, for who has no two fingers free. */
export function ViewKeys(props: { view: PlanView | null; setView: (view: PlanView | null) => void }) {
  const { view, setView } = props;
  const change = (changed: (view: PlanView) => PlanView) => () => view && setView(changed(view));
  return (
    <div class="editor-view-keys">
      <button type="button" aria-label="Larger" onClick={change((now) => zoomed(now, ZOOM))}>
        +
      </button>
      <button type="button" aria-label="Smaller" onClick={change((now) => zoomed(now, 1 / ZOOM))}>
        −
      </button>
      <button
        type="button"
        aria-label="Turn the plan"
        onClick={change((now) => ({ ...now, upDeg: (now.upDeg + QUARTER_DEG) % 360 }))}
      >
        ↻
      </button>
      <button type="button" aria-label="Whole room" onClick={() => setView(null)}>
        ▢
      </button>
    </div>
  );
}
