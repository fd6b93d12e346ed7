import { areaOf, centroidOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import { type Cover, createCover } from './cover.ts';
import type { Patches } from './exchange.ts';
import { type Face, normalOf, placeOn } from './face.ts';
import { cellsOf } from './face-cells.ts';
import { levelFaces } from './level-faces.ts';
import type { RoomModel } from './room-model.ts';
import { sideFaces, wallFaces } from './upright-faces.ts';

/** Lines of points each way with which one looks how much of a patch a thing covers: to about 1 % of a patch. */
const LOOKS = 16;

type Lit = { readonly centre: Spot; readonly area: number };

/** What of a level cell is not covered: its area and its middle, which is never under a thing. */
function litPart(face: Face, cell: readonly Spot[], cover: Cover): Lit | null {
  const whole = { centre: centroidOf(cell), area: areaOf(cell) };
  const own = face.surface.kind === 'blocker' ? face.surface.blocker : -1;
  const span = Math.max(...cell.map(({ x, y }) => Math.hypot(x - whole.centre.x, y - whole.centre.y)));
  if (own < 0 && !cover.near(placeOn(face, whole.centre), span, own)) return whole;
  const open: Spot[] = [];
  for (let k = 0; k < LOOKS * LOOKS; k += 1) {
    const spot = lookIn(cell, ((k % LOOKS) + 0.5) / LOOKS, (Math.floor(k / LOOKS) + 0.5) / LOOKS);
    const place = placeOn(face, spot);
    if (cover.open(place, place.z, own)) open.push(spot);
  }
  if (open.length === 0) return null;
  if (open.length === LOOKS * LOOKS) return whole;
  const sum = open.reduce((s, { x, y }) => ({ x: s.x + x, y: s.y + y }), { x: 0, y: 0 });
  const mean = { x: sum.x / open.length, y: sum.y / open.length };
  const away = ({ x, y }: Spot) => Math.hypot(x - mean.x, y - mean.y);
  const centre = open.reduce((best, spot) => (away(spot) < away(best) ? spot : best));
  return { centre, area: (whole.area * open.length) / (LOOKS * LOOKS) };
}

/** A point of a convex polygon for a point of the unit square; equal areas map to equal areas. */
function lookIn(cell: readonly Spot[], across: number, along: number): Spot {
  const first = cell[0] ?? { x: 0, y: 0 };
  const areas = cell.slice(2).map((corner, index) => areaOf([first, cell[index + 1] ?? first, corner]));
  let left = across * areas.reduce((sum, area) => sum + area, 0);
  let piece = 0;
  while (piece < areas.length - 1 && left > (areas[piece] ?? 0)) {
    left -= areas[piece] ?? 0;
    piece += 1;
  }
  const turn = Math.min(1, left / (areas[piece] || 1));
  const far = Math.sqrt(along);
  const [b, c] = [cell[piece + 1] ?? first, cell[piece + 2] ?? first];
  const edge = { x: b.x + turn * (c.x - b.x), y: b.y + turn * (c.y - b.y) };
  return { x: first.x + far * (edge.x - first.x), y: first.y + far * (edge.y - first.y) };
}

/**
 * Cuts the whole inside of a room into patches: floor, roof, walls, and the sides and tops of blockers. Floor
 * and roof under a thing are no surface of the room: a patch that a thing covers in part keeps its corners,
 * but has only the open area, and its centre lies in the open.
 *
 * @param patchM side that a patch should have [m]
 * @source own-rule
 */
export function cutIntoPatches(room: RoomModel, patchM: number): Patches {
  const cover = createCover(room);
  const level = levelFaces(room);
  const found = [...level, ...wallFaces(room, cover), ...sideFaces(room, cover)].flatMap((face, index) =>
    cellsOf(face, patchM).flatMap((cell) => {
      const whole = { centre: centroidOf(cell), area: areaOf(cell) };
      const lit = index < level.length ? litPart(face, cell, cover) : whole;
      return lit && lit.area > 0.01 * whole.area ? [{ face, cell, ...lit }] : [];
    }),
  );
  return {
    count: found.length,
    centres: Float64Array.from(found.flatMap(({ face, centre }) => triple(placeOn(face, centre)))),
    normals: Float64Array.from(found.flatMap(({ face }) => triple(normalOf(face)))),
    areas: Float64Array.from(found.map(({ area }) => area)),
    reflectances: Float64Array.from(found.map(({ face }) => face.reflectance)),
    surfaces: found.map(({ face }) => face.surface),
    corners: found.map(({ face, cell }) =>
      Float64Array.from(cell.flatMap((spot) => triple(placeOn(face, spot)))),
    ),
  };
}

function triple({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }): number[] {
  return [x, y, z];
}
