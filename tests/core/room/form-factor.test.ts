import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointFactor, polygonViewFactor, sphereFactor } from '../../../core/light/room/form-factor.ts';

type Range = readonly [number, number];

/** A level rectangle at a height, looking up, or down. */
function level([x0, x1]: Range, [y0, y1]: Range, z: number, up: boolean): number[] {
  const corners = [
    [x0, y0, z],
    [x1, y0, z],
    [x1, y1, z],
    [x0, y1, z],
  ];
  return (up ? corners : corners.reverse()).flat();
}

/** An upright rectangle in the plane y = at, looking toward smaller y. */
function upright([x0, x1]: Range, y: number, [z0, z1]: Range): number[] {
  return [x0, y, z0, x1, y, z0, x1, y, z1, x0, y, z1];
}

/**
 * Printed values of radiation view factors (problem sheets of a university heat-transfer library after Siegel and
 * Howell, Thermal Radiation Heat Transfer, 4th ed., p. 843, and Howell C-11 to C-14; where the figure was not to
 * be seen, the placing is inferred from the printed number). Printed to four digits: within 6e-5, or 1 % of the
 * small ones.
 */
describe('view factors of rectangles', () => {
  it('parallel and equal, 1 × 1.5, 0.5 apart: 0.4756', () => {
    const a = level([0, 1], [0, 1.5], 0, true);
    const b = level([0, 1], [0, 1.5], 0.5, false);
    expect(Math.abs(polygonViewFactor(a, b, 16) - 0.4756)).toBeLessThan(6e-5);
  });

  it('parallel and equal, 0.1 × 0.1, 0.05 apart: 0.4153', () => {
    const a = level([0, 0.1], [0, 0.1], 0, true);
    const b = level([0, 0.1], [0, 0.1], 0.05, false);
    expect(Math.abs(polygonViewFactor(a, b, 16) - 0.4153)).toBeLessThan(6e-5);
  });

  it.each([
    // floor y 0…0.5, x 0…0.5 and the wall on its edge from z 0.2 to 0.5
    [0.07235, 6e-5, level([0, 0.5], [0, 0.5], 0, true), upright([0, 0.5], 0.5, [0.2, 0.5])],
    // one common point: floor 0.1 deep and 0.2 along the edge, wall beside it
    [0.0605, 6e-5, level([0, 0.2], [0, 0.1], 0, true), upright([0.2, 0.5], 0.1, [0, 0.5])],
    // no common point: floor 0.1 to 0.3 off the plane of the wall, wall 0.05 past its end
    [0.01626, 2e-5, level([0, 0.5], [0, 0.2], 0, true), upright([0.55, 1.05], 0.3, [0.5, 1])],
  ])('perpendicular: %f', (printed, within, floor, wall) => {
    expect(Math.abs(polygonViewFactor(floor, wall, 32) - printed)).toBeLessThan(within);
  });

  it('faces of a cube: opposite 0.19982, adjacent 0.20004, and all together 1', () => {
    const floor = level([0, 1], [0, 1], 0, true);
    const opposite = polygonViewFactor(floor, level([0, 1], [0, 1], 1, false), 32);
    const adjacent = polygonViewFactor(floor, upright([0, 1], 1, [0, 1]), 64);
    expect(Math.abs(opposite - 0.19982)).toBeLessThan(1e-5);
    expect(Math.abs(adjacent - 0.20004)).toBeLessThan(1e-4);
    expect(Math.abs(opposite + 4 * adjacent - 1)).toBeLessThan(4e-4);
  });

  it('is reciprocal: A·F is the same both ways', () => {
    const size = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, (widthM, depthM, tallM, awayM) => {
        const floor = level([0, widthM], [0, depthM], 0, true);
        const wall = upright([0.3, 0.3 + widthM], depthM + awayM, [0.2, 0.2 + tallM]);
        const there = widthM * depthM * polygonViewFactor(floor, wall, 12);
        const back = widthM * tallM * polygonViewFactor(wall, floor, 12);
        expect(there).toBeGreaterThan(0);
        expect(Math.abs(there / back - 1)).toBeLessThan(2e-3);
      }),
      { numRuns: 50, endOnFailure: true },
    );
  });

  it('a polygon without area has none, and one behind the other neither', () => {
    const floor = level([0, 1], [0, 1], 0, true);
    expect(polygonViewFactor([0, 0, 0, 1, 1, 1], floor, 4)).toBe(0);
    expect(polygonViewFactor(floor, level([0, 1], [0, 1], 1, true), 4)).toBe(0);
    expect(polygonViewFactor(floor, level([0, 1], [0, 1], -1, true), 4)).toBe(0);
  });
});

/**
 * CIE 171:2006, test 5.6 scenario 2, table 17 (numbers as a public validation code has them; the report itself
 * was not seen): 100 × configuration factor from a 4 × 4 m diffuse floor; points at x 2 on the wall y 0 and on the
 * ceiling z 3. Tolerance 0.02.
 */
describe('element to rectangle', () => {
  const floor = level([0, 4], [0, 4], 0, true);

  it.each([
    [0.75, 35.901],
    [1.25, 27.992],
    [1.75, 21.639],
    [2.25, 16.716],
    [2.75, 12.967],
  ])('wall at z %f m: %f', (z, printed) => {
    expect(Math.abs(100 * pointFactor(2, 0, z, 0, 1, 0, floor) - printed)).toBeLessThan(0.02);
  });

  it.each([
    [0.25, 26.8],
    [0.75, 30.94],
    [1.25, 33.98],
    [1.75, 35.57],
  ])('ceiling at y %f m: %f', (y, printed) => {
    expect(Math.abs(100 * pointFactor(2, y, 3, 0, 0, -1, floor) - printed)).toBeLessThan(0.02);
  });

  it('under the corner of a huge rectangle: a quarter (textbook limit, within 1e-6)', () => {
    const huge = level([0, 1e5], [0, 1e5], 0.5, false);
    expect(Math.abs(pointFactor(0, 0, 0, 0, 0, 1, huge) - 0.25)).toBeLessThan(1e-5);
  });

  it('cuts at the horizon: a wall that goes on below the element counts only above it', () => {
    const whole = upright([-1, 1], 1, [-1, 1]);
    const above = upright([-1, 1], 1, [0, 1]);
    expect(pointFactor(0, 0, 0, 0, 0, 1, whole)).toBeCloseTo(pointFactor(0, 0, 0, 0, 0, 1, above), 12);
    expect(pointFactor(0, 0, 0, 0, 0, 1, above)).toBeGreaterThan(0.1);
  });
});

describe('small sphere to rectangle', () => {
  it('under a corner, 1 × 2 at 0.5: 0.0836 (heat-transfer library; Howell B-106)', () => {
    expect(Math.abs(sphereFactor(0, 0, 0, level([0, 1], [0, 2], 0.5, false)) - 0.0836)).toBeLessThan(6e-5);
  });

  it('inside a cube every face fills a sixth, from the middle', () => {
    expect(sphereFactor(0.5, 0.5, 0.5, level([0, 1], [0, 1], 0, true))).toBeCloseTo(1 / 6, 12);
  });
});
