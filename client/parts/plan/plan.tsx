import type { ComponentChildren, JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { FeatureNames } from './feature-names.tsx';
import './plan.css';
import { type PlanView, planTransform } from './plan-view.ts';
import { RoomDrawing } from './room-drawing.tsx';

/**
 * The one drawing of the room under every face. What moves is given as children and drawn over it, in px of the
 * view. The list beside a plan is the real control: to a screen reader this is a picture.
 *
 * @param said what the picture shows, for who cannot see it
 * @param signs where stands and the like are drawn, px: names keep off them
 * @param drawing an id for the fixed part, so that a magnified view can use it again
 */
export function Plan(props: {
  night: Night;
  view: PlanView;
  said: string;
  drawing: string;
  signs: readonly Spot[];
  children?: ComponentChildren;
  over?: ComponentChildren;
  on?: JSX.HTMLAttributes<HTMLDivElement>;
}) {
  const { night, view, said, drawing, signs, children, over, on } = props;
  // The room is drawn anew only when it changes, not for every move of a finger over it.
  const room = useMemo(
    () => <RoomDrawing night={night} id={drawing} />,
    [night.room, night.features, drawing],
  );
  return (
    <div class="plan" {...on}>
      <svg viewBox={`0 0 ${view.widthPx} ${view.heightPx}`} role="img" aria-label={said}>
        <g transform={planTransform(view)}>{room}</g>
        <FeatureNames night={night} view={view} signs={signs} />
        {children}
      </svg>
      {over}
    </div>
  );
}
