import { finiteOrNull, isPositive } from '../../units/finite.ts';

/**
 * How well a result is known, by where it comes from (one standard deviation) [stops].
 * ASSUMPTION: the back of the camera is read to a quarter of a stop, a flash meter to a tenth, and a picture to
 * about a third, because a tone curve and the colour of a skin lie between light and pixel.
 * @source own-estimate
 */
export const OBSERVED_SD_STOPS = { seen: 0.25, meter: 0.1, picture: 0.35 } as const;

/**
 * What a flash meter says of a setting: a reading of f/4 with the lens at f/2.8 is one stop over, 2·log2(4/2.8).
 *
 * @param fNumberRead what the meter shows for the camera's speed
 * @param fNumberSet what the lens is set to
 * @returns stops over correct; null when one of them is not above zero
 * @source iso2720
 */
export function stopsFromMeter(fNumberRead: number, fNumberSet: number): number | null {
  if (!isPositive(fNumberRead) || !isPositive(fNumberSet)) return null;
  return finiteOrNull(2 * (Math.log2(fNumberRead) - Math.log2(fNumberSet)));
}
