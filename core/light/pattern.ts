export type PatternName = 'flat' | 'butterfly' | 'loop' | 'rembrandt' | 'split' | 'rim';

/** Under this azimuth the nose throws no side shadow: loop light begins at 20° [°]. */
const FLAT_BELOW_DEG = 20;
/** From this elevation on, frontal light throws the shadow under the nose: butterfly 25–70° [°]. */
const BUTTERFLY_FROM_ELEVATION_DEG = 25;
/** Half-way between the usual loop (about 30°) and Rembrandt (about 45°) [°]. */
const REMBRANDT_FROM_DEG = 37.5;
/** Half-way between Rembrandt (about 45°) and split (90°) [°]. */
const SPLIT_FROM_DEG = 67.5;
/** A little past the side, where the light no longer reaches across to the nose's near side [°]. */
const RIM_BEYOND_DEG = 100;

/**
 * The trade's name for the light on a face that looks at the camera. Names belong to the face, not the
 * camera: when the head turns, the pattern turns with it. Boundaries are drawn between the published
 * typical values (loop 20–50°, Rembrandt 45°, split 90°, butterfly 0° and 25–70° up).
 *
 * @param absAzimuthDeg angle to the camera axis without side [°], 0–180; a sign is ignored
 * @param elevationDeg above the eyes [°]; matters only for frontal light (flat or butterfly)
 * @source portrait-patterns
 */
export function patternName(absAzimuthDeg: number, elevationDeg: number): PatternName {
  const azimuthDeg = Math.abs(absAzimuthDeg);
  if (azimuthDeg < FLAT_BELOW_DEG) {
    return elevationDeg >= BUTTERFLY_FROM_ELEVATION_DEG ? 'butterfly' : 'flat';
  }
  if (azimuthDeg < REMBRANDT_FROM_DEG) return 'loop';
  if (azimuthDeg < SPLIT_FROM_DEG) return 'rembrandt';
  return azimuthDeg <= RIM_BEYOND_DEG ? 'split' : 'rim';
}
