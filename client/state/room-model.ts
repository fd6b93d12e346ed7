import { outlineOf } from '../../core/geometry/shape.ts';
import type { FrameFeature } from '../../core/light/frame/scene.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** ASSUMPTION: what stands in a room sends back about as much as grey walls and light wood. */
const FEATURE_REFLECTANCE = 0.4;

/** The room for the light model: what the plan holds of it, with everything tall that light does not pass. */
export function roomModelOf(night: Night): RoomModel | null {
  if (!night.room) return null;
  const { ceiling, walls, floor } = night.finishes;
  return {
    outline: night.room.outline,
    ceilingM: night.room.ceilingM,
    roof: night.roof,
    finishes: { ceiling, walls, floor },
    blockers: night.features
      .filter((feature) => feature.blocksLight && feature.heightM > 0)
      .map((feature) => ({
        id: feature.id,
        name: feature.name,
        outline: outlineOf(feature),
        heightM: feature.heightM,
        reflectance: FEATURE_REFLECTANCE,
      })),
  };
}

/** Everything in the room that a camera may see, for the frame check. */
export function sceneFeaturesOf(night: Night): FrameFeature[] {
  return night.features.map((feature) => ({
    id: feature.id,
    name: feature.name,
    outline: outlineOf(feature),
    heightM: feature.heightM,
    background: feature.background,
    blocksLight: feature.blocksLight,
    reflectance: FEATURE_REFLECTANCE,
  }));
}
