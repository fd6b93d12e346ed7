import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaOf, edgesOf } from '../../../core/geometry/polygon.ts';
import { rotate, type Spot } from '../../../core/geometry/spot.ts';
import { factorRoomAtOnce } from '../../../core/light/room/factor-room.ts';
import { FINISHES } from '../../../core/light/room/finishes.ts';
import { lightRoom } from '../../../core/light/room/light-room.ts';
import { cutIntoPatches } from '../../../core/light/room/patches.ts';
import { roofHeightM } from '../../../core/light/room/roof.ts';
import type { RoomModel } from '../../../core/light/room/room-model.ts';
import { createSight } from '../../../core/light/room/sight.ts';
import { evenLamp, FULL_HALL, HALL, L_ROOM, pillar, roomWithLamp } from './rooms.ts';

function areaWhere(room: RoomModel, kind: string): number {
  const { areas, surfaces } = cutIntoPatches(room, 1);
  return areas.reduce((sum, area, i) => sum + (surfaces[i]?.kind === kind ? area : 0), 0);
}

const perimeter = (outline: readonly Spot[]) =>
  edgesOf(outline).reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);

describe('patches of a room', () => {
  it('cover floor, ceiling and walls of a flat room exactly, of any outline', () => {
    for (const room of [HALL, L_ROOM]) {
      expect(areaWhere(room, 'floor')).toBeCloseTo(areaOf(room.outline), 9);
      expect(areaWhere(room, 'ceiling')).toBeCloseTo(areaOf(room.outline), 9);
      expect(areaWhere(room, 'wall')).toBeCloseTo(perimeter(room.outline) * room.ceilingM, 9);
    }
  });

  it('close the room: areas times normals sum to nothing, as round any body', () => {
    fc.assert(
      fc.property(roomWithLamp, ({ room }) => {
        const { areas, normals } = cutIntoPatches({ ...room, blockers: [] }, 1);
        for (const axis of [0, 1, 2]) {
          const sum = areas.reduce((total, area, i) => total + area * (normals[3 * i + axis] ?? 0), 0);
          expect(Math.abs(sum)).toBeLessThan(0.02);
        }
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  it('leave out what stands on the floor, up to the roof, or against a wall', () => {
    const pillarArea = 3 * 0.25;
    const column = areaOf(FULL_HALL.blockers[3]?.outline ?? []);
    const low = 1 + 0.36;
    // Covered parts of patches are counted in 256ths: within 0.1 m² of 216.
    expect(Math.abs(areaWhere(FULL_HALL, 'ceiling') - (216 - pillarArea - column))).toBeLessThan(0.1);
    expect(Math.abs(areaWhere(FULL_HALL, 'floor') - (216 - pillarArea - column - low))).toBeLessThan(0.1);
    // The screen e hides 1 m of the wall up to 2 m, the screen f 0.6 m up to 3 m.
    expect(areaWhere(FULL_HALL, 'wall')).toBeCloseTo(60 * 4.2 - 1 * 2 - 0.6 * 3, 6);
  });

  it('have corners in order about normals that look into the room', () => {
    fc.assert(
      fc.property(roomWithLamp, ({ room }) => {
        const { count, corners, normals, centres } = cutIntoPatches({ ...room, blockers: [] }, 1.5);
        for (let i = 0; i < count; i += 1) {
          const c = [...(corners[i] ?? [])];
          const [ux, uy, uz] = [0, 1, 2].map((k) => (c[3 + k] ?? 0) - (c[k] ?? 0)) as [
            number,
            number,
            number,
          ];
          const [vx, vy, vz] = [0, 1, 2].map((k) => (c[6 + k] ?? 0) - (c[3 + k] ?? 0)) as [
            number,
            number,
            number,
          ];
          const [nx, ny, nz] = [0, 1, 2].map((k) => normals[3 * i + k] ?? 0) as [number, number, number];
          expect(
            (uy * vz - uz * vy) * nx + (uz * vx - ux * vz) * ny + (ux * vy - uy * vx) * nz,
          ).toBeGreaterThan(0);
          const inward = { x: (centres[3 * i] ?? 0) + 0.01 * nx, y: (centres[3 * i + 1] ?? 0) + 0.01 * ny };
          const z = (centres[3 * i + 2] ?? 0) + 0.01 * nz;
          expect(z > 0 && z < roofHeightM(room, inward)).toBe(true);
        }
      }),
      { numRuns: 40, endOnFailure: true },
    );
  });
});

describe('roofs', () => {
  it('a ridge falls evenly from the middle to the walls along it, and the gables go up', () => {
    const tent: RoomModel = { ...HALL, ceilingM: 2.4, roof: { kind: 'ridge', peakM: 5.4, ridgeDeg: 90 } };
    expect(roofHeightM(tent, { x: 2, y: 6 })).toBeCloseTo(5.4, 9);
    expect(roofHeightM(tent, { x: 2, y: 3 })).toBeCloseTo(3.9, 9);
    expect(roofHeightM(tent, { x: 2, y: 12 })).toBeCloseTo(2.4, 9);
    // Long walls 2 × 18 × 2.4, gables 2 × 12 × (2.4 + 3/2), slopes 2 × 18 × √(6² + 3²).
    expect(areaWhere(tent, 'wall')).toBeCloseTo(86.4 + 93.6, 6);
    expect(areaWhere(tent, 'ceiling')).toBeCloseTo(36 * Math.hypot(6, 3), 6);
  });

  it('a pyramid falls evenly to every wall', () => {
    const tent: RoomModel = { ...HALL, ceilingM: 2.4, roof: { kind: 'pyramid', peakM: 5.4 } };
    expect(roofHeightM(tent, { x: 9, y: 6 })).toBeCloseTo(5.4, 9);
    expect(roofHeightM(tent, { x: 9, y: 3 })).toBeCloseTo(3.9, 9);
    expect(roofHeightM(tent, { x: 18, y: 1 })).toBeCloseTo(2.4, 9);
    expect(areaWhere(tent, 'ceiling')).toBeCloseTo(18 * Math.hypot(6, 3) + 12 * Math.hypot(9, 3), 1);
  });
});

describe('a room turned or mirrored', () => {
  const turnings: [string, (spot: Spot) => Spot][] = [
    ['turned by 37°', (spot) => rotate(spot, 37)],
    ['mirrored', ({ x, y }) => ({ x: -x, y })],
    ['far from the origin', ({ x, y }) => ({ x: x + 500, y: y - 300 })],
  ];

  it.each(turnings)('%s takes as much light on its floor, walls and ceiling', (_, moved) => {
    const totals = [(spot: Spot) => spot, moved].map((map) => {
      const room: RoomModel = {
        ...L_ROOM,
        outline: L_ROOM.outline.map(map),
        blockers: [pillar('a', { x: 5, y: 3 }, 0.6, 2)].map((thing) => ({
          ...thing,
          outline: thing.outline.map(map),
        })),
      };
      const exchange = factorRoomAtOnce(room, { patchM: 1.2 });
      const light = lightRoom(exchange, createSight(room), evenLamp({ ...map({ x: 2, y: 2 }), z: 1.7 }));
      return ['floor', 'wall', 'ceiling', 'blocker'].map((kind) =>
        light.exitance.reduce(
          (sum, value, i) =>
            exchange.patches.surfaces[i]?.kind === kind
              ? sum + value * (exchange.patches.areas[i] ?? 0)
              : sum,
          0,
        ),
      );
    });
    for (const [k, total] of (totals[0] ?? []).entries()) {
      expect(Math.abs((totals[1]?.[k] ?? 0) / total - 1)).toBeLessThan(0.01);
    }
  });
});

describe('finishes', () => {
  it('have names of their own and reflectances that a room may have', () => {
    expect(new Set(FINISHES.map(({ name }) => name)).size).toBe(FINISHES.length);
    for (const { reflectance } of FINISHES) expect(reflectance > 0 && reflectance <= 0.95).toBe(true);
  });
});
