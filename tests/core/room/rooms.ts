import fc from 'fast-check';
import { distanceToOutline, nearestOnOutline } from '../../../core/geometry/polygon.ts';
import { distance, type Spot } from '../../../core/geometry/spot.ts';
import type { Vec3 } from '../../../core/geometry/vec3.ts';
import type { Lamp } from '../../../core/light/lamp.ts';
import type { Blocker, RoomModel } from '../../../core/light/room/room-model.ts';
import { lampProblem } from '../../../core/light/room/room-problem.ts';

export function rectangle(widthM: number, depthM: number, at: Spot = { x: 0, y: 0 }): Spot[] {
  return [
    at,
    { x: at.x + widthM, y: at.y },
    { x: at.x + widthM, y: at.y + depthM },
    { x: at.x, y: at.y + depthM },
  ];
}

export function pillar(id: string, centre: Spot, sideM: number, heightM: number): Blocker {
  const at = { x: centre.x - sideM / 2, y: centre.y - sideM / 2 };
  return { id, name: `Pillar ${id}`, outline: rectangle(sideM, sideM, at), heightM, reflectance: 0.4 };
}

function roundPillar(id: string, centre: Spot, radiusM: number, heightM: number): Blocker {
  const outline = Array.from({ length: 24 }, (_, k) => ({
    x: centre.x + radiusM * Math.cos((k * Math.PI) / 12),
    y: centre.y + radiusM * Math.sin((k * Math.PI) / 12),
  }));
  return { id, name: `Column ${id}`, outline, heightM, reflectance: 0.5 };
}

export const HALL: RoomModel = {
  outline: rectangle(18, 12),
  ceilingM: 4.2,
  roof: { kind: 'flat' },
  finishes: { ceiling: 0.8, walls: 0.5, floor: 0.2 },
  blockers: [],
};

/** The hall with half a dozen tall things: pillars, a column, a screen, one against a wall. */
export const FULL_HALL: RoomModel = {
  ...HALL,
  blockers: [
    pillar('a', { x: 4, y: 4 }, 0.5, 4.2),
    pillar('b', { x: 14, y: 4 }, 0.5, 4.2),
    pillar('c', { x: 4, y: 8 }, 0.5, 4.2),
    roundPillar('d', { x: 14, y: 8 }, 0.3, 4.2),
    pillar('e', { x: 9, y: 11.5 }, 1, 2),
    pillar('f', { x: 9, y: 0.3 }, 0.6, 3),
  ],
};

/** Two legs: x 0–18 for y 0–6, and x 0–8 for y 6–14. */
export const L_ROOM: RoomModel = {
  ...HALL,
  outline: [
    { x: 0, y: 0 },
    { x: 18, y: 0 },
    { x: 18, y: 6 },
    { x: 8, y: 6 },
    { x: 8, y: 14 },
    { x: 0, y: 14 },
  ],
  ceilingM: 3.5,
};

/** A lamp of the same intensity all round. */
export function evenLamp({ x, y, z }: Vec3, flux = 10_000): Lamp {
  const intensity = flux / (4 * Math.PI);
  return {
    x,
    y,
    z,
    radiusM: 0,
    flux,
    on(px, py, pz, nx, ny, nz) {
      const [dx, dy, dz] = [x - px, y - py, z - pz];
      const square = dx * dx + dy * dy + dz * dz;
      const arriving = nx * dx + ny * dy + nz * dz;
      return arriving > 0 ? (intensity * arriving) / (square * Math.sqrt(square)) : 0;
    },
    toward: (px, py, pz) => intensity / ((x - px) ** 2 + (y - py) ** 2 + (z - pz) ** 2),
  };
}

const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const reflectance = fc.double({ min: 0, max: 0.9, noNaN: true });

/** Room shapes of all kinds: box, L, turned trapezium, ridge tent, pyramid tent; with up to two tall things. */
const shapes = fc.record({
  w: share,
  d: share,
  kind: fc.constantFrom('box', 'l', 'skew', 'ridge', 'pyramid'),
});

function outlineFor(kind: string, widthM: number, depthM: number): Spot[] {
  if (kind === 'l') {
    return [
      { x: 0, y: 0 },
      { x: widthM, y: 0 },
      { x: widthM, y: 0.5 * depthM },
      { x: 0.6 * widthM, y: 0.5 * depthM },
      { x: 0.6 * widthM, y: depthM },
      { x: 0, y: depthM },
    ];
  }
  if (kind === 'skew') {
    return [
      { x: 0, y: 0.1 * depthM },
      { x: widthM, y: 0 },
      { x: 0.8 * widthM, y: depthM },
      { x: 0.2 * widthM, y: 0.9 * depthM },
    ];
  }
  return rectangle(widthM, depthM);
}

/** Lamps touching a wall, floor or thing are the limit that `lightRoom` states. */
const CLEAR_OF_SURFACES_M = 0.1;

function standsFree(room: RoomModel, at: Vec3): boolean {
  const wall = nearestOnOutline(room.outline, at);
  const away = room.blockers.map(({ outline }) => distanceToOutline(outline, at) ?? 0);
  const offWallM = wall ? distance(wall, at) : 0;
  return Math.min(at.z, room.ceilingM - at.z, offWallM, ...away) > CLEAR_OF_SURFACES_M;
}

/** Any room with a place for a lamp in it that has no problem. */
export const roomWithLamp = fc
  .record({
    shape: shapes,
    height: share,
    finishes: fc.record({ ceiling: reflectance, walls: reflectance, floor: reflectance }),
    things: fc.array(fc.record({ x: share, y: share, side: share, height: share, round: fc.boolean() }), {
      maxLength: 2,
    }),
    lamp: fc.record({ x: share, y: share, z: share }),
    ridgeDeg: fc.constantFrom(0, 90, 30),
  })
  .map(({ shape, height, finishes, things, lamp, ridgeDeg }) => {
    const [widthM, depthM, ceilingM] = [4 + 12 * shape.w, 4 + 12 * shape.d, 2.2 + 3 * height];
    const peakM = ceilingM + 2;
    const room: RoomModel = {
      outline: outlineFor(shape.kind, widthM, depthM),
      ceilingM,
      roof:
        shape.kind === 'ridge'
          ? { kind: 'ridge', peakM, ridgeDeg }
          : shape.kind === 'pyramid'
            ? { kind: 'pyramid', peakM }
            : { kind: 'flat' },
      finishes,
      blockers: things.map(({ x, y, side, height: up, round }, index) =>
        (round ? roundPillar : pillar)(`${index}`, { x: x * widthM, y: y * depthM }, 0.3 + side, 1 + 4 * up),
      ),
    };
    return { room, at: { x: lamp.x * widthM, y: lamp.y * depthM, z: lamp.z * ceilingM } };
  })
  .filter(({ room, at }) => lampProblem(room, at) === null && standsFree(room, at));
