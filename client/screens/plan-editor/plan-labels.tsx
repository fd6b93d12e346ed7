import { useMemo } from 'preact/hooks';
import { edgesOf } from '../../../core/geometry/polygon.ts';
import { midpoint } from '../../../core/geometry/spot.ts';
import { fieldOfView } from '../../../core/light/field-of-view.ts';
import { wallLengthsM } from '../../../core/plan/wall-edit.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { FeatureNames } from '../../parts/plan/feature-names.tsx';
import { type PlanView, toScreen } from '../../parts/plan/plan-view.ts';
import { ViewSign } from '../../parts/plan/view-sign.tsx';
import { measuredLabel } from '../../words/measured-label.ts';
import type { EditorState } from './editor-state.ts';

/** Lengths on the walls and grips on the corners, while walls are changed. */
function WallGrips({ state, night, view }: { state: EditorState; night: Night; view: PlanView }) {
  const outline = state.moving.value?.outline ?? night.room?.outline ?? [];
  const lengths = wallLengthsM(outline);
  return (
    <>
      <g class="wall-lengths">
        {edgesOf(outline).map(([a, b], wall) => {
          const at = toScreen(view, midpoint(a, b));
          return (
            <text key={`${a.x}:${a.y}`} x={at.x} y={at.y} dy="0.36em">
              {measuredLabel(lengths[wall] ?? 0, night.units)}
            </text>
          );
        })}
      </g>
      {outline.map((corner, index) => {
        const at = toScreen(view, corner);
        const chosen = state.corner.value === index;
        return (
          <circle
            key={`${corner.x}:${corner.y}`}
            class={`corner-grip${chosen ? ' is-chosen' : ''}`}
            cx={at.x}
            cy={at.y}
            r="12"
          />
        );
      })}
    </>
  );
}

/** Everything that is read at one size however large the room is drawn: names, lengths, the camera and the couple. */
export function PlanLabels({ state, night, view }: { state: EditorState; night: Night; view: PlanView }) {
  const spots = state.moving.value?.spots;
  const seen = night.moment?.view;
  const now = seen && {
    ...seen,
    camera: { ...seen.camera, spot: spots?.get('camera') ?? seen.camera.spot },
    subject: { ...seen.subject, spot: spots?.get('subject') ?? seen.subject.spot },
  };
  // Names keep off what is drawn at one size.
  const inWalls = state.tool.value.kind === 'walls';
  const signs = useMemo(() => {
    const people = seen ? [seen.camera.spot, seen.subject.spot] : [];
    const lengths = inWalls ? edgesOf(night.room?.outline ?? []).map(([a, b]) => midpoint(a, b)) : [];
    return [...people, ...lengths].map((spot) => toScreen(view, spot));
  }, [seen, inWalls, night.room, view]);
  return (
    <>
      {now && <ViewSign seen={now} horizontalDeg={fieldOfView(now.frame).horizontalDeg} view={view} />}
      {/* A name that stays behind while its thing moves would be a riddle. */}
      {(!spots || spots.size === 0) && <FeatureNames night={night} view={view} signs={signs} />}
      {inWalls && <WallGrips state={state} night={night} view={view} />}
    </>
  );
}
