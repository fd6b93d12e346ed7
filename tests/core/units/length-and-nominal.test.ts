import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feetFromMetres, lengthLabel, metresFromFeet, roundedLengthM } from '../../../core/units/length.ts';
import { F_NUMBERS, ISO_SPEEDS, SHUTTER_TIMES, stepNominal } from '../../../core/units/nominal.ts';

describe('lengths', () => {
  it.each([
    [0.4, 'metric', '0.4 m'],
    [0.44, 'metric', '0.4 m'],
    [1.96, 'metric', '2 m'],
    [5, 'metric', '5 m'],
    [5.3, 'metric', '5.5 m'],
    [2.04, 'metric', '2 m'],
    [2.12, 'metric', '2 m'],
    [0.762, 'imperial', '2.5 ft'],
    [1.9, 'imperial', '6 ft'],
    [1.7, 'imperial', '5.5 ft'],
    [5, 'imperial', '16 ft'],
    [1.8288, 'imperial', '6 ft'],
    [Number.NaN, 'metric', 'not known'],
  ] as const)('%d m in %s is %s', (lengthM, units, label) => {
    expect(lengthLabel(lengthM, units)).toBe(label);
  });

  it('the foot is 0.3048 m both ways', () => {
    expect(metresFromFeet(10)).toBeCloseTo(3.048, 12);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), (lengthM) => {
        expect(metresFromFeet(feetFromMetres(lengthM))).toBeCloseTo(lengthM, 8);
      }),
    );
  });

  it('what is spoken is what is computed with, and at most half a step off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.constantFrom('metric', 'imperial'),
        (lengthM, units) => {
          const spoken = roundedLengthM(lengthM, units);
          expect(lengthLabel(spoken, units)).toBe(lengthLabel(lengthM, units));
          expect(Math.abs(spoken - lengthM)).toBeLessThanOrEqual(0.25 + 1e-9);
        },
      ),
    );
  });
});

describe.each([
  ['f-numbers', F_NUMBERS, 1 / 6, 'f/1', 'f/22'],
  ['ISO speeds', ISO_SPEEDS, 1 / 3, '50', '25600'],
  ['times', SHUTTER_TIMES, 1 / 3, '1/4000', '1 s'],
] as const)('%s', (_name, list, doublings, first, last) => {
  it('rise by a third of a stop from end to end', () => {
    expect([list[0]?.label, list.at(-1)?.label]).toEqual([first, last]);
    for (const [index, entry] of list.entries()) {
      const next = list[index + 1];
      if (next) expect(Math.log2(next.exact / entry.exact)).toBeCloseTo(doublings, 12);
    }
  });

  it('steps go to the neighbour and stop at the ends', () => {
    fc.assert(
      fc.property(fc.nat(list.length - 1), fc.integer({ min: -60, max: 60 }), (index, by) => {
        const entry = list[index];
        const target = list[Math.max(0, Math.min(list.length - 1, index + by))];
        expect(stepNominal(list, entry?.exact ?? 0, by)).toBe(target);
      }),
    );
  });

  it('finds its place from the nominal figure too', () => {
    for (const entry of list) {
      const [whole = '', part] = entry.label.replace('f/', '').replace(' s', '').split('/');
      const nominal = part ? Number(whole) / Number(part) : Number(whole);
      expect(stepNominal(list, nominal, 0)).toBe(entry);
    }
  });
});

it('a list without entries is a bug, and says so', () => {
  expect(() => stepNominal([], 1, 0)).toThrow(RangeError);
});
