import { outlineOf } from '../../../core/geometry/shape.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { Feature } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';

const path = (points: readonly Spot[]): string =>
  `M${points.map((point) => `${point.x.toFixed(3)} ${point.y.toFixed(3)}`).join('L')}Z`;

/** Everything that does not move, in metres; drawn once and used again by the magnified view. */
export function RoomDrawing({ night, id }: { night: Night; id: string }) {
  return (
    <g id={id} class="room-drawing">
      {night.room && <path class="wall" d={path(night.room.outline)} />}
      {night.features.map((feature) => (
        <path key={feature.id} class={featureClass(feature)} d={path(outlineOf(feature))} />
      ))}
    </g>
  );
}

const featureClass = (feature: Feature): string =>
  `feature is-${feature.kind} background-${feature.background}${feature.blocksWalking ? ' is-solid' : ''}`;
