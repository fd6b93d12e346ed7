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
  'nominal-f': { within: 0.08, why: 'the source rounds to a figure of the nominal f-number scale' },
  'sheet-rounding': { within: 3.2, why: 'the source rounds a guide number of 113 to 110' },
  'two-flashes': { within: 1, why: 'the source says "about 57" for 57.98' },
  'half-percent': { within: 0.005, why: 'the source prints whole per cents' },
  'polygon-circle': {
    within: 0.01,
    why: 'a round table is drawn with 24 corners: up to 0.9 % of its radius inside',
  },
  'two-thirds-stop': { within: 2 / 3 + 1e-9, why: 'common practice says "1/64", give or take two clicks' },
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
