import { outlineOf } from '../../core/geometry/shape.ts';
import type { Landmark } from '../../core/guidance/landmark.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** Above this a thing is seen over the heads of people who sit, and mostly over those who stand. */
const TALL_M = 1.8;

/** What in the room can be named when the way is told: everything but the floor that people dance on. */
export function landmarksOf(night: Night): Landmark[] {
  return night.features
    .filter((feature) => feature.kind !== 'dance-floor')
    .map((feature) => ({
      id: feature.id,
      name: feature.name,
      outline: outlineOf(feature),
      heightM: feature.heightM,
      tall: feature.heightM >= TALL_M,
    }));
}
