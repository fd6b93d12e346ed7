import { centroidOf, edgesOf } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import type { Surface } from './exchange.ts';
import type { Face } from './face.ts';
import { plainOutline, positiveOrder } from './outline.ts';
import { ridgeOver } from './roof.ts';
import type { RoomModel } from './room-model.ts';

/** Direction of the longest edge: patches lie along it. */
function longestDirection(outline: readonly Spot[]): Spot {
  let longestM = 0;
  let direction = { x: 1, y: 0 };
  for (const [a, b] of edgesOf(outline)) {
    const lengthM = Math.hypot(b.x - a.x, b.y - a.y);
    // A little longer, not longer: of two equal edges the first is taken whatever the rounding.
    if (lengthM <= longestM * (1 + 1e-9)) continue;
    longestM = lengthM;
    direction = { x: (b.x - a.x) / lengthM, y: (b.y - a.y) / lengthM };
  }
  return direction;
}

/** A level face that looks up (sign 1) or down (−1) at a height. */
function levelFace(
  outline: readonly Spot[],
  heightM: number,
  sign: 1 | -1,
  surface: Surface,
  reflectance: number,
): Face {
  const along = longestDirection(outline);
  const start = outline[0] ?? { x: 0, y: 0 };
  const v = { x: -along.y * sign, y: along.x * sign, z: 0 };
  const polygon = outline.map(({ x, y }) => ({
    x: (x - start.x) * along.x + (y - start.y) * along.y,
    y: (x - start.x) * v.x + (y - start.y) * v.y,
  }));
  return {
    surface,
    reflectance,
    origin: { x: start.x, y: start.y, z: heightM },
    u: { x: along.x, y: along.y, z: 0 },
    v,
    polygon: positiveOrder(polygon),
    half: false,
    stretch: 1,
  };
}

function ridgeFaces({ outline, ceilingM, finishes }: RoomModel, peakM: number, ridgeDeg: number): Face[] {
  const { centre, along, aside, reachM } = ridgeOver(outline, ridgeDeg);
  const fall = (peakM - ceilingM) / reachM;
  const stretched = Math.hypot(1, fall);
  return [1, -1].map((sign): Face => {
    // u × v must look down.
    const u = { x: along.x * -sign, y: along.y * -sign, z: 0 };
    const v = { x: (sign * aside.x) / stretched, y: (sign * aside.y) / stretched, z: -fall / stretched };
    const down = u.x * v.y - u.y * v.x < 0 ? 1 : -1;
    const polygon = outline.map(({ x, y }) => ({
      x: down * ((x - centre.x) * u.x + (y - centre.y) * u.y),
      y: sign * ((x - centre.x) * aside.x + (y - centre.y) * aside.y) * stretched,
    }));
    return {
      surface: { kind: 'ceiling' },
      reflectance: finishes.ceiling,
      origin: { x: centre.x, y: centre.y, z: peakM },
      u: { x: down * u.x, y: down * u.y, z: 0 },
      v,
      polygon: positiveOrder(polygon),
      half: true,
      stretch: 1,
    };
  });
}

function pyramidFaces({ outline, ceilingM, finishes }: RoomModel, peakM: number): Face[] {
  const centre = centroidOf(outline);
  return edgesOf(positiveOrder(outline)).map(([b, a]): Face => {
    // From b to a the room is on the other side, so that u × v looks down.
    const lengthM = Math.hypot(b.x - a.x, b.y - a.y);
    const u = { x: (b.x - a.x) / lengthM, y: (b.y - a.y) / lengthM, z: 0 };
    const alongM = (centre.x - a.x) * u.x + (centre.y - a.y) * u.y;
    const foot = { x: centre.x - a.x - alongM * u.x, y: centre.y - a.y - alongM * u.y };
    const slopeM = Math.hypot(foot.x, foot.y, peakM - ceilingM);
    return {
      surface: { kind: 'ceiling' },
      reflectance: finishes.ceiling,
      origin: { x: a.x, y: a.y, z: ceilingM },
      u,
      v: { x: foot.x / slopeM, y: foot.y / slopeM, z: (peakM - ceilingM) / slopeM },
      polygon: [
        { x: 0, y: 0 },
        { x: lengthM, y: 0 },
        { x: alongM, y: slopeM },
      ],
      half: false,
      stretch: 1,
    };
  });
}

/**
 * The faces that look up or down: the floor, the roof's parts and the blockers' tops, each whole. What blockers
 * cover of them is taken off when they are cut into patches.
 *
 * @source textbook-geometry
 */
export function levelFaces(room: RoomModel): Face[] {
  const { outline, ceilingM, roof, finishes, blockers } = room;
  const floor = levelFace(outline, 0, 1, { kind: 'floor' }, finishes.floor);
  const ceiling =
    roof.kind === 'flat'
      ? [levelFace(outline, ceilingM, -1, { kind: 'ceiling' }, finishes.ceiling)]
      : roof.kind === 'ridge'
        ? ridgeFaces(room, roof.peakM, roof.ridgeDeg)
        : pyramidFaces(room, roof.peakM);
  const tops = blockers.map(({ outline: around, heightM, reflectance }, blocker) =>
    levelFace(plainOutline(around), heightM, 1, { kind: 'blocker', blocker }, reflectance),
  );
  return [floor, ...ceiling, ...tops];
}
