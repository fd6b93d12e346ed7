import { centroidOf, contains, edgesOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import type { Cover } from './cover.ts';
import type { Surface } from './exchange.ts';
import type { Face } from './face.ts';
import { plainOutline, positiveOrder } from './outline.ts';
import { createRoof, ridgeOver } from './roof.ts';
import type { RoomModel } from './room-model.ts';

type Line = readonly [Spot, Spot];
type Roof = (spot: Spot) => number;

/** How far in front of an upright face one looks to see what is there [m]. */
const PROBE_M = 1e-3;

/** Lines on the plan at which the roof bends. */
function bendsOf({ outline, roof }: RoomModel): Line[] {
  if (roof.kind === 'flat') return [];
  if (roof.kind === 'pyramid') {
    const centre = centroidOf(outline);
    return outline.map((corner) => [centre, corner] as const);
  }
  const { centre, along } = ridgeOver(outline, roof.ridgeDeg);
  const far = 1000;
  return [
    [
      { x: centre.x - far * along.x, y: centre.y - far * along.y },
      { x: centre.x + far * along.x, y: centre.y + far * along.y },
    ],
  ];
}

function between(a: Spot, b: Spot, part: number): Spot {
  return { x: a.x + part * (b.x - a.x), y: a.y + part * (b.y - a.y) };
}

/** Where along a–b [0…1] other lines meet it, its ends included, in order. */
function cutsAlong([a, b]: Line, lines: readonly Line[]): number[] {
  const cuts = [0, 1];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  for (const [p, q] of lines) {
    const [ex, ey] = [q.x - p.x, q.y - p.y];
    const across = dx * ey - dy * ex;
    if (Math.abs(across) < 1e-12) continue;
    const part = ((p.x - a.x) * ey - (p.y - a.y) * ex) / across;
    const other = ((p.x - a.x) * dy - (p.y - a.y) * dx) / across;
    if (part > 0 && part < 1 && other >= -1e-6 && other <= 1 + 1e-6) cuts.push(part);
  }
  return cuts.sort((x, y) => x - y);
}

/** Parts of a–b on each of which `value` keeps its sign; it runs straight on each part given. */
function withSignChanges(parts: readonly number[], value: (part: number) => number): number[] {
  return parts.flatMap((part, index) => {
    const next = parts[index + 1];
    if (next === undefined) return [part];
    const [before, after] = [value(part), value(next)];
    return before * after < 0 ? [part, part + ((next - part) * before) / (before - after)] : [part];
  });
}

type Upright = {
  readonly edge: Line;
  readonly lines: readonly Line[];
  readonly surface: Surface;
  readonly reflectance: number;
  readonly stretch: number;
  readonly topAt: Roof;
  readonly bendAt: Roof;
  /** Height from which on the face is bare [m], seen from a spot in front of it; null where there is no room */
  readonly bottomAt: (probe: Spot) => number | null;
};

/** The faces over one edge, which has the room on its right hand side of positive order reversed: see `normal`. */
function facesOver({ edge, lines, surface, reflectance, stretch, topAt, bendAt, bottomAt }: Upright): Face[] {
  const [a, b] = edge;
  const lengthM = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(lengthM > 0)) return [];
  const u = { x: (b.x - a.x) / lengthM, y: (b.y - a.y) / lengthM, z: 0 };
  // u × up: the side that the face looks to.
  const normal = { x: u.y, y: -u.x };
  const parts = withSignChanges(cutsAlong(edge, lines), (part) => bendAt(between(a, b, part)));
  return parts.flatMap((part, index): Face[] => {
    const next = parts[index + 1];
    if (next === undefined || (next - part) * lengthM < PROBE_M) return [];
    const middle = between(a, b, (part + next) / 2);
    const bottomM = bottomAt({ x: middle.x + PROBE_M * normal.x, y: middle.y + PROBE_M * normal.y });
    const tops = [topAt(between(a, b, part)), topAt(between(a, b, next))] as const;
    if (bottomM === null || !(Math.max(...tops) - bottomM > PROBE_M)) return [];
    const widthM = (next - part) * lengthM;
    const polygon = [
      { x: 0, y: bottomM },
      { x: widthM, y: bottomM },
      { x: widthM, y: Math.max(bottomM, tops[1]) },
      { x: 0, y: Math.max(bottomM, tops[0]) },
    ];
    const start = between(a, b, part);
    const origin = { x: start.x, y: start.y, z: 0 };
    return [{ surface, reflectance, origin, u, v: { x: 0, y: 0, z: 1 }, polygon, half: false, stretch }];
  });
}

/**
 * The walls of a room, bare of what stands against them, up to its roof.
 *
 * @source textbook-geometry
 */
export function wallFaces(room: RoomModel, cover: Cover): Face[] {
  const roofAt = createRoof(room);
  const lines = [...bendsOf(room), ...room.blockers.flatMap(({ outline }) => edgesOf(plainOutline(outline)))];
  const order = positiveOrder(room.outline);
  return edgesOf(room.outline).flatMap(([a, b], wall) =>
    facesOver({
      // In positive order the room lies to the side of −(u × up).
      edge: order === room.outline ? [b, a] : [a, b],
      lines,
      surface: { kind: 'wall', wall },
      reflectance: room.finishes.walls,
      stretch: 1,
      topAt: roofAt,
      bendAt: () => 1,
      bottomAt: (probe) => cover.heightOver(probe, -1),
    }),
  );
}

/** Sides of things may have patches this much taller than wide: they are narrow, and many. */
const SIDE_STRETCH = 1.5;

/**
 * The sides of the blockers that show in the room, up to their tops or the roof.
 *
 * @source textbook-geometry
 */
export function sideFaces(room: RoomModel, cover: Cover): Face[] {
  const roofAt = createRoof(room);
  const outlines = room.blockers.map(({ outline }) => plainOutline(outline));
  const lines = [...bendsOf(room), ...edgesOf(room.outline), ...outlines.flatMap(edgesOf)];
  return room.blockers.flatMap(({ heightM, reflectance }, blocker) =>
    edgesOf(outlines[blocker] ?? []).flatMap((edge) =>
      facesOver({
        edge,
        lines,
        surface: { kind: 'blocker', blocker },
        reflectance,
        stretch: SIDE_STRETCH,
        topAt: (spot) => Math.min(heightM, roofAt(spot)),
        bendAt: (spot) => roofAt(spot) - heightM,
        bottomAt: (probe) => (contains(room.outline, probe) ? cover.heightOver(probe, blocker) : null),
      }),
    ),
  );
}
