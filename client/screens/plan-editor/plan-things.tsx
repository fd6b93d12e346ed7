import { useMemo } from 'preact/hooks';
import { outlineOf } from '../../../core/geometry/shape.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { Feature } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import type { EditorState } from './editor-state.ts';

const path = (points: readonly Spot[]): string =>
  `M${points.map((point) => `${point.x.toFixed(3)} ${point.y.toFixed(3)}`).join('L')}Z`;

/** One thing; drawn around its own place, so that a drag only moves the group that it is in. */
function Thing({ feature, at, chosen }: { feature: Feature; at: Spot; chosen: boolean }) {
  const drawn = useMemo(
    () => path(outlineOf({ at: { x: 0, y: 0 }, turnDeg: feature.turnDeg, shape: feature.shape })),
    [feature],
  );
  const classes = `feature is-${feature.kind} background-${feature.background}`;
  return (
    <path
      class={`${classes}${feature.blocksWalking ? ' is-solid' : ''}${chosen ? ' is-chosen' : ''}`}
      transform={`translate(${at.x} ${at.y})`}
      d={drawn}
    />
  );
}

/** Walls and things in metres; what is being moved is drawn where it would be. */
export function PlanThings({ state, night }: { state: EditorState; night: Night }) {
  const moving = state.moving.value;
  const outline = moving?.outline ?? night.room?.outline;
  return (
    <g class="room-drawing">
      {outline && <path class="wall" d={path(outline)} />}
      {night.features.map((feature) => (
        <Thing
          key={feature.id}
          feature={feature}
          at={moving?.spots.get(feature.id) ?? feature.at}
          chosen={state.selected.value.has(feature.id)}
        />
      ))}
    </g>
  );
}
