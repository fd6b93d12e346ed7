import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains } from '../../../core/geometry/polygon.ts';
import { factorRoomAtOnce } from '../../../core/light/room/factor-room.ts';
import { gatherWeights, returnedAt } from '../../../core/light/room/gather.ts';
import { lightRoom } from '../../../core/light/room/light-room.ts';
import { plainOutline } from '../../../core/light/room/outline.ts';
import { createSight } from '../../../core/light/room/sight.ts';
import { evenLamp, FULL_HALL, HALL, L_ROOM, pillar, rectangle } from './rooms.ts';

const inHall = fc.record({
  x: fc.double({ min: 0.01, max: 17.9, noNaN: true }),
  y: fc.double({ min: 0.01, max: 13.9, noNaN: true }),
  z: fc.double({ min: 0.01, max: 3.4, noNaN: true }),
});

describe('sight', () => {
  it('is what walking along the line in small steps finds, except where it only grazes', () => {
    for (const room of [FULL_HALL, L_ROOM]) {
      const sight = createSight(room);
      const things = room.blockers.map((thing) => ({ ...thing, outline: plainOutline(thing.outline) }));
      fc.assert(
        fc.property(inHall, inHall, (a, b) => {
          fc.pre(contains(room.outline, a) && contains(room.outline, b));
          let stopped = 0;
          for (let k = 0; k <= 2000; k += 1) {
            const [x, y, z] = [a.x, a.y, a.z].map((value, axis) => {
              const end = [b.x, b.y, b.z][axis] ?? 0;
              return value + (k / 2000) * (end - value);
            }) as [number, number, number];
            const hit = things.some(({ outline, heightM }) => z < heightM && contains(outline, { x, y }));
            if (hit || !contains(room.outline, { x, y })) stopped += 1;
          }
          const clear = sight.clear(a.x, a.y, a.z, b.x, b.y, b.z);
          expect(sight.clear(b.x, b.y, b.z, a.x, a.y, a.z)).toBe(clear);
          if (stopped > 1) expect(clear).toBe(false);
          if (clear) expect(stopped).toBeLessThanOrEqual(1);
        }),
        { numRuns: 300, endOnFailure: true },
      );
    }
  });

  it('finds a thin screen between two points, sees over a low one, and along its own side', () => {
    const screen = { ...pillar('s', { x: 9, y: 6 }, 1, 2), outline: rectangle(0.02, 4, { x: 9, y: 4 }) };
    const sight = createSight({ ...HALL, blockers: [screen] });
    expect(sight.clear(5, 6, 1, 13, 6, 1)).toBe(false);
    expect(sight.clear(5, 6, 2.5, 13, 6, 2.5)).toBe(true);
    expect(sight.clear(9, 6, 1, 5, 6, 1)).toBe(true);
    expect(sight.clear(9, 6, 1, 13, 6, 1)).toBe(false);
  });

  it('lets nothing round the corner of an L but what the near leg returns', () => {
    const exchange = factorRoomAtOnce(L_ROOM, { mostPatches: 300 });
    const light = lightRoom(exchange, createSight(L_ROOM), evenLamp({ x: 16, y: 1, z: 1.5 }));
    const { count, centres } = exchange.patches;
    let hidden = 0;
    for (let i = 0; i < count; i += 1) {
      const [x = 0, y = 0] = centres.subarray(3 * i, 3 * i + 2);
      // Beyond the line from the lamp past the inner corner (8, 6).
      if (x > 3 || y < 12) continue;
      if (
        contains(
          [
            { x: 8, y: 6 },
            { x: 8, y: 14 },
            { x: -4.8, y: 14 },
          ],
          { x, y },
        )
      ) {
        hidden += 1;
        expect(light.direct[i]).toBe(0);
        expect(light.returned[i]).toBeGreaterThan(0);
      }
    }
    expect(hidden).toBeGreaterThan(3);
  });

  it('darkens a floor patch behind a pillar, and hardly one beside it', () => {
    const room = { ...HALL, blockers: [pillar('p', { x: 7, y: 6 }, 1, 4.2)] };
    const [free, stopped] = [HALL, room].map((one) => {
      const exchange = factorRoomAtOnce(one, { patchM: 1 });
      const light = lightRoom(exchange, createSight(one), evenLamp({ x: 4.5, y: 5.5, z: 1 }));
      return (x: number, y: number) => {
        const { centres, surfaces } = exchange.patches;
        const at = surfaces.findIndex(
          ({ kind }, i) =>
            kind === 'floor' &&
            Math.abs((centres[3 * i] ?? 0) - x) < 0.3 &&
            Math.abs((centres[3 * i + 1] ?? 0) - y) < 0.3,
        );
        return light.direct[at] ?? Number.NaN;
      };
    });
    expect(stopped?.(10.5, 6.5)).toBeLessThan(0.05 * (free?.(10.5, 6.5) ?? 0));
    expect(stopped?.(4.5, 9.5)).toBeCloseTo(free?.(4.5, 9.5) ?? 0, 6);
  });
});

describe('light from the room at points', () => {
  const room = { ...FULL_HALL, ceilingM: 4.2 };
  const exchange = factorRoomAtOnce(room, { mostPatches: 300 });
  const sight = createSight(room);

  it('weights sum to 1 wherever one is in the room, and to 0 outside and inside things', () => {
    const points = [
      { x: 1, y: 1, z: 1.6 },
      { x: 9, y: 6, z: 0.02 },
      { x: 4, y: 4, z: 2 },
      { x: 40, y: 6, z: 1 },
    ];
    for (const normals of [null, points.map(() => ({ x: 0, y: 0, z: 1 }))]) {
      const weights = gatherWeights(exchange, sight, points, normals);
      const { count } = exchange.patches;
      const sums = points.map((_, k) =>
        weights.subarray(k * count, (k + 1) * count).reduce((a, b) => a + b, 0),
      );
      expect(sums[0]).toBeCloseTo(1, 12);
      expect(sums[1]).toBeCloseTo(1, 12);
      expect(sums.slice(2)).toEqual([0, 0]);
    }
  });

  /** CIE 171:2006, test 5.8 geometry, reflectance 0.5: at a face's centre 112.0 lx, within 0.15 m of a corner about
   * 75 lx (our own exact solution; the closed-cavity formula gives the mean only). In the corner half-metre patches, even each, are worth
   * no more than 10 %. */
  it('is more in the middle of a face than in its corner: 112.0 and about 75 lx', () => {
    const cube = {
      ...HALL,
      outline: rectangle(4, 4),
      ceilingM: 4,
      finishes: { ceiling: 0.5, walls: 0.5, floor: 0.5 },
    };
    const cavity = factorRoomAtOnce(cube);
    const open = createSight(cube);
    const { exitance } = lightRoom(cavity, open, evenLamp({ x: 2, y: 2, z: 2 }));
    const up = { x: 0, y: 0, z: 1 };
    expect(Math.abs(returnedAt(cavity, open, exitance, { x: 2, y: 2, z: 0 }, up) / 112 - 1)).toBeLessThan(
      0.01,
    );
    expect(Math.abs(returnedAt(cavity, open, exitance, { x: 0.1, y: 0.1, z: 0 }, up) / 75 - 1)).toBeLessThan(
      0.1,
    );
  });

  it('is what the patches themselves get, at their centres', () => {
    const hall = factorRoomAtOnce(HALL);
    const open = createSight(HALL);
    const light = lightRoom(hall, open, evenLamp({ x: 5, y: 5, z: 2 }));
    const { centres, normals, count } = hall.patches;
    for (let i = 0; i < count; i += 7) {
      const [x = 0, y = 0, z = 0] = centres.subarray(3 * i, 3 * i + 3);
      const [nx = 0, ny = 0, nz = 0] = normals.subarray(3 * i, 3 * i + 3);
      const here = returnedAt(hall, open, light.exitance, { x, y, z }, { x: nx, y: ny, z: nz });
      expect(Math.abs(here / (light.returned[i] ?? 0) - 1)).toBeLessThan(0.06);
    }
  });
});
