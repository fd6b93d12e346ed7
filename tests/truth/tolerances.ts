/** How near a computed value must come to a published one, and why that near. */
export const TOLERANCES = {
  exact: {
    within: 1e-9,
    why: 'an identity or a small whole number: only rounding of binary numbers is left',
  },
  'six-digits': { within: 1e-6, why: 'the source prints six digits after the point or more' },
  'five-digits': { within: 1e-5, why: 'the source prints five digits' },
  'four-digits': { within: 6e-5, why: 'the source prints four digits after the point' },
  'three-digits': { within: 6e-4, why: 'the source prints three digits after the point' },
  'two-digits': { within: 0.006, why: 'the source prints two digits after the point' },
  'one-digit': { within: 0.051, why: 'the source prints one digit after the point' },
  'safety-sheet': { within: 0.005, why: 'the sheet of worked safety numbers states 0.005 for all of them' },
  'ballast-tenths': { within: 0.05, why: 'the worked ballast table is printed to 0.1 kg' },
  'half-unit': { within: 0.5, why: 'the source prints whole millimetres' },
  'tenth-unit': { within: 0.1, why: 'the sheet of worked numbers prints tenths of a millimetre' },
  'nominal-f': { within: 0.08, why: 'the source rounds to a figure of the nominal f-number scale' },
  'sheet-rounding': { within: 3.2, why: 'the source rounds a guide number of 113 to 110' },
  'two-flashes': { within: 1, why: 'the source says "about 57" for 57.98' },
  'half-thousandth': { within: 0.0005, why: 'the source prints three digits and calls them rounded' },
  'half-percent': { within: 0.005, why: 'the source prints whole per cents' },
  'polygon-circle': {
    within: 0.01,
    why: 'a round table is drawn with 24 corners: up to 0.9 % of its radius inside',
  },
  'third-stop': { within: 1 / 3 + 1e-9, why: 'one click of the dials: the source is a rule of thumb itself' },
  'two-thirds-stop': { within: 2 / 3 + 1e-9, why: 'common practice says "1/64", give or take two clicks' },
  'one-percent': {
    within: 0.01,
    why: 'share of the published value: the project asks for 1 % of direct light and of view factors',
  },
  'area-source-print': {
    within: 0.003,
    why: 'share: the printed row is off the exact uniform source by up to 0.26 %, cause unknown',
  },
  'factor-hundredths': { within: 0.02, why: 'factor × 100, of which two places after the point are printed' },
  'cavity-mean': {
    within: 0.02,
    why: 'share: the formula is exact for the mean, the printed row has three digits, patches are allowed the rest',
  },
  'patch-average': {
    within: 0.02,
    why: 'share: patches of a metre against exact form factors; the two derivations agree within 0.4 %',
  },
  'cie-lux': {
    within: 0.06,
    why: 'the printed row (0.01 lx) is off its own formula by up to 0.02 lx; 0.06 is what the sheet allows',
  },
  'room-mean': { within: 0.05, why: 'share: what the project asks for in the mean of ten random rooms' },
  'room-most': {
    within: 0.12,
    why: 'share: what the project asks for at any surface or point of ten random rooms',
  },
  'about-corner': {
    within: 0.07,
    why: 'share: derived as "about 75" for the last 0.15 m, over which the light changes by a tenth',
  },
  'cavity-points': {
    within: 2.5,
    why: 'per cent points: the table is printed whole, and an exact three-zone exchange is off it by 2.14 at most',
  },
} as const satisfies Record<string, { within: number; why: string }>;

export type ToleranceName = keyof typeof TOLERANCES;

/** True when a name is a key of the table. */
export function isToleranceName(name: string): name is ToleranceName {
  return Object.hasOwn(TOLERANCES, name);
}

/** The tolerance itself; a fixture that names an unknown one is a bug. */
export function toleranceOf(name: string): number {
  if (!isToleranceName(name)) throw new Error(`no tolerance is called ${name}`);
  return TOLERANCES[name].within;
}
