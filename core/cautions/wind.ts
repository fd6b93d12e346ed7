import { isPositive, keepFinite } from '../units/finite.ts';

/** q = 0.613·V²: velocity pressure over speed squared, air at sea level [N·s²/m⁴]. @source asce7-wind */
const PRESSURE_COEFFICIENT = 0.613;
/** Drag coefficient of an open hemisphere with its hollow to the wind: the worst case. @source drag-tables */
const DRAG_HOLLOW_TO_WIND = 1.42;

/** Lower bounds of Beaufort 0–12, mean speed 10 m above open ground [m/s]. @source beaufort */
const BEAUFORT_FROM_MS = [0, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7] as const;

/**
 * Push of the wind on an umbrella: F = 0.613·V²·Cd·πD²/4.
 *
 * @param windMs speed of the gust at the umbrella [m/s]
 * @param diameterM of the open umbrella [m]
 * @param drag drag coefficient [1]
 * @returns force [N], never negative
 * @source asce7-wind
 * @source drag-tables
 */
export function windForceN(windMs: number, diameterM: number, drag: number = DRAG_HOLLOW_TO_WIND): number {
  const areaM2 = (Math.PI * diameterM * diameterM) / 4;
  return Math.max(0, keepFinite(PRESSURE_COEFFICIENT * windMs * windMs * drag * areaM2));
}

/**
 * Wind speed at which an umbrella is pushed with a given force.
 *
 * @param forceN horizontal push [N]
 * @returns speed [m/s]; null when force, diameter or drag is not above zero
 * @source asce7-wind
 */
export function windForForceMs(
  forceN: number,
  diameterM: number,
  drag: number = DRAG_HOLLOW_TO_WIND,
): number | null {
  const perSpeedSquare = windForceN(1, diameterM, drag);
  if (!isPositive(forceN) || !isPositive(perSpeedSquare)) return null;
  return keepFinite(Math.sqrt(forceN / perSpeedSquare));
}

/**
 * Beaufort number of a wind speed.
 *
 * @param windMs [m/s]
 * @returns 0–12
 * @source beaufort
 */
export function beaufortOf(windMs: number): number {
  let force = 0;
  for (const [number, fromMs] of BEAUFORT_FROM_MS.entries()) if (windMs >= fromMs) force = number;
  return force;
}
