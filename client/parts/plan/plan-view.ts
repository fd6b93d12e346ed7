import type { Spot } from '../../../core/geometry/spot.ts';

/** How the plan lies on the screen: which spot is in the middle, how large a metre is, which bearing is up. */
export interface PlanView {
  readonly centre: Spot;
  readonly pxPerM: number;
  /** The bearing that points up on the screen, degrees clockwise from the plan's own up. */
  readonly upDeg: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

const rad = (deg: number) => (deg * Math.PI) / 180;

/** A spot of the plan as a point of the screen, in px from the drawing's top left corner. */
export function toScreen(view: PlanView, spot: Spot): Spot {
  const turn = rad(-view.upDeg);
  const x = (spot.x - view.centre.x) * view.pxPerM;
  const y = (spot.y - view.centre.y) * view.pxPerM;
  return {
    x: view.widthPx / 2 + x * Math.cos(turn) - y * Math.sin(turn),
    y: view.heightPx / 2 + x * Math.sin(turn) + y * Math.cos(turn),
  };
}

/** The spot of the plan under a point of the screen; undoes `toScreen`. */
export function toPlan(view: PlanView, point: Spot): Spot {
  const turn = rad(view.upDeg);
  const x = point.x - view.widthPx / 2;
  const y = point.y - view.heightPx / 2;
  return {
    x: view.centre.x + (x * Math.cos(turn) - y * Math.sin(turn)) / view.pxPerM,
    y: view.centre.y + (x * Math.sin(turn) + y * Math.cos(turn)) / view.pxPerM,
  };
}

/** The transform that draws metres of the plan at their place on the screen. */
export const planTransform = (view: PlanView): string =>
  `translate(${view.widthPx / 2} ${view.heightPx / 2}) rotate(${-view.upDeg}) scale(${view.pxPerM}) ` +
  `translate(${-view.centre.x} ${-view.centre.y})`;

/** The view that shows all the given spots, with a margin, this bearing up. */
export function fitView(
  spots: readonly Spot[],
  size: { readonly widthPx: number; readonly heightPx: number },
  upDeg: number,
  marginPx = 18,
): PlanView {
  const turned = spots.map((spot) =>
    toScreen({ centre: { x: 0, y: 0 }, pxPerM: 1, upDeg, widthPx: 0, heightPx: 0 }, spot),
  );
  const xs = turned.map((point) => point.x);
  const ys = turned.map((point) => point.y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const wideM = Math.max(right - left, 0.5);
  const deepM = Math.max(bottom - top, 0.5);
  const room = {
    x: Math.max(size.widthPx - 2 * marginPx, 40),
    y: Math.max(size.heightPx - 2 * marginPx, 40),
  };
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const flat = { centre: { x: 0, y: 0 }, pxPerM: 1, upDeg, widthPx: 0, heightPx: 0 };
  return {
    ...size,
    upDeg,
    pxPerM: Math.min(room.x / wideM, room.y / deepM),
    centre: spots.length > 0 ? toPlan(flat, middle) : { x: 0, y: 0 },
  };
}

/** What two fingers did: from where they were put down to where they are now, in px. */
export interface TwoFingers {
  readonly fromA: Spot;
  readonly fromB: Spot;
  readonly toA: Spot;
  readonly toB: Spot;
}

/**
 * Scale, turn (degrees clockwise) and shift of a two-finger gesture: the one similarity that takes the two old
 * points to the two new ones. Null while the fingers are on one point.
 */
export function pinch({ fromA, fromB, toA, toB }: TwoFingers) {
  const v0 = { x: fromB.x - fromA.x, y: fromB.y - fromA.y };
  const v1 = { x: toB.x - toA.x, y: toB.y - toA.y };
  const length = v0.x ** 2 + v0.y ** 2;
  if (length === 0) return null;
  const a = (v0.x * v1.x + v0.y * v1.y) / length;
  const b = (v0.x * v1.y - v0.y * v1.x) / length;
  return {
    scale: Math.hypot(a, b),
    turnDeg: (Math.atan2(b, a) * 180) / Math.PI,
    shift: { x: toA.x - (a * fromA.x - b * fromA.y), y: toA.y - (b * fromA.x + a * fromA.y) },
  };
}

const LEAST_PX_PER_M = 6;
const MOST_PX_PER_M = 240;
/** Below this a twist of two fingers is taken for unsteadiness, not for a turn. */
const TURN_DEAD_DEG = 12;

/** The view after a two-finger gesture that began in `view`. */
export function pinchedView(view: PlanView, fingers: TwoFingers): PlanView {
  const moved = pinch(fingers);
  if (!moved || moved.scale === 0) return view;
  const turnDeg = Math.abs(moved.turnDeg) < TURN_DEAD_DEG ? 0 : moved.turnDeg;
  const pxPerM = Math.min(MOST_PX_PER_M, Math.max(LEAST_PX_PER_M, view.pxPerM * moved.scale));
  const turned = { ...view, pxPerM, upDeg: view.upDeg - turnDeg };
  // The spot under the middle of the fingers stays under it.
  const middle = (a: Spot, b: Spot) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  const held = toPlan(view, middle(fingers.fromA, fingers.fromB));
  const under = toPlan(turned, middle(fingers.toA, fingers.toB));
  return {
    ...turned,
    centre: { x: view.centre.x + held.x - under.x, y: view.centre.y + held.y - under.y },
  };
}

/** The view a step nearer or farther, about the middle of the screen. */
export const zoomed = (view: PlanView, factor: number): PlanView => ({
  ...view,
  pxPerM: Math.min(MOST_PX_PER_M, Math.max(LEAST_PX_PER_M, view.pxPerM * factor)),
});

/** The view moved across the plan, so that what was this many px to the right and down is in the middle. */
export const panned = (view: PlanView, rightPx: number, downPx: number): PlanView => ({
  ...view,
  centre: toPlan(view, { x: view.widthPx / 2 + rightPx, y: view.heightPx / 2 + downPx }),
});
