import { degFromRad, radFromDeg } from '../geometry/angle.ts';
import { isPositive, keepFinite } from '../units/finite.ts';
import { ratioFromStops } from '../units/stops.ts';
import { candelaSeconds } from './guide-number.ts';

/**
 * A flash head.
 * - guideNumberM: GN on the axis [m], ISO 100, full power, at the zoom below
 * - zoomMm: focal length on 36 × 24 mm whose frame the beam is said to fill [mm]
 * - leastPowerStops: log2 of the smallest power fraction [stops], −7 for 1/128
 */
export type FlashHead = {
  readonly guideNumberM: number;
  readonly zoomMm: number;
  readonly leastPowerStops: number;
};

/** Half of the 36 × 24 mm frame that zoom settings are named for. */
const HALF_WIDTH_MM = 18;
const HALF_HEIGHT_MM = 12;
/** ASSUMPTION: one stop less at the corner of the nominal coverage than on the axis. */
const EDGE_FALL_STOPS = 1;
/** Slices each way for the integral over a quarter of the rectangle (Simpson; even). */
const SLICES = 32;

/**
 * Half the diagonal angle of the frame that the zoom setting covers: where the beam is one stop down.
 *
 * @param zoomMm [mm]
 * @returns angle from the axis [°]; 0 when the zoom is not above zero
 * @source angle-of-view
 */
export function edgeAngleDeg(zoomMm: number): number {
  if (!isPositive(zoomMm)) return 0;
  return degFromRad(Math.atan2(Math.hypot(HALF_WIDTH_MM, HALF_HEIGHT_MM), zoomMm));
}

/**
 * Intensity of a bare head toward a direction, full power.
 *
 * ASSUMPTION: the beam is round and falls as 2^−(θ/θedge)², reaching −1 stop at θedge (the corner of the
 * nominal coverage). Past the corner the same curve goes on (real reflectors cut off more sharply);
 * behind the head (90° and more) there is nothing.
 *
 * @param offAxisDeg angle from the axis [°], sign and full turns ignored
 * @returns cd·s; 0 for a head without guide number or zoom
 * @source assumption-beam
 */
export function intensityToward(head: FlashHead, offAxisDeg: number): number {
  const edgeDeg = edgeAngleDeg(head.zoomMm);
  const away = Math.abs(offAxisDeg) % 360;
  const angleDeg = away > 180 ? 360 - away : away;
  if (edgeDeg <= 0 || !isPositive(head.guideNumberM) || angleDeg >= 90) return 0;
  const fall = EDGE_FALL_STOPS * (angleDeg / edgeDeg) ** 2;
  return candelaSeconds(head.guideNumberM) * ratioFromStops(-fall);
}

/** Simpson weight of slice i of SLICES. */
function simpsonWeight(index: number): number {
  if (index === 0 || index === SLICES) return 1;
  return index % 2 === 1 ? 4 : 2;
}

/** Solid angle, weighted with the fall-off, of the frame of a zoom setting [sr]. */
function weightedSolidAngle(zoomMm: number): number {
  const edge = radFromDeg(edgeAngleDeg(zoomMm));
  const width = HALF_WIDTH_MM / zoomMm;
  const height = HALF_HEIGHT_MM / zoomMm;
  let sum = 0;
  for (let i = 0; i <= SLICES; i += 1) {
    for (let j = 0; j <= SLICES; j += 1) {
      const x = (width * i) / SLICES;
      const y = (height * j) / SLICES;
      const angle = Math.atan(Math.hypot(x, y));
      // dΩ = cos³θ dx dy on a plane at distance 1; both axes are halved, hence the 4 below.
      const value = ratioFromStops(-EDGE_FALL_STOPS * (angle / edge) ** 2) * Math.cos(angle) ** 3;
      sum += simpsonWeight(i) * simpsonWeight(j) * value;
    }
  }
  return (4 * sum * width * height) / (9 * SLICES * SLICES);
}

/** Widest and longest zoom for which the integral is trusted [mm]; heads lie well inside. */
const ZOOM_RANGE_MM = [4, 2000] as const;

/**
 * All the light of a head at full power: the integral of the intensity over the 36 × 24 rectangle of its
 * zoom setting. ASSUMPTION: light outside that rectangle is neglected.
 *
 * @returns lumen-seconds; 0 for a head without guide number or with a zoom outside 4–2000 mm
 * @source assumption-beam
 */
export function headFlux(head: FlashHead): number {
  const inRange = head.zoomMm >= ZOOM_RANGE_MM[0] && head.zoomMm <= ZOOM_RANGE_MM[1];
  if (!inRange || !isPositive(head.guideNumberM)) return 0;
  return keepFinite(candelaSeconds(head.guideNumberM) * weightedSolidAngle(head.zoomMm));
}
