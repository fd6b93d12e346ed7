import fc from 'fast-check';
import { head, number, spot, umbrella } from './finite-inputs.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);
const place = fc.record({ x: number, y: number, z: number });
const lobe = fc.record({ intensity: number, exponent: number, flux: number });
const card = fc.record({ widthM: number, lossStops: number, upFraction: number });
const lamp = fc.record({
  x: number,
  y: number,
  z: number,
  radiusM: number,
  flux: number,
  on: fc.constant(() => 1),
  toward: fc.constant(() => 1),
});

/** What the public functions of the light sources are called with. */
export const LAMP_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  beamFallStops: args(number),
  backFractionOf: args(umbrella),
  forwardLobe: args(fc.record({ head, umbrella })),
  backLobe: args(fc.record({ head, umbrella })),
  lambertLobe: args(number),
  lobeOf: args(number, number),
  bareLamp: args(head, place, number, number),
  discLamp: args(
    fc.record({
      at: place,
      axis: place,
      radiusM: number,
      front: lobe,
      back: fc.option(lobe, { nil: undefined }),
    }),
  ),
  umbrellaLamp: args(head, umbrella, place, number, number),
  cardLamp: args(head, card, place, number, number),
  sumLamp: args(lamp, lamp),
  openGuideNumberM: args(number, fc.constantFrom('printed', 'open')),
  ambientLuxAt: args(
    fc.array(fc.record({ spot, ev100: number }), { maxLength: 4 }),
    spot,
    fc.option(number),
    number,
  ),
};
