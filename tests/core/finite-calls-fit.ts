import fc from 'fast-check';
import { PRIOR_SD_STOPS, priorBelief } from '../../core/light/fit/belief.ts';
import { updateBelief } from '../../core/light/fit/update.ts';
import { exposure, list, number } from './finite-inputs.ts';

const IDS = ['head', 'cloth', 'room'] as const;
const unknowns = fc.array(fc.record({ id: fc.constantFrom(...IDS), sdStops: number }), { maxLength: 4 });
const ids = fc.array(fc.constantFrom(...IDS, 'nobody'), { maxLength: 3 });
const lit = {
  contributions: fc.array(fc.record({ luxSeconds: number, unknownIds: ids }), { maxLength: 3 }),
  exposure,
};
const observation = fc.record({ ...lit, observedStops: number, sdStops: number });
/** What was believed at first, with any spreads, and after a frame with any result. */
const belief = fc.oneof(
  unknowns.map(priorBelief),
  observation.map((seen) =>
    updateBelief(priorBelief(IDS.map((id) => ({ id, sdStops: PRIOR_SD_STOPS.head }))), seen),
  ),
);
const slopes = fc.array(number, { minLength: 3, maxLength: 3 });

/** What the functions of test frames are called with. */
export const FIT_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  priorBelief: fc.tuple(unknowns),
  offsetOf: fc.tuple(belief, fc.constantFrom(...IDS, 'nobody')),
  linearised: fc.tuple(fc.constant(IDS), slopes, fc.record(lit)),
  covarianceWith: fc.tuple(fc.array(number, { minLength: 9, maxLength: 9 }), slopes),
  varianceAlong: fc.tuple(slopes, slopes),
  predict: fc.tuple(belief, fc.record(lit)),
  beliefFrom: fc.tuple(belief, fc.array(observation, { maxLength: 3 })),
  updateBelief: fc.tuple(belief, observation),
  mostTelling: fc.tuple(
    belief,
    fc.array(fc.record({ ...lit, id: fc.constantFrom('a', 'b'), sdStops: number }), { maxLength: 3 }),
    fc.array(fc.record(lit), { maxLength: 3 }),
  ),
  stopsFromMeter: fc.tuple(number, number),
  reflectanceAfter: fc.tuple(number, number),
  linearFromSrgb: fc.tuple(number),
  srgbFromLinear: fc.tuple(number),
  stopsFromPixels: fc.tuple(
    list.map((values) => Uint8ClampedArray.from(values.flatMap((value) => [value, 2 * value, 40, 255]))),
    fc.constantFrom('grey-card', 'pale-skin', 'medium-skin', 'dark-skin'),
  ),
};
