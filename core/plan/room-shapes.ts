import { boxOf } from '../geometry/box.ts';
import { rotate, type Spot } from '../geometry/spot.ts';
import { isPositive } from '../units/finite.ts';
import { checkedOutline, type OutlineOutcome, valueInWords } from './room-outline.ts';

/** Which corner of its rectangle an L-shaped room lacks. */
export type CutCorner = 'top-left' | 'top-right' | 'bottom-right' | 'bottom-left';

/** An L-shaped room: a rectangle without a smaller one in one of its corners. */
export type LShape = {
  readonly widthM: number;
  readonly depthM: number;
  readonly cutWidthM: number;
  readonly cutDepthM: number;
  readonly corner: CutCorner;
};

/** Corners of a round room: with 24 the walls lie within 0.9 % of the radius. */
const ROUND_SIDES = 24;
const MOST_SIDES = 200;

/** Moves the outline to (0, 0), and begins it at the corner nearest to the top left. */
function fromTopLeft(corners: readonly Spot[]): OutlineOutcome {
  const { leastX, leastY } = boxOf(corners);
  const moved = corners.map(({ x, y }) => ({ x: x - leastX, y: y - leastY }));
  let first = 0;
  moved.forEach((corner, index) => {
    const best = moved[first] ?? corner;
    const [sum, bestSum] = [corner.x + corner.y, best.x + best.y];
    // Corners that tie but for rounding: the higher one is first.
    const ties = Math.abs(sum - bestSum) < 1e-9;
    if (ties ? corner.y < best.y - 1e-9 : sum < bestSum) first = index;
  });
  return checkedOutline([...moved.slice(first), ...moved.slice(0, first)]);
}

function notAbove(what: string, valueM: number): { readonly reason: string } {
  return { reason: `The ${what} is ${valueInWords(valueM, ' m')}; it must be above 0.` };
}

/**
 * A rectangular room.
 *
 * @param widthM across the plan [m]
 * @param depthM down the plan [m]
 * @returns corners clockwise as drawn from the top left, which is (0, 0); else the reason
 */
export function rectangleOutline(widthM: number, depthM: number): OutlineOutcome {
  if (!isPositive(widthM)) return notAbove('width', widthM);
  if (!isPositive(depthM)) return notAbove('depth', depthM);
  return checkedOutline([
    { x: 0, y: 0 },
    { x: widthM, y: 0 },
    { x: widthM, y: depthM },
    { x: 0, y: depthM },
  ]);
}

/** The three corners that stand where the cut rectangle's one was, clockwise. */
function cutCorners({ widthM, depthM, cutWidthM, cutDepthM, corner }: LShape): Spot[] {
  const [right, left] = [widthM - cutWidthM, cutWidthM];
  const [down, up] = [depthM - cutDepthM, cutDepthM];
  switch (corner) {
    case 'top-left':
      return [
        { x: 0, y: up },
        { x: left, y: up },
        { x: left, y: 0 },
      ];
    case 'top-right':
      return [
        { x: right, y: 0 },
        { x: right, y: up },
        { x: widthM, y: up },
      ];
    case 'bottom-right':
      return [
        { x: widthM, y: down },
        { x: right, y: down },
        { x: right, y: depthM },
      ];
    case 'bottom-left':
      return [
        { x: left, y: depthM },
        { x: left, y: down },
        { x: 0, y: down },
      ];
  }
}

const CORNERS: readonly CutCorner[] = ['top-left', 'top-right', 'bottom-right', 'bottom-left'];

/**
 * An L-shaped room: a rectangle minus a rectangle.
 *
 * @returns six corners clockwise as drawn; the box around them begins at (0, 0), the first corner is the
 *   one nearest to its top left; else the reason, also when the cut leaves nothing of a side
 */
export function lOutline(shape: LShape): OutlineOutcome {
  const { widthM, depthM, cutWidthM, cutDepthM, corner } = shape;
  const whole = rectangleOutline(widthM, depthM);
  if ('reason' in whole) return whole;
  if (!isPositive(cutWidthM)) return notAbove('width of the cut', cutWidthM);
  if (!isPositive(cutDepthM)) return notAbove('depth of the cut', cutDepthM);
  for (const [what, cutM, sideM] of [
    ['width', cutWidthM, widthM],
    ['depth', cutDepthM, depthM],
  ] as const) {
    if (cutM >= sideM) {
      const words = `The cut’s ${what} of ${valueInWords(cutM, ' m')} leaves nothing of the room’s ${valueInWords(sideM, ' m')}.`;
      return { reason: words };
    }
  }
  const cut = CORNERS.indexOf(corner);
  return fromTopLeft(whole.outline.flatMap((one, index) => (index === cut ? cutCorners(shape) : [one])));
}

function regular(sides: number, diameterM: number, firstDeg: number): OutlineOutcome {
  if (!isPositive(diameterM)) return notAbove('diameter', diameterM);
  if (!Number.isInteger(sides) || sides < 3 || sides > MOST_SIDES) {
    const words = `A room cannot have ${valueInWords(sides, '')} sides; whole numbers from 3 to ${MOST_SIDES} can be drawn.`;
    return { reason: words };
  }
  const up = { x: 0, y: -diameterM / 2 };
  return fromTopLeft(Array.from({ length: sides }, (_, i) => rotate(up, firstDeg + (i * 360) / sides)));
}

/**
 * A round room, drawn as a regular polygon with a corner straight up.
 *
 * @param diameterM of the circle through the corners [m]
 * @param sides number of walls, 3 to 200; with 24 the area is 1.1 % under the circle's
 * @returns corners clockwise as drawn; the box around them begins at (0, 0); else the reason
 */
export function roundOutline(diameterM: number, sides: number = ROUND_SIDES): OutlineOutcome {
  return regular(sides, diameterM, 0);
}

/**
 * A room with equal walls, the top one level.
 *
 * @param sides number of walls, 3 to 200
 * @param diameterM of the circle through the corners: corner to opposite corner for an even number [m]
 * @returns corners clockwise as drawn; the box around them begins at (0, 0); else the reason
 */
export function manySidedOutline(sides: number, diameterM: number): OutlineOutcome {
  return regular(sides, diameterM, 180 / sides);
}
