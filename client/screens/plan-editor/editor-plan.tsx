import { useEffect, useMemo, useRef } from 'preact/hooks';
import { boxOf } from '../../../core/geometry/box.ts';
import { fitView, type PlanView, planTransform } from '../../parts/plan/plan-view.ts';
import { useSize } from '../../parts/plan/use-size.ts';
import type { EditorState } from './editor-state.ts';
import { PlanLabels } from './plan-labels.tsx';
import { PlanThings } from './plan-things.tsx';
import { useEditorTouch } from './use-editor-touch.ts';

/** The plan as it is edited: things are pressed and dragged, walls have corners to take hold of. */
export function EditorPlan({
  state,
  view,
  setView,
}: {
  state: EditorState;
  view: PlanView | null;
  setView: (view: PlanView | null) => void;
}) {
  const { element, size } = useSize<HTMLDivElement>();
  const night = state.night.value;
  const outline = night?.room?.outline;
  const fitted = useMemo(() => (outline && size ? fitView(outline, size, 0, 28) : null), [outline, size]);
  const room = outline ? JSON.stringify(boxOf(outline)) : '';
  const shownFor = useRef('');
  const whole = useRef<PlanView | null>(null);
  // The view that a person chose stays, whatever is moved; a room of another size is shown whole.
  useEffect(() => {
    if (!fitted) return;
    const isOther = shownFor.current !== room;
    const isPersons = view !== null && view !== whole.current;
    if (view === null || ((isOther || !isPersons) && !state.dragged.peek())) {
      whole.current = fitted;
      setView(fitted);
    }
    state.dragged.value = false;
    shownFor.current = room;
  }, [fitted, room, view === null]);
  const shown = view && size ? { ...view, ...size } : fitted;
  const touch = useEditorTouch(state, shown, setView);
  return (
    <section class="editor-plan" ref={element} aria-label="Plan">
      <div class="plan" {...touch}>
        {night && shown && (
          <svg
            viewBox={`0 0 ${shown.widthPx} ${shown.heightPx}`}
            role="img"
            aria-label={`Plan with ${night.features.length} things. The list holds the same.`}
          >
            <g transform={planTransform(shown)}>
              <PlanThings state={state} night={night} />
            </g>
            <PlanLabels state={state} night={night} view={shown} />
          </svg>
        )}
      </div>
    </section>
  );
}
