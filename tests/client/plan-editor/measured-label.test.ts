import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measuredLabel } from '../../../client/words/measured-label.ts';
import { metresFromFeet } from '../../../core/units/length.ts';

test('a length of a plan is written as it was typed, to the centimetre or the tenth of a foot', () => {
  expect(measuredLabel(12.3, 'metric')).toBe('12.3 m');
  expect(measuredLabel(2.4, 'metric')).toBe('2.4 m');
  expect(measuredLabel(7, 'metric')).toBe('7 m');
  expect(measuredLabel(metresFromFeet(41.3), 'imperial')).toBe('41.3 ft');
});

test('two lengths that differ by 10 cm, one press of an arrow key, are never written alike', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 300, noNaN: true }),
      fc.constantFrom('metric', 'imperial'),
      (lengthM, units) => {
        expect(measuredLabel(lengthM, units)).not.toBe(measuredLabel(lengthM + 0.1, units));
      },
    ),
  );
});
