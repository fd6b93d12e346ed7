import { linearFromSrgb } from './srgb.ts';

/**
 * What was touched in the picture.
 * - grey-card: an 18 % card that faces as the face does
 * - the skins: where the key falls on them
 */
export type PictureTarget = 'grey-card' | 'pale-skin' | 'medium-skin' | 'dark-skin';

/** How far over or under a piece of a picture came out, or why nobody can tell from it. */
export type PictureLevel =
  | {
      readonly ok: true;
      /** Over (+) or under (−) correct */
      readonly stops: number;
      /** Share of the pixels with a channel at its end [1] */
      readonly clippedFraction: number;
    }
  | {
      readonly ok: false;
      readonly reason: 'burnt-out' | 'too-dark' | 'no-pixels';
      readonly clippedFraction: number;
    };

/**
 * How bright each target is when the exposure is right, over an 18 % card [stops].
 * ASSUMPTION, common practice: pale skin is placed a stop over mid-grey, medium skin half a stop over, dark skin
 * half a stop under. Faces differ by more than that; a grey card does not.
 */
const TARGET_STOPS: Readonly<Record<PictureTarget, number>> = {
  'grey-card': 0,
  'pale-skin': 1,
  'medium-skin': 0.5,
  'dark-skin': -0.5,
};

/** What an 18 % card comes out as at the rated speed: 118 of 255. */
const MID_GREY_CODE = 118;
/** From here on a channel is taken for full: JPEG's own rounding leaves burnt places a step below 255. */
const FULL_CODE = 254;
/** More burnt pixels than this, and the mean says too little by an unknown amount. */
const MOST_CLIPPED = 0.05;
/** Below it one step of the file is more than a tenth of the light, and noise and flare are most of it. */
const DARKEST_CODE = 10;

const LINEAR = Float64Array.from({ length: 256 }, (_, code) => linearFromSrgb(code / 255));
const linearOf = (code: number): number => LINEAR[code] ?? 0;

/** Sums over the pixels that are there at all. */
function sumsOf(rgba: Uint8ClampedArray): { pixels: number; clipped: number; luminance: number } {
  const sums = { pixels: 0, clipped: 0, luminance: 0 };
  for (let at = 0; at + 3 < rgba.length; at += 4) {
    // A pixel without opacity is none: the edge of a turned picture, or an empty canvas.
    if (rgba[at + 3] === 0) continue;
    const [red = 0, green = 0, blue = 0] = [rgba[at], rgba[at + 1], rgba[at + 2]];
    sums.pixels += 1;
    if (Math.max(red, green, blue) >= FULL_CODE) sums.clipped += 1;
    sums.luminance += 0.2126 * linearOf(red) + 0.7152 * linearOf(green) + 0.0722 * linearOf(blue);
  }
  return sums;
}

/**
 * How far over or under a piece of a picture is: its mean in linear light (sRGB decoded, luminance weights of
 * Rec. 709) against 118/255, which an 18 % card comes out as at the rated speed, less what the target is over
 * mid-grey.
 * ASSUMPTION: the picture is sRGB and its style leaves the middle of the scale where it is.
 *
 * @param rgba the pixels of the piece as a canvas gives them, four bytes each
 * @param target what the piece shows
 * @returns stops over correct and the share of clipped pixels; or why not: over 5 % of them burnt out, too dark to
 *   tell, no pixels
 * @source srgb
 * @source rec709
 * @source iso12232
 * @source skin-placement
 */
export function stopsFromPixels(rgba: Uint8ClampedArray, target: PictureTarget): PictureLevel {
  const { pixels, clipped, luminance } = sumsOf(rgba);
  if (pixels === 0) return { ok: false, reason: 'no-pixels', clippedFraction: 0 };
  const clippedFraction = clipped / pixels;
  if (clippedFraction > MOST_CLIPPED) return { ok: false, reason: 'burnt-out', clippedFraction };
  const mean = luminance / pixels;
  if (mean < linearOf(DARKEST_CODE)) return { ok: false, reason: 'too-dark', clippedFraction };
  const stops = Math.log2(mean / linearOf(MID_GREY_CODE)) - TARGET_STOPS[target];
  return { ok: true, stops, clippedFraction };
}
