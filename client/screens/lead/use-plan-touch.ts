import { useRef } from 'preact/hooks';
import type { Spot } from '../../../core/geometry/spot.ts';
import { type PlanView, pinchedView, toPlan } from '../../parts/plan/plan-view.ts';

/** A finger hides what it points at: the mark is placed this far above it. A mouse hides nothing. */
const ABOVE_FINGER_PX = 64;

interface Pinch {
  readonly view: PlanView;
  readonly fromA: Spot;
  readonly fromB: Spot;
}

/** What a touch on the plan asks for. */
export interface PlanTouch {
  /** A press or a drag: the mark belongs there now. */
  readonly onPoint: (spot: Spot) => void;
  /** The finger is down, or is up again. */
  readonly onHold: (held: boolean) => void;
  /** The press turned out to be none: a second finger came, or the system took the touch away. */
  readonly onAbort: () => void;
  readonly onView: (view: PlanView) => void;
}

/**
 * One finger places and drags a mark; lifting it leaves the mark as a draft and commits nothing. Two fingers move,
 * size and turn the plan. A touch that the system cancels changes nothing.
 */
export function usePlanTouch(view: PlanView | null, touch: PlanTouch) {
  const points = useRef(new Map<number, Spot>());
  const pinch = useRef<Pinch | null>(null);
  const at = (event: PointerEvent): Spot => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const point = (event: PointerEvent) => {
    if (!view) return;
    const here = at(event);
    const lift = event.pointerType === 'touch' ? ABOVE_FINGER_PX : 0;
    touch.onPoint(toPlan(view, { x: here.x, y: here.y - lift }));
  };
  const down = (event: PointerEvent) => {
    if (!view || (event.pointerType === 'mouse' && event.button !== 0)) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    points.current.set(event.pointerId, at(event));
    const [first, second] = [...points.current.values()];
    if (first && second) {
      pinch.current = { view, fromA: first, fromB: second };
      touch.onHold(false);
      touch.onAbort();
      return;
    }
    touch.onHold(true);
    point(event);
  };
  const move = (event: PointerEvent) => {
    if (!points.current.has(event.pointerId)) return;
    points.current.set(event.pointerId, at(event));
    const [toA, toB] = [...points.current.values()];
    if (pinch.current && toA && toB)
      touch.onView(pinchedView(pinch.current.view, { ...pinch.current, toA, toB }));
    else if (!pinch.current) point(event);
  };
  const up = (event: PointerEvent) => {
    points.current.delete(event.pointerId);
    if (points.current.size === 0) {
      pinch.current = null;
      touch.onHold(false);
    }
  };
  const cancel = (event: PointerEvent) => {
    if (points.current.has(event.pointerId) && !pinch.current) touch.onAbort();
    up(event);
  };
  return { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel };
}
