import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf } from '../../../core/geometry/box.ts';
import { areaOf, edgesOf, isSimple } from '../../../core/geometry/polygon.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { OutlineOutcome } from '../../../core/plan/room-outline.ts';
import {
  lOutline,
  manySidedOutline,
  rectangleOutline,
  roundOutline,
} from '../../../core/plan/room-shapes.ts';
import { wallLengthsM } from '../../../core/plan/wall-edit.ts';

const size = fc.double({ min: 2, max: 60, noNaN: true });
const part = fc.double({ min: 0.1, max: 0.9, noNaN: true });
const corner = fc.constantFrom('top-left', 'top-right', 'bottom-right', 'bottom-left');

function outlineOf(outcome: OutlineOutcome): readonly Spot[] {
  if ('reason' in outcome) throw new Error(outcome.reason);
  return outcome.outline;
}

/** What every room shape promises. */
function expectHouseOrder(outline: readonly Spot[]): void {
  expect(isSimple(outline)).toBe(true);
  const { leastX, leastY } = boxOf(outline);
  expect(leastX).toBe(0);
  expect(leastY).toBe(0);
  const twice = edgesOf(outline).reduce((sum, [a, b]) => sum + a.x * b.y - b.x * a.y, 0);
  expect(twice, 'clockwise with y down').toBeGreaterThan(0);
  const first = (outline[0]?.x ?? 0) + (outline[0]?.y ?? 0);
  for (const { x, y } of outline) expect(x + y).toBeGreaterThanOrEqual(first - 1e-9);
}

describe('room shapes', () => {
  it('a rectangle is as wide and deep as typed', () => {
    fc.assert(
      fc.property(size, size, (widthM, depthM) => {
        const outline = outlineOf(rectangleOutline(widthM, depthM));
        expectHouseOrder(outline);
        expect(outline[0]).toEqual({ x: 0, y: 0 });
        expect(wallLengthsM(outline)).toEqual([widthM, depthM, widthM, depthM]);
      }),
    );
  });

  it('an L lacks its cut, wherever that is, and has the walls of its rectangle in all', () => {
    fc.assert(
      fc.property(size, size, part, part, corner, (widthM, depthM, across, down, where) => {
        const [cutWidthM, cutDepthM] = [widthM * across, depthM * down];
        const outline = outlineOf(lOutline({ widthM, depthM, cutWidthM, cutDepthM, corner: where }));
        expectHouseOrder(outline);
        expect(outline).toHaveLength(6);
        expect(areaOf(outline)).toBeCloseTo(widthM * depthM - cutWidthM * cutDepthM, 6);
        const { mostX, mostY } = boxOf(outline);
        expect([mostX, mostY]).toEqual([widthM, depthM]);
        const around = wallLengthsM(outline).reduce((sum, lengthM) => sum + lengthM, 0);
        expect(around).toBeCloseTo(2 * (widthM + depthM), 6);
        const missing = { x: where.endsWith('left') ? 0 : widthM, y: where.startsWith('top') ? 0 : depthM };
        expect(outline).not.toContainEqual(missing);
      }),
    );
  });

  it('round and many-sided rooms have equal walls and the area of a regular polygon', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 3, max: 60 }), fc.boolean(), (diameterM, sides, round) => {
        const outline = outlineOf(
          round ? roundOutline(diameterM, sides) : manySidedOutline(sides, diameterM),
        );
        expectHouseOrder(outline);
        expect(outline).toHaveLength(sides);
        // Textbook: n/2·r²·sin(2π/n).
        const area = (sides / 2) * (diameterM / 2) ** 2 * Math.sin((2 * Math.PI) / sides);
        expect(areaOf(outline)).toBeCloseTo(area, 6);
        for (const lengthM of wallLengthsM(outline)) {
          expect(lengthM).toBeCloseTo(diameterM * Math.sin(Math.PI / sides), 9);
        }
      }),
    );
  });

  it('a round room is as wide and deep as its diameter; a many-sided one has a level top wall', () => {
    const round = boxOf(outlineOf(roundOutline(12)));
    expect(round.mostX).toBeCloseTo(12, 9);
    expect(round.mostY).toBeCloseTo(12, 9);
    const eight = outlineOf(manySidedOutline(8, 10));
    expect(eight.filter(({ y }) => Math.abs(y) < 1e-9)).toHaveLength(2);
  });

  it('a value that makes no room is named in the reason', () => {
    const reasons: [OutlineOutcome, RegExp][] = [
      [rectangleOutline(0, 5), /width is 0 m/],
      [rectangleOutline(5, -2), /depth is -2 m/],
      [rectangleOutline(Number.NaN, 5), /width is not a number/],
      [rectangleOutline(0.5, 0.5), /0\.25 m²/],
      [rectangleOutline(1000, 5), /1000 m long/],
      [lOutline({ widthM: 8, depthM: 6, cutWidthM: 8, cutDepthM: 2, corner: 'top-left' }), /width of 8 m/],
      [lOutline({ widthM: 8, depthM: 6, cutWidthM: 2, cutDepthM: 7, corner: 'top-left' }), /depth of 7 m/],
      [
        lOutline({ widthM: 8, depthM: 6, cutWidthM: 0, cutDepthM: 2, corner: 'top-left' }),
        /width of the cut is 0/,
      ],
      [roundOutline(-1), /diameter is -1 m/],
      [manySidedOutline(2, 9), /2 sides/],
      [manySidedOutline(5.5, 9), /5\.5 sides/],
      [roundOutline(2, 200), /no length/],
    ];
    for (const [outcome, words] of reasons) expect(outcome).toEqual({ reason: expect.stringMatching(words) });
  });
});
