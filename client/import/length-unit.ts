/** Units that a drawing may be in. */
export type LengthUnit = 'mm' | 'cm' | 'dm' | 'm' | 'in' | 'ft' | 'yd';

/** The inch is exactly 25.4 mm (international yard and pound agreement, 1959); foot and yard follow. */
const INCH_M = 0.0254;

/** What a person can choose from when the file does not say, commonest first. */
export const LENGTH_UNITS: readonly (readonly [LengthUnit, string])[] = [
  ['mm', 'millimetres'],
  ['cm', 'centimetres'],
  ['m', 'metres'],
  ['in', 'inches'],
  ['ft', 'feet'],
  ['dm', 'decimetres'],
  ['yd', 'yards'],
];

const METRES_PER_UNIT: Readonly<Record<LengthUnit, number>> = {
  mm: 0.001,
  cm: 0.01,
  dm: 0.1,
  m: 1,
  in: INCH_M,
  ft: 12 * INCH_M,
  yd: 36 * INCH_M,
};

/** @returns how long one unit is [m] */
export function metresPer(unit: LengthUnit): number {
  return METRES_PER_UNIT[unit];
}

/**
 * The unit behind the number of a drawing's `$INSUNITS` header variable, DXF reference, HEADER section: 0 none, 1 inches,
 * 2 feet, 4 millimetres, 5 centimetres, 6 metres, 10 yards, 14 decimetres, 21 US survey feet (two millionths longer
 * than a foot: less than a hair over a room).
 */
const UNIT_OF_CODE: ReadonlyMap<number, LengthUnit> = new Map([
  [1, 'in'],
  [2, 'ft'],
  [4, 'mm'],
  [5, 'cm'],
  [6, 'm'],
  [10, 'yd'],
  [14, 'dm'],
  [21, 'ft'],
]);

/** @returns the unit of a drawing's `$INSUNITS`; null when it names none, or one that no room is drawn in */
export function unitFromCode(code: number | null): LengthUnit | null {
  return code === null ? null : (UNIT_OF_CODE.get(code) ?? null);
}
