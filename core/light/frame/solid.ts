import type { Spot } from '../../geometry/spot.ts';
import type { Background, FrameScene } from './scene.ts';

/** A thing that stops a ray: an upright prism from the floor to its height, with the box around it. */
export type Solid = {
  readonly id: string;
  readonly name: string;
  readonly background: Background;
  readonly blocksLight: boolean;
  readonly reflectance: number;
  readonly heightM: number;
  readonly outline: readonly Spot[];
  /** Number of the blocker of the room that it is; null when the room's light does not know it */
  readonly blocker: number | null;
  readonly leastX: number;
  readonly mostX: number;
  readonly leastY: number;
  readonly mostY: number;
};

/** What a ray meets: which, how far off [m], and the unit normal on the ray's side. Written, not made anew. */
export type Hit = {
  distanceM: number;
  kind: number;
  index: number;
  nx: number;
  ny: number;
  nz: number;
};

/** Nearer than this a ray meets what it starts from [m]. */
const NEAREST_M = 1e-6;

type Shape = Pick<
  Solid,
  'id' | 'name' | 'background' | 'blocksLight' | 'reflectance' | 'heightM' | 'outline'
>;

function solidFrom(shape: Shape, blocker: number): Solid {
  const xs = shape.outline.map(({ x }) => x);
  const ys = shape.outline.map(({ y }) => y);
  return {
    id: shape.id,
    name: shape.name,
    background: shape.background,
    blocksLight: shape.blocksLight || blocker >= 0,
    reflectance: shape.reflectance,
    heightM: shape.heightM,
    outline: shape.outline,
    blocker: blocker < 0 ? null : blocker,
    leastX: Math.min(...xs),
    mostX: Math.max(...xs),
    leastY: Math.min(...ys),
    mostY: Math.max(...ys),
  };
}

/**
 * Everything in a scene that stops a ray: features with a height, and blockers of the room that are no
 * feature (they have no background of their own). A feature with the id of a blocker is that blocker.
 *
 * @source textbook-geometry
 */
export function solidsOf(scene: FrameScene): Solid[] {
  const { blockers } = scene.room;
  const known = new Set(scene.features.map(({ id }) => id));
  const features = scene.features.filter(({ heightM, outline }) => heightM > 0 && outline.length >= 3);
  return [
    ...features.map((feature) =>
      solidFrom(
        feature,
        blockers.findIndex(({ id }) => id === feature.id),
      ),
    ),
    ...blockers.flatMap((blocker, index) =>
      known.has(blocker.id) || blocker.outline.length < 3
        ? []
        : [solidFrom({ ...blocker, background: 'neither', blocksLight: true }, index)],
    ),
  ];
}

/** Does a ray pass through the box around a solid, nearer than the hit so far? */
function meetsBox(
  solid: Solid,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  mostM: number,
): boolean {
  let near = 0;
  let far = mostM;
  // A direction of 0 gives ±∞ here, which the comparisons take rightly; 0/0 (a ray along a side) gives NaN,
  // which Math.min would spread: such a side is left out.
  const ax = (solid.leastX - ox) / dx;
  const bx = (solid.mostX - ox) / dx;
  if (!Number.isNaN(ax) && !Number.isNaN(bx)) {
    near = Math.max(near, Math.min(ax, bx));
    far = Math.min(far, Math.max(ax, bx));
  }
  const ay = (solid.leastY - oy) / dy;
  const by = (solid.mostY - oy) / dy;
  if (!Number.isNaN(ay) && !Number.isNaN(by)) {
    near = Math.max(near, Math.min(ay, by));
    far = Math.min(far, Math.max(ay, by));
  }
  if (near > far) return false;
  return Math.min(oz + near * dz, oz + far * dz) <= solid.heightM;
}

function insideOutline(outline: readonly Spot[], x: number, y: number): boolean {
  let inside = false;
  let a = outline[outline.length - 1];
  for (const b of outline) {
    if (a && a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
    a = b;
  }
  return inside;
}

/** Meets the sides; the nearest one goes into `hit`. @returns whether one was nearer than before */
function meetSides(
  solid: Solid,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): boolean {
  let found = false;
  const { outline, heightM } = solid;
  let a = outline[outline.length - 1];
  for (const b of outline) {
    if (a) {
      const ex = b.x - a.x;
      const ey = b.y - a.y;
      const across = dx * ey - dy * ex;
      const along = ((a.x - ox) * ey - (a.y - oy) * ex) / across;
      const part = ((a.x - ox) * dy - (a.y - oy) * dx) / across;
      const z = oz + along * dz;
      if (along > NEAREST_M && along < hit.distanceM && part >= 0 && part <= 1 && z >= 0 && z <= heightM) {
        const length = Math.hypot(ex, ey);
        const turn = across > 0 ? -1 : 1;
        hit.distanceM = along;
        hit.nx = (turn * ey) / length;
        hit.ny = (-turn * ex) / length;
        hit.nz = 0;
        found = true;
      }
    }
    a = b;
  }
  return found;
}

/**
 * Meets a ray with a solid. When it is met nearer than `hit.distanceM`, distance and normal go into `hit`.
 *
 * @param ox, oy, oz start of the ray [m], outside the solid
 * @param dx, dy, dz unit vector
 * @returns whether the solid was nearer
 * @source textbook-geometry
 */
export function meetSolid(
  solid: Solid,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  hit: Hit,
): boolean {
  if (!meetsBox(solid, ox, oy, oz, dx, dy, dz, hit.distanceM)) return false;
  let found = meetSides(solid, ox, oy, oz, dx, dy, dz, hit);
  if (oz > solid.heightM && dz < 0) {
    const along = (solid.heightM - oz) / dz;
    if (along < hit.distanceM && insideOutline(solid.outline, ox + along * dx, oy + along * dy)) {
      hit.distanceM = along;
      hit.nx = 0;
      hit.ny = 0;
      hit.nz = 1;
      found = true;
    }
  }
  return found;
}
