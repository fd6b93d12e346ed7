import { add, rotate, type Spot } from './spot.ts';

/** What a feature looks like from above, around its own place; sizes in metres. */
export type Shape =
  | { readonly kind: 'box'; readonly widthM: number; readonly depthM: number }
  | { readonly kind: 'round'; readonly radiusM: number }
  | { readonly kind: 'outline'; readonly points: readonly Spot[] };

/** Corners that stand in for a circle: with 24 the flat sides lie within 0.9 % of the radius. */
const ROUND_CORNERS = 24;

function cornersOf(shape: Shape): readonly Spot[] {
  if (shape.kind === 'outline') return shape.points;
  if (shape.kind === 'round') {
    return Array.from({ length: ROUND_CORNERS }, (_, index) =>
      rotate({ x: 0, y: -shape.radiusM }, (index * 360) / ROUND_CORNERS),
    );
  }
  const x = shape.widthM / 2;
  const y = shape.depthM / 2;
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
}

/**
 * Outline of a feature on the plan.
 *
 * @param at centre of a box or round; origin of an outline's own points [m]
 * @param turnDeg clockwise turn about `at` [°]
 * @returns corners in order, not closed [m]; a round becomes a regular 24-gon inside the circle
 */
export function outlineOf({
  at,
  turnDeg,
  shape,
}: {
  readonly at: Spot;
  readonly turnDeg: number;
  readonly shape: Shape;
}): Spot[] {
  return cornersOf(shape).map((corner) => add(at, rotate(corner, turnDeg)));
}
