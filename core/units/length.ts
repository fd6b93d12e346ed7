import { keepFinite } from './finite.ts';

export type LengthUnits = 'metric' | 'imperial';

/** The international foot, exactly. @source nist-sp-811 */
const METRES_PER_FOOT = 0.3048;

/** Under this a length is read to 0.1 m: half a metre would be too coarse for arm's reach. */
const FINE_BELOW_M = 2;
/** Under this a length is read to half feet, for the same reason. */
const FINE_BELOW_FEET = 6;

/**
 * @param metres length [m]
 * @returns length [ft], international foot
 * @source nist-sp-811
 */
export function feetFromMetres(metres: number): number {
  return keepFinite(metres / METRES_PER_FOOT);
}

/**
 * @param feet length [ft], international foot
 * @returns length [m]
 * @source nist-sp-811
 */
export function metresFromFeet(feet: number): number {
  return feet * METRES_PER_FOOT;
}

function roundTo(value: number, step: number): number {
  const rounded = Math.round(value / step) * step;
  // Beyond 2^53 steps there is nothing left to round; "+ 0" turns −0 into 0.
  return Number.isFinite(rounded) ? rounded + 0 : value;
}

/**
 * The length that a person hears: as `lengthLabel` writes it, but as a number.
 *
 * @param lengthM length [m]
 * @returns rounded length [m]: metric 0.1 m below 2 m, else 0.5 m; imperial half feet below 6 ft, else whole
 */
export function roundedLengthM(lengthM: number, units: LengthUnits): number {
  if (units === 'metric') {
    const step = Math.abs(lengthM) < FINE_BELOW_M ? 0.1 : 0.5;
    return step === 0.1 ? Math.round(lengthM * 10) / 10 + 0 : roundTo(lengthM, step);
  }
  return metresFromFeet(roundedFeet(feetFromMetres(lengthM)));
}

function roundedFeet(feet: number): number {
  return roundTo(feet, Math.abs(feet) < FINE_BELOW_FEET ? 0.5 : 1);
}

/**
 * A length as a person reads it: "0.4 m", "5 m", "5.5 m", "16 ft", "2.5 ft".
 *
 * @param lengthM length [m]
 * @returns text; "not known" when it is not a number
 */
export function lengthLabel(lengthM: number, units: LengthUnits): string {
  if (!Number.isFinite(lengthM)) return 'not known';
  return units === 'metric'
    ? `${roundedLengthM(lengthM, 'metric')} m`
    : `${roundedFeet(feetFromMetres(lengthM))} ft`;
}
