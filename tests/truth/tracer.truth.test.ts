import { describe, expect, it } from 'vitest';
import { type Meter, straightOn, trace } from '../support/tracer.ts';
import { bareHead, disc, isotropic, panel } from '../support/tracer-lamp.ts';
import { facesOf, planAreaM2, type TracerRoom } from '../support/tracer-room.ts';
import { sceneOf, type Triple } from '../support/tracer-scene.ts';
import { expectClose } from './expect-close.ts';
import boxRooms from './fixtures/box-rooms.json' with { type: 'json' };
import cie from './fixtures/cie-171.json' with { type: 'json' };
import discs from './fixtures/disc.json' with { type: 'json' };
import points from './fixtures/point-sources.json' with { type: 'json' };

/** Chance alone exceeds four standard errors once in 16 000 estimates. */
const ERRORS = 4;

function box(
  lengthM: number,
  widthM: number,
  heightM: number,
  floor: number,
  ceiling = floor,
  walls = floor,
) {
  const outline = [[0, 0] as const, [lengthM, 0] as const, [lengthM, widthM] as const, [0, widthM] as const];
  return { outline, heightM, floor, ceiling, walls } satisfies TracerRoom;
}

const hall = sceneOf(facesOf(box(200, 200, 100, 0)));
const up: Triple = [0, 0, 1];

// The tracer is the measure of the room model, so it is itself measured first.
describe('the tracer against published values: straight from the lamp', () => {
  const { pointSource, areaSource, floorFactor, closedCavity } = cie;

  it.each(pointSource.rows)('CIE 171 5.2: point source, $x m and $y m aside', ({ x, y, lux }) => {
    // I = I0·cos θ is a disc too small to matter.
    const lamp = disc([100, 100, pointSource.heightM], [0, 0, -1], 1e-4, Math.PI * pointSource.axialCd);
    const got = straightOn(hall, lamp, { at: [100 + x, 100 + y, 0], normal: up });
    expectClose(got, lux, pointSource.printTolerance, 'lx');
  });

  it.each(areaSource.rows)('CIE 171 5.3: area source, $place at $at m', ({ place, at, exact }) => {
    const lamp = panel(
      [1.5, 1.5, 3],
      [
        [1, 0, 0],
        [0, 1, 0],
      ],
      [0, 0, -1],
      Math.PI * areaSource.axialCd,
    );
    const scene = sceneOf(facesOf(box(4, 4, 3, 0)));
    const meter: Meter =
      place === 'wall' ? { at: [2, 0, at], normal: [0, 1, 0] } : { at: [2, at, 0], normal: up };
    expectClose(straightOn(scene, lamp, meter) / exact, 1, 'three-digits', 'share');
  });

  it.each(floorFactor.rows)(
    'CIE 171 5.6: factor of the floor, $place at $at m',
    ({ place, at, factor100 }) => {
      const floor = panel(
        [0, 0, 0],
        [
          [4, 0, 0],
          [0, 4, 0],
        ],
        up,
        16,
      );
      const scene = sceneOf(facesOf(box(4, 4, 3, 0)));
      const meter: Meter =
        place === 'wall' ? { at: [2, 0, at], normal: [0, 1, 0] } : { at: [2, at, 3], normal: [0, 0, -1] };
      expectClose(100 * straightOn(scene, floor, meter), factor100, 'one-digit', 'factor');
    },
  );

  it.each(discs.factors)(
    'a disc of $radiusM m, $offsetM m aside',
    ({ offsetM, heightM, radiusM, factor }) => {
      const lamp = disc([100, 100, 50], [0, 0, -1], radiusM, Math.PI * radiusM * radiusM);
      const got = straightOn(hall, lamp, { at: [100 + offsetM, 100, 50 - heightM], normal: up });
      expectClose(got / factor, 1, 'one-percent', 'factor');
    },
  );

  it('textbook 49.1 and 49.3: a lamp up and aside, and a row of lamps', () => {
    const { lampUpAndAside: one, corridor } = points;
    const lamp = isotropic([100, 100, one.upM], one.lumens);
    expectClose(
      straightOn(hall, lamp, { at: [100 + one.asideM, 100, 0], normal: up }),
      one.lux,
      one.tolerance,
      'lx',
    );
    const lux = [-15, -5, 5, 15].map((x) =>
      straightOn(hall, isotropic([100 + x, 100, corridor.upM], 4 * Math.PI * corridor.candela), {
        at: [100, 100, 0],
        normal: up,
      }),
    );
    expectClose(
      lux.reduce((a, b) => a + b),
      corridor.lux,
      corridor.tolerance,
      'lx',
    );
  });

  it('CIE 171 5.8: a face in the middle and in its corner', () => {
    const scene = sceneOf(facesOf(box(4, 4, 4, 0)));
    const lamp = isotropic([2, 2, 2], closedCavity.lumens);
    const at = (x: number, y: number) => straightOn(scene, lamp, { at: [x, y, 0], normal: up });
    expectClose(at(2, 2), closedCavity.directFaceCentreLux, 'three-digits', 'middle');
    expectClose(at(0, 0), closedCavity.directCornerLux, 'three-digits', 'corner');
  });
});

describe('the tracer against published values: light that returns', () => {
  const { closedCavity } = cie;

  it.each(closedCavity.rows)('CIE 171 5.8: closed cavity, reflectance $reflectance', ({ reflectance }) => {
    const { lumens, sideM } = closedCavity;
    const scene = sceneOf(facesOf(box(sideM, sideM, sideM, reflectance)));
    const photons = reflectance > 0.85 ? 20_000 : 60_000;
    const result = trace(scene, isotropic([2, 2, 2], lumens), [], { photons, seed: 8 });
    const faces = [...result.surfaces.values()];
    const mean = faces.reduce((sum, { returned }) => sum + returned.mean, 0) / faces.length;
    const exact = (reflectance * lumens) / (6 * sideM * sideM * (1 - reflectance));
    expect(Math.abs(mean - exact)).toBeLessThanOrEqual(0.01 * exact);
  });

  it('CIE 171 5.8, derived: the middle of a face gets more than its mean, a corner less', () => {
    const { halfReflecting: half, lumens } = closedCavity;
    const scene = sceneOf(facesOf(box(4, 4, 4, half.reflectance)));
    const corner = half.nearCornerM;
    const meters: Meter[] = [
      { at: [2, 2, 0], normal: up },
      { at: [corner, corner, 0], normal: up },
    ];
    const [middle, aside] = trace(scene, isotropic([2, 2, 2], lumens), meters, {
      photons: 100_000,
      seed: 9,
    }).meters;
    expectClose((middle?.returned.mean ?? 0) / half.faceCentreLux, 1, 'one-percent', 'middle');
    expectClose((aside?.returned.mean ?? 0) / half.nearCornerLux, 1, 'about-corner', 'near the corner');
  });

  it.each(boxRooms.rooms)('$what', (room) => {
    const { lengthM, widthM, heightM, at, floor, ceiling, walls } = room;
    const scene = sceneOf(facesOf(box(lengthM, widthM, heightM, floor, ceiling, walls)));
    const lamp = isotropic(at as unknown as Triple, boxRooms.lumens);
    const { surfaces } = trace(scene, lamp, [], { photons: 200_000, seed: 10 });
    // Walls 0 to 3 of the tracer are y = 0, x = L, y = W, x = 0.
    ['floor', 'ceiling', 'wall 3', 'wall 1', 'wall 0', 'wall 2'].forEach((name, k) => {
      const traced = surfaces.get(name);
      expectClose(
        (traced?.direct.mean ?? 0) / (room.direct[k] ?? 0),
        1,
        boxRooms.tracerTolerance,
        `${name}, direct`,
      );
      expectClose((traced?.returned.mean ?? 0) / (room.returned[k] ?? 0), 1, boxRooms.tracerTolerance, name);
    });
  });
});

/** An L with a pillar to the ceiling and a low box: every way of hiding something. */
const crooked: TracerRoom = {
  outline: [
    [0, 0],
    [9, 0],
    [9, 4],
    [4, 4],
    [4, 10],
    [0, 10],
  ],
  heightM: 3,
  floor: 0.3,
  ceiling: 0.7,
  walls: 0.5,
  pillars: [
    {
      outline: [
        [5, 1],
        [5.6, 1],
        [5.6, 1.6],
        [5, 1.6],
      ],
      heightM: 3,
      reflectance: 0.4,
    },
    {
      outline: [
        [1, 6],
        [2.2, 6],
        [2.2, 7],
        [1, 7],
      ],
      heightM: 1.2,
      reflectance: 0.2,
    },
  ],
};

describe('the tracer against itself', () => {
  const axis: Triple = [-0.8, 0.6, 0];

  it('absorbs in the room all that the lamp gives, in a crooked room too', () => {
    const scene = sceneOf(facesOf(crooked));
    const lamp = bareHead([7, 2, 1.8], axis, 1000, 0.5);
    const { surfaces } = trace(scene, lamp, [], { photons: 100_000, seed: 11 });
    const absorbs: Record<string, number> = { floor: 0.7, ceiling: 0.3, 'blocker 0': 0.6, 'blocker 1': 0.8 };
    const taken = [...surfaces].reduce((sum, [name, { total }]) => {
      return sum + total.mean * (scene.areasM2[scene.surfaces.indexOf(name)] ?? 0) * (absorbs[name] ?? 0.5);
    }, 0);
    expect(Math.abs(taken / lamp.flux - 1)).toBeLessThan(0.005);
  });

  /** Middles of the cells of a grid over the crooked room's free floor. */
  function metersOnFloor(cells: number): Meter[] {
    return Array.from({ length: cells * cells }, (_, k): Meter => {
      const [x, y] = [(9 * ((k % cells) + 0.5)) / cells, (10 * (Math.floor(k / cells) + 0.5)) / cells];
      return { at: [x, y, 0], normal: up };
    }).filter(({ at: [x, y] }) => {
      const outside = x > 4 && y > 4;
      const onPillar = x > 5 && x < 5.6 && y > 1 && y < 1.6;
      const onBox = x > 1 && x < 2.2 && y > 6 && y < 7;
      return !outside && !onPillar && !onBox;
    });
  }

  it('counts on a partly hidden floor by photons what meters on it see', () => {
    const scene = sceneOf(facesOf(crooked));
    const lamp = bareHead([7, 2, 1.8], axis, 1000, 0.5);
    const byPhotons = trace(scene, lamp, [], { photons: 200_000, seed: 13 }).surfaces.get('floor');
    const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
    const direct = mean(metersOnFloor(150).map((meter) => straightOn(scene, lamp, meter)));
    const { meters } = trace(scene, lamp, metersOnFloor(37), { photons: 3000, seed: 12 });
    const returned = mean(meters.map((meter) => meter.returned.mean));
    expect(Math.abs(direct / (byPhotons?.direct.mean ?? 0) - 1)).toBeLessThan(0.01);
    expect(Math.abs(returned / (byPhotons?.returned.mean ?? 0) - 1)).toBeLessThan(0.03);
  });

  it('leaves dark what the lamp cannot see', () => {
    const scene = sceneOf(facesOf({ ...crooked, floor: 0, ceiling: 0, walls: 0, pillars: [] }));
    const { surfaces } = trace(scene, isotropic([8, 1, 1.5], 1000), [], { photons: 20_000, seed: 14 });
    // Wall 2 (from 9|4 to 4|4) faces the lamp, wall 3 round the corner (x = 4) does not.
    expect(surfaces.get('wall 2')?.total.mean).toBeGreaterThan(0);
    expect(surfaces.get('wall 3')?.total.mean).toBe(0);
  });

  it('states errors that hold', () => {
    const scene = sceneOf(facesOf(box(12, 8, 3, 0.2, 0.8, 0.5)));
    const lamp = isotropic([6, 4, 1.5], 10_000);
    const run = (photons: number, seed: number) => [
      ...trace(scene, lamp, [{ at: [3, 2, 1.6], normal: [1, 0, 0] }], { photons, seed }).surfaces.values(),
    ];
    const [rough, fine] = [run(8000, 15), run(400_000, 16)];
    rough.forEach(({ returned }, k) => {
      const away = Math.abs(returned.mean - (fine[k]?.returned.mean ?? 0));
      expect(returned.error).toBeGreaterThan(0);
      expect(away).toBeLessThan(ERRORS * returned.error);
      expect(fine[k]?.returned.error).toBeLessThan(returned.error / 3);
    });
  });

  it('sends out of a bare head what its beam holds', () => {
    // The integral of the beam in closed pieces: small steps by the trapezium rule, not the tracer's middles.
    const edge = 0.5;
    const steps = 40_000;
    const width = Math.PI / 2 / steps;
    let sum = 0;
    for (let k = 1; k < steps; k += 1) {
      const ratio = (k * width) / edge;
      const stops = ratio < 1 ? ratio ** 2 : 1 + 16 * (ratio - 1);
      sum += 2 ** -stops * Math.sin(k * width);
    }
    const flux = bareHead([0, 0, 0], up, 1, edge).flux;
    expectClose(flux / (2 * Math.PI * sum * width), 1, 'four-digits', 'flux');
  });

  it('knows the area of a floor without what stands on it', () => {
    const scene = sceneOf(facesOf(crooked));
    expect(planAreaM2(crooked.outline)).toBeCloseTo(60, 9);
    expect(scene.areasM2[scene.surfaces.indexOf('floor')]).toBeCloseTo(60 - 0.36 - 1.2, 9);
    expect(scene.areasM2[scene.surfaces.indexOf('ceiling')]).toBeCloseTo(60 - 0.36, 9);
    expect(scene.areasM2[scene.surfaces.indexOf('blocker 1')]).toBeCloseTo(1.2 + 4.4 * 1.2, 9);
  });
});
