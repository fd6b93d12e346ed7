import { srgbFromLinear } from '../srgb.ts';

/** Linear value of mid-grey: an 18 % card at standard output sensitivity, which sRGB encodes as 118. */
const MID_GREY = 0.18;

/**
 * A small grey picture of the frame: light as it is (no curve), mid-grey at 0 stops, clipped at white.
 *
 * @param levels stops from mid-grey, row by row from the top left
 * @param columns, rows size of the picture; levels that are missing count as black
 * @returns grey values 0–255, sRGB-encoded, 118 for 0 stops; columns × rows of them; empty for a size that is
 *   not a whole number of at least 1 (or above 4096) each way
 * @source srgb
 * @source iso12232
 */
export function framePicture(levels: Float64Array, columns: number, rows: number): Uint8ClampedArray {
  const usable = [columns, rows].every((size) => Number.isInteger(size) && size >= 1 && size <= MOST_PIXELS);
  const picture = new Uint8ClampedArray(usable ? columns * rows : 0);
  for (let i = 0; i < picture.length; i += 1) {
    const level = levels[i];
    const linear = level === undefined ? 0 : MID_GREY * 2 ** level;
    picture[i] = 255 * srgbFromLinear(linear);
  }
  return picture;
}

/** Own rule: no picture is larger than this each way. */
const MOST_PIXELS = 4096;
