import type { Spot } from '../../../core/geometry/spot.ts';
import type { LightReport } from '../../../core/light/report/light-report.ts';
import type { PlanView } from '../../parts/plan/plan-view.ts';
import { FrameView } from './frame-view.tsx';

/** A plan lower than this has no corner to spare, px. */
const LEAST_HEIGHT_PX = 200;

/**
 * What the camera sees, small, in the foot of the plan: on the left, or on the right when the mark in hand is
 * there. It takes no touch, so that the floor under it can be pressed.
 *
 * @param away the mark that it keeps away from, px
 */
export function FrameInset(props: { report: LightReport; away: Spot | null; view: PlanView }) {
  const { report, away, view } = props;
  if (view.heightPx < LEAST_HEIGHT_PX) return null;
  const near = away !== null && away.x < view.widthPx / 2 && away.y > view.heightPx / 2;
  return (
    <div class={`frame-inset ${near ? 'is-right' : 'is-left'}`}>
      <FrameView report={report} />
    </div>
  );
}
