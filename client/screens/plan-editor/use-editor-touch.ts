import { useRef } from 'preact/hooks';
import { contains } from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { add, type Spot, subtract } from '../../../core/geometry/spot.ts';
import { withCornerAt } from '../../../core/plan/wall-edit.ts';
import type { Feature } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { type PlanView, panned, pinchedView, toPlan, toScreen } from '../../parts/plan/plan-view.ts';
import type { EditorState, Person } from './editor-state.ts';

/** A finger that moved less than this has only pressed, px. */
const SLOP_PX = 8;
/** A corner, the camera or the couple is taken from this far, px. */
const CORNER_PX = 30;

interface Grip {
  readonly from: Spot;
  readonly fromPx: Spot;
  readonly feature: Feature | null;
  readonly corner: number | null;
  readonly tool: 'pick' | 'stamp' | 'walls';
  /** How the plan lay when the finger came down. */
  readonly view: PlanView;
  readonly person: Person | null;
  moved: boolean;
}

/** The topmost thing under a spot: the smaller lies over the larger. */
function featureUnder(night: Night, spot: Spot): Feature | null {
  const hit = night.features.filter((feature) => contains(outlineOf(feature), spot));
  const size = (feature: Feature) =>
    feature.shape.kind === 'box'
      ? feature.shape.widthM * feature.shape.depthM
      : feature.shape.kind === 'round'
        ? feature.shape.radiusM ** 2 * 3
        : 1e6;
  return hit.sort((a, b) => size(a) - size(b))[0] ?? null;
}

function personUnder(night: Night, view: PlanView, px: Spot): Person | null {
  const seen = night.moment?.view;
  if (!seen) return null;
  const near = (spot: Spot) => {
    const at = toScreen(view, spot);
    return Math.hypot(at.x - px.x, at.y - px.y) <= CORNER_PX;
  };
  if (near(seen.camera.spot)) return 'camera';
  return near(seen.subject.spot) ? 'subject' : null;
}

function cornerUnder(night: Night, view: PlanView, px: Spot): number | null {
  const corners = night.room?.outline ?? [];
  const away = corners.map((corner) => {
    const at = toScreen(view, corner);
    return Math.hypot(at.x - px.x, at.y - px.y);
  });
  const nearest = away.indexOf(Math.min(...away));
  return nearest >= 0 && (away[nearest] ?? Number.POSITIVE_INFINITY) <= CORNER_PX ? nearest : null;
}

/** Presses, drags and two-finger moves on the plan that is edited. What is let go is one step to undo. */
export function useEditorTouch(state: EditorState, view: PlanView | null, setView: (view: PlanView) => void) {
  const points = useRef(new Map<number, Spot>());
  const pinch = useRef<{ view: PlanView; fromA: Spot; fromB: Spot } | null>(null);
  const grip = useRef<Grip | null>(null);
  const at = (event: PointerEvent): Spot => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const drop = () => {
    grip.current = null;
    state.moving.value = null;
  };
  const down = (event: PointerEvent) => {
    const night = state.night.peek();
    if (!view || !night || (event.pointerType === 'mouse' && event.button !== 0)) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    points.current.set(event.pointerId, at(event));
    const [first, second] = [...points.current.values()];
    if (first && second) {
      pinch.current = { view, fromA: first, fromB: second };
      drop();
      return;
    }
    const px = at(event);
    const from = toPlan(view, px);
    const tool = state.tool.peek();
    const person = tool.kind === 'pick' ? personUnder(night, view, px) : null;
    grip.current = {
      from,
      fromPx: px,
      person,
      tool: tool.kind,
      view,
      feature: tool.kind !== 'walls' && !person ? featureUnder(night, from) : null,
      corner: tool.kind === 'walls' ? cornerUnder(night, view, px) : null,
      moved: false,
    };
    if (grip.current.corner !== null) state.corner.value = grip.current.corner;
    else if (tool.kind === 'walls') state.corner.value = null;
  };
  const drag = (view: PlanView, held: Grip, px: Spot) => {
    const by = subtract(toPlan(view, px), held.from);
    const night = state.night.peek();
    if (held.corner !== null && night?.room) {
      const corner = night.room.outline[held.corner];
      if (!corner) return;
      const to = state.snap(add(corner, by), view.pxPerM).spot;
      const moved = withCornerAt(night.room.outline, held.corner, to);
      // Walls that would cross are drawn as they were, and a finger lifted here leaves them so.
      state.moving.value = 'reason' in moved ? null : { spots: new Map(), outline: moved.outline };
      if ('reason' in moved) state.said.value = moved.reason;
      return;
    }
    const seen = night?.moment?.view;
    if (held.person && seen) {
      const to = add(seen[held.person].spot, by);
      state.said.value =
        held.person === 'camera' ? 'The camera of this moment' : `${seen.subject.name}, in this moment`;
      state.moving.value = { spots: new Map([[held.person, to]]), outline: null };
      return;
    }
    if (!held.feature || !night) {
      // The bare floor is pulled along: what two fingers do must also go with one.
      if (held.tool !== 'stamp') setView(panned(held.view, held.fromPx.x - px.x, held.fromPx.y - px.y));
      else state.snap(toPlan(view, px), view.pxPerM);
      return;
    }
    const group = state.selected.peek().has(held.feature.id) ? state.chosen.peek() : [held.feature];
    const to = state.snap(add(held.feature.at, by), view.pxPerM, new Set(group.map(({ id }) => id))).spot;
    const shift = subtract(to, held.feature.at);
    state.moving.value = {
      spots: new Map(group.map((feature) => [feature.id, add(feature.at, shift)])),
      outline: null,
    };
  };
  const move = (event: PointerEvent) => {
    if (!view || !points.current.has(event.pointerId)) return;
    const px = at(event);
    points.current.set(event.pointerId, px);
    const [toA, toB] = [...points.current.values()];
    if (pinch.current && toA && toB) {
      setView(pinchedView(pinch.current.view, { ...pinch.current, toA, toB }));
      return;
    }
    const held = grip.current;
    if (!held) return;
    if (!held.moved && Math.hypot(px.x - held.fromPx.x, px.y - held.fromPx.y) < SLOP_PX) return;
    held.moved = true;
    drag(view, held, px);
  };
  const press = (view: PlanView, held: Grip, px: Spot) => {
    const tool = state.tool.peek();
    if (tool.kind === 'stamp') {
      state.stamp(tool.feature, state.snap(toPlan(view, px), view.pxPerM).spot);
      return;
    }
    if (tool.kind === 'walls') return;
    state.person.value = held.person;
    if (held.person) {
      state.selected.value = new Set();
      state.card.value = 'person';
      return;
    }
    state.selected.value = new Set(held.feature ? [held.feature.id] : []);
    state.card.value = held.feature ? 'feature' : 'keys';
    state.said.value = held.feature ? held.feature.name : '';
  };
  const up = (event: PointerEvent) => {
    const held = grip.current;
    points.current.delete(event.pointerId);
    if (points.current.size > 0) return;
    grip.current = null;
    if (pinch.current) {
      pinch.current = null;
      return;
    }
    if (!view || !held) return;
    if (held.moved && state.moving.peek()) state.commitMoving();
    else if (!held.moved) press(view, held, at(event));
    else if (state.tool.peek().kind === 'stamp') press(view, held, at(event));
  };
  const cancel = (event: PointerEvent) => {
    points.current.delete(event.pointerId);
    pinch.current = null;
    drop();
  };
  return { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel };
}
