import type { Spot } from '../../core/geometry/spot.ts';
import { arcPoints, bulgePoints, ellipseRing } from './curves.ts';
import type { DxfEntity } from './dxf-drawing.ts';

/** A shape in the drawing's own frame, y up. */
export interface DxfShape {
  readonly outline: readonly Spot[];
  readonly closed: boolean;
}

/** @returns the first value with this group code; NaN when there is none and no `otherwise` */
export function numberIn(entity: DxfEntity, code: number, otherwise = Number.NaN): number {
  const found = entity.groups.find((group) => group.code === code);
  return found ? Number.parseFloat(found.value) : otherwise;
}

/** @returns the first text with this group code; empty when there is none */
export function textIn(entity: DxfEntity, code: number): string {
  return entity.groups.find((group) => group.code === code)?.value ?? '';
}

const spotIn = (entity: DxfEntity, code: number): Spot => ({
  x: numberIn(entity, code),
  y: numberIn(entity, code + 10),
});

/** A flat thing seen from below is drawn with its x the other way round (extrusion direction, 230, of −1). */
const isFromBelow = (entity: DxfEntity) => numberIn(entity, 230, 1) < 0;

interface Corner {
  readonly spot: Spot;
  readonly bulge: number;
}

function ringOf(corners: readonly Corner[], closed: boolean): DxfShape {
  const outline = corners.flatMap(({ spot, bulge }, index) => {
    const next = corners[index + 1] ?? (closed ? corners[0] : undefined);
    return next ? [spot, ...bulgePoints(spot, next.spot, bulge)] : [spot];
  });
  return { outline, closed };
}

function lightPolyline(entity: DxfEntity): DxfShape {
  const corners: { spot: { x: number; y: number }; bulge: number }[] = [];
  for (const { code, value } of entity.groups) {
    const number = Number.parseFloat(value);
    const last = corners.at(-1);
    if (code === 10) corners.push({ spot: { x: number, y: Number.NaN }, bulge: 0 });
    else if (code === 20 && last) last.spot.y = number;
    else if (code === 42 && last) last.bulge = number;
  }
  return ringOf(corners, (numberIn(entity, 70, 0) & 1) === 1);
}

/** 16 a mesh and 64 a body of many faces: no outline seen from above. A corner with 16 only steers a curve. */
function oldPolyline(entity: DxfEntity): DxfShape | null {
  const flags = numberIn(entity, 70, 0);
  if (flags & (16 | 64)) return null;
  const corners = entity.vertices
    .filter((vertex) => !(numberIn(vertex, 70, 0) & 16))
    .map((vertex) => ({ spot: spotIn(vertex, 10), bulge: numberIn(vertex, 42, 0) }));
  return ringOf(corners, (flags & 1) === 1);
}

function circular(entity: DxfEntity, isWhole: boolean): DxfShape {
  const radius = numberIn(entity, 40);
  const ellipse = { centre: spotIn(entity, 10), across: radius, along: radius, turnDeg: 0 };
  if (isWhole) return { outline: ellipseRing(ellipse), closed: true };
  const fromDeg = numberIn(entity, 50);
  const sweepDeg = (((numberIn(entity, 51) - fromDeg) % 360) + 360) % 360 || 360;
  return { outline: arcPoints(ellipse, fromDeg, sweepDeg), closed: sweepDeg === 360 };
}

function elliptic(entity: DxfEntity): DxfShape {
  const end = spotIn(entity, 11);
  const across = Math.hypot(end.x, end.y);
  const ellipse = {
    centre: spotIn(entity, 10),
    across,
    along: across * numberIn(entity, 40),
    turnDeg: (Math.atan2(end.y, end.x) * 180) / Math.PI,
  };
  const fromDeg = (numberIn(entity, 41, 0) * 180) / Math.PI;
  const sweepDeg = (numberIn(entity, 42, 2 * Math.PI) * 180) / Math.PI - fromDeg;
  if (Math.abs(Math.abs(sweepDeg) - 360) < 0.01) return { outline: ellipseRing(ellipse), closed: true };
  return { outline: arcPoints(ellipse, fromDeg, ((sweepDeg % 360) + 360) % 360), closed: false };
}

function rawShape(entity: DxfEntity): DxfShape | null {
  switch (entity.type) {
    case 'LINE':
      return { outline: [spotIn(entity, 10), spotIn(entity, 11)], closed: false };
    case 'LWPOLYLINE':
      return lightPolyline(entity);
    case 'POLYLINE':
      return oldPolyline(entity);
    case 'CIRCLE':
      return circular(entity, true);
    case 'ARC':
      return circular(entity, false);
    case 'ELLIPSE':
      return elliptic(entity);
    default:
      return null;
  }
}

/** Lines and ellipses are given in the drawing's own frame; the others in one that may be seen from below. */
const IN_WORLD_FRAME = new Set(['LINE', 'ELLIPSE']);

/** @returns the entity as a line or ring, y up; null for what is none (texts, splines, hatches, bodies) */
export function dxfEntityShape(entity: DxfEntity): DxfShape | null {
  const shape = rawShape(entity);
  if (!shape || IN_WORLD_FRAME.has(entity.type) || !isFromBelow(entity)) return shape;
  return { ...shape, outline: shape.outline.map(({ x, y }) => ({ x: -x, y })) };
}
