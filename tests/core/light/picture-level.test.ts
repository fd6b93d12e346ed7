import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PictureTarget, stopsFromPixels } from '../../../core/light/picture-level.ts';
import { linearFromSrgb, srgbFromLinear } from '../../../core/light/srgb.ts';

/** So many pixels of one colour. */
const plain = (red: number, green = red, blue = red, count = 100) =>
  Uint8ClampedArray.from({ length: 4 * count }, (_, at) => [red, green, blue, 255][at % 4] ?? 0);

const stopsOf = (rgba: Uint8ClampedArray, target: PictureTarget = 'grey-card'): number => {
  const level = stopsFromPixels(rgba, target);
  if (!level.ok) throw new Error(level.reason);
  return level.stops;
};

/** An even grey that holds so many times the light of an 18 % card. */
const greyOf = (times: number) => plain(Math.round(255 * srgbFromLinear(0.1812 * times)));

describe('the sRGB curve', () => {
  it('has the standard’s values', () => {
    // IEC 61966-2-1, from memory: the two pieces meet at 0.04045 / 0.0031308; 118 → 0.181, 188 → ½ (0.503).
    for (const [code, linear, digits] of [
      [0, 0, 12],
      [118, 0.1812, 4],
      [188, 0.5029, 4],
      [255, 1, 12],
    ] as const)
      expect(linearFromSrgb(code / 255)).toBeCloseTo(linear, digits);
    expect(linearFromSrgb(0.04045)).toBeCloseTo(0.0031308, 7);
    expect(Math.round(255 * srgbFromLinear(0.18))).toBe(118);
    expect(Math.round(255 * srgbFromLinear(0.5))).toBe(188);
  });

  it('is undone by its inverse, and rises', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (linear) => {
        expect(linearFromSrgb(srgbFromLinear(linear))).toBeCloseTo(linear, 6);
        expect(srgbFromLinear(linear + 0.01)).toBeGreaterThanOrEqual(srgbFromLinear(linear));
      }),
    );
  });
});

describe('stops over or under, read from a picture', () => {
  it('a grey card at 118 of 255 is right; twice the light is a stop over', () => {
    // ISO 12232, standard output sensitivity, from memory: 18 % → 118.
    expect(stopsOf(plain(118))).toBeCloseTo(0, 9);
    for (const stops of [-3, -2, -1, 1, 2])
      expect(Math.abs(stopsOf(greyOf(2 ** stops)) - stops)).toBeLessThan(0.05);
  });

  it('skin is placed over or under the card (common practice: +1, +½, −½)', () => {
    for (const [target, over] of [
      ['grey-card', 0],
      ['pale-skin', 1],
      ['medium-skin', 0.5],
      ['dark-skin', -0.5],
    ] as const)
      expect(stopsOf(greyOf(2 ** over), target)).toBeCloseTo(stopsOf(greyOf(2 ** over)) - over, 9);
  });

  it('weighs the colours as Rec. 709 does', () => {
    // ITU-R BT.709: 0.2126, 0.7152, 0.0722.
    const bright = 200;
    const level = (rgba: Uint8ClampedArray) => 2 ** stopsOf(rgba);
    const whole = level(plain(bright));
    expect(level(plain(bright, 0, 0)) / whole).toBeCloseTo(0.2126, 4);
    expect(level(plain(0, bright, 0)) / whole).toBeCloseTo(0.7152, 4);
    expect(level(plain(0, 0, bright)) / whole).toBeCloseTo(0.0722, 4);
  });

  it('takes the mean of light, not of codes', () => {
    const half = new Uint8ClampedArray([...plain(200, 200, 200, 50), ...plain(40, 40, 40, 50)]);
    const mean = (linearFromSrgb(200 / 255) + linearFromSrgb(40 / 255)) / 2;
    expect(stopsOf(half)).toBeCloseTo(Math.log2(mean / linearFromSrgb(118 / 255)), 9);
  });

  it('does not guess: burnt out in any one channel, too dark, or nothing there', () => {
    expect(stopsFromPixels(plain(255), 'grey-card')).toEqual({
      ok: false,
      reason: 'burnt-out',
      clippedFraction: 1,
    });
    expect(stopsFromPixels(plain(255, 120, 90), 'pale-skin')).toMatchObject({ reason: 'burnt-out' });
    expect(stopsFromPixels(plain(3), 'dark-skin')).toMatchObject({ reason: 'too-dark' });
    expect(stopsFromPixels(new Uint8ClampedArray(), 'grey-card')).toMatchObject({ reason: 'no-pixels' });
    expect(stopsFromPixels(new Uint8ClampedArray(400), 'grey-card')).toMatchObject({ reason: 'no-pixels' });
  });

  it('a few burnt pixels are said and borne: up to one in twenty', () => {
    const some = (burnt: number) =>
      new Uint8ClampedArray([...plain(255, 255, 255, burnt), ...plain(118, 118, 118, 100 - burnt)]);
    expect(stopsFromPixels(some(5), 'grey-card')).toMatchObject({ ok: true, clippedFraction: 0.05 });
    expect(stopsFromPixels(some(6), 'grey-card')).toMatchObject({ ok: false, reason: 'burnt-out' });
  });
});
