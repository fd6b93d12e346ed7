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
/** ASSUMPTION: past the corner the reflector cuts off: so many stops per θedge more, half a stop per degree at 35 mm. */
const CUT_OFF_STOPS = 16;
/** So many θedge out, the beam is down by 49 stops: nothing is left to add up. */
const LAST_EDGE = 4;
/** Slices of each of the two pieces of the integral over the beam (Simpson; even). */
const SLICES = 128;

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
 * How far the beam has fallen below its axis: (θ/θedge)² up to the corner of the nominal coverage, from
 * there on 16 stops per θedge. ASSUMPTION, both halves of it: reflectors light their frame evenly and cut off
 * past it; no published beam was found. If the first half simply went on, a small head would send out about
 * as much light as its tube can make.
 *
 * @param edgeRatio angle from the axis over θedge, at least 0
 * @returns [stops] below the axis
 * @source assumption-beam
 */
export function beamFallStops(edgeRatio: number): number {
  if (edgeRatio <= 1) return keepFinite(EDGE_FALL_STOPS * edgeRatio * edgeRatio);
  return keepFinite(EDGE_FALL_STOPS + CUT_OFF_STOPS * (edgeRatio - 1));
}

/**
 * Intensity of a bare head toward a direction, full power.
 *
 * ASSUMPTION: the beam is round, falls as `beamFallStops` says and reaches −1 stop at θedge (the corner of the
 * nominal coverage); behind the head (90° and more) there is nothing.
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
  return candelaSeconds(head.guideNumberM) * ratioFromStops(-beamFallStops(angleDeg / edgeDeg));
}

/** Simpson weight of slice i of SLICES. */
function simpsonWeight(index: number): number {
  if (index === 0 || index === SLICES) return 1;
  return index % 2 === 1 ? 4 : 2;
}

/** ∫ 2π·sin θ·(fall of the beam) dθ between two angles from the axis [sr]. */
function weightedSolidAngle(edgeRad: number, fromRad: number, toRad: number): number {
  let sum = 0;
  for (let index = 0; index <= SLICES; index += 1) {
    const angle = fromRad + ((toRad - fromRad) * index) / SLICES;
    sum += simpsonWeight(index) * Math.sin(angle) * ratioFromStops(-beamFallStops(angle / edgeRad));
  }
  return (2 * Math.PI * sum * (toRad - fromRad)) / (3 * SLICES);
}

/**
 * All the light of a head at full power: the integral of `intensityToward` over everything in front of it, so
 * that what the head throws into a room, or into an umbrella, is one number. At 35 mm it is 0.77 sr times the
 * intensity on the axis, six tenths of it inside the frame of the zoom setting.
 *
 * @returns lumen-seconds; 0 for a head without guide number or zoom
 * @source assumption-beam
 */
export function headFlux(head: FlashHead): number {
  const edge = radFromDeg(edgeAngleDeg(head.zoomMm));
  if (!isPositive(edge) || !isPositive(head.guideNumberM)) return 0;
  const last = Math.min(Math.PI / 2, LAST_EDGE * edge);
  const solidAngle = weightedSolidAngle(edge, 0, edge) + weightedSolidAngle(edge, edge, last);
  return keepFinite(candelaSeconds(head.guideNumberM) * solidAngle);
}
