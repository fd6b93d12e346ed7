import { describe, expect, it } from 'vitest';
import { discLamp } from '../../core/light/lamps/disc-lamp.ts';
import { lambertLobe } from '../../core/light/lamps/lobe.ts';
import type { LampLight, RoomExchange, Surface } from '../../core/light/room/exchange.ts';
import { factorRoom, factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { pointFactor, polygonViewFactor } from '../../core/light/room/form-factor.ts';
import { returnedAt } from '../../core/light/room/gather.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { randomRoom } from '../support/random-room.ts';
import { coreLampOf } from '../support/tracer-core-lamp.ts';
import { isotropic } from '../support/tracer-lamp.ts';
import type { Triple } from '../support/tracer-scene.ts';
import { expectClose } from './expect-close.ts';
import boxRooms from './fixtures/box-rooms.json' with { type: 'json' };
import cavities from './fixtures/cavity-reflectance.json' with { type: 'json' };
import cie from './fixtures/cie-171.json' with { type: 'json' };
import points from './fixtures/point-sources.json' with { type: 'json' };
import factors from './fixtures/view-factors.json' with { type: 'json' };

type Size = { readonly widthM: number; readonly depthM: number; readonly heightM: number };

function boxRoom(
  { widthM, depthM, heightM }: Size,
  floor: number,
  ceiling = floor,
  walls = floor,
): RoomModel {
  return {
    outline: [
      { x: 0, y: 0 },
      { x: widthM, y: 0 },
      { x: widthM, y: depthM },
      { x: 0, y: depthM },
    ],
    ceilingM: heightM,
    roof: { kind: 'flat' },
    finishes: { ceiling, walls, floor },
    blockers: [],
  };
}

function factored(room: RoomModel, patchM: number): RoomExchange {
  const work = factorRoom(room, { patchM });
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

function isotropicLight(exchange: RoomExchange, at: Triple, lumens: number): LampLight {
  return lightRoom(exchange, createSight(exchange.room), coreLampOf(isotropic(at, lumens), 0));
}

function sum(count: number, of: (index: number) => number): number {
  return Array.from({ length: count }, (_, index) => of(index)).reduce((a, b) => a + b, 0);
}

/** Area-weighted mean over the patches that belong. */
function meanOver(
  { patches }: RoomExchange,
  values: Float64Array,
  belongs: (surface: Surface) => boolean,
): number {
  const share = (index: number) =>
    belongs(patches.surfaces[index] ?? { kind: 'floor' }) ? (patches.areas[index] ?? 0) : 0;
  const light = sum(patches.count, (index) => share(index) * (values[index] ?? 0));
  return light / sum(patches.count, share);
}

describe('light straight from a lamp against CIE 171 and textbooks', () => {
  const { pointSource, areaSource, conservation } = cie;

  it.each(pointSource.rows)('5.2: point source, $x m and $y m aside', ({ x, y, lux }) => {
    const lamp = discLamp({
      at: { x: 0, y: 0, z: pointSource.heightM },
      axis: { x: 0, y: 0, z: -1 },
      radiusM: 0,
      front: lambertLobe(Math.PI * pointSource.axialCd),
    });
    expectClose(lamp.on(x, y, 0, 0, 0, 1) / lux, 1, pointSource.tolerance, 'share');
  });

  it.each(areaSource.rows)('5.3: area source as one piece, $place at $at m', (row) => {
    const [px, py, pz, nx, ny, nz] = row.place === 'wall' ? [2, 0, row.at, 0, 1, 0] : [2, row.at, 0, 0, 0, 1];
    const panel = [1.5, 1.5, 3, 1.5, 2.5, 3, 2.5, 2.5, 3, 2.5, 1.5, 3];
    const lux = Math.PI * areaSource.axialCd * pointFactor(px, py, pz, nx, ny, nz, panel);
    expectClose(lux / row.exact, 1, 'four-digits', 'share of the exact row');
    expectClose(lux / row.printed, 1, areaSource.printedTolerance, 'share of the printed row');
  });

  it('5.3: area source as patches of a room', () => {
    const exchange = factored(boxRoom(areaSource.room, 0), 0.5);
    const { patches } = exchange;
    const exitance = Float64Array.from({ length: patches.count }, (_, index) => {
      const [x, y] = [patches.centres[3 * index] ?? 0, patches.centres[3 * index + 1] ?? 0];
      const inPanel = Math.abs(x - 2) < areaSource.sideM / 2 && Math.abs(y - 2) < areaSource.sideM / 2;
      return inPanel && patches.surfaces[index]?.kind === 'ceiling' ? Math.PI * areaSource.axialCd : 0;
    });
    const sight = createSight(exchange.room);
    for (const { place, at, exact } of areaSource.rows) {
      const point = place === 'wall' ? { x: 2, y: 0, z: at } : { x: 2, y: at, z: 0 };
      const normal = place === 'wall' ? { x: 0, y: 1, z: 0 } : { x: 0, y: 0, z: 1 };
      const lux = returnedAt(exchange, sight, exitance, point, normal);
      expectClose(lux / exact, 1, areaSource.tolerance, `${place} at ${at} m`);
    }
  });

  it('5.4: all the light of an isotropic source lands in a black room', () => {
    const exchange = factorRoomAtOnce(boxRoom(conservation.room, 0));
    for (const at of [
      [2, 2, 1.5],
      [0.7, 3.2, 2.3],
    ] as const) {
      const { direct } = isotropicLight(exchange, at, conservation.lumens);
      const landed = sum(exchange.patches.count, (i) => (direct[i] ?? 0) * (exchange.patches.areas[i] ?? 0));
      expectClose(landed / conservation.lumens, 1, 'one-percent', `light from ${at.join(', ')}`);
    }
  });

  it('textbook 49.1 to 49.3: a lamp up and aside, the distance of a tenth, a row of lamps', () => {
    const { lampUpAndAside: one, tenthDistance: tenth, corridor } = points;
    const lamp = coreLampOf(isotropic([0, 0, one.upM], one.lumens), 0);
    expectClose(lamp.on(one.asideM, 0, 0, 0, 0, 1), one.lux, one.tolerance, 'lx');
    const high = coreLampOf(isotropic([0, 0, tenth.upM], 1000), 0);
    const share = high.on(tenth.distanceM, 0, 0, 0, 0, 1) / high.on(0, 0, 0, 0, 0, 1);
    expectClose(share, 0.1, 'four-digits', 'share');
    const candela = 4 * Math.PI * corridor.candela;
    const row = [-1.5, -0.5, 0.5, 1.5].map((k) =>
      coreLampOf(isotropic([k * corridor.apartM, 0, corridor.upM], candela), 0).on(0, 0, 0, 0, 0, 1),
    );
    expectClose(
      row.reduce((a, b) => a + b),
      corridor.lux,
      corridor.tolerance,
      'lx',
    );
  });
});

describe('light from surface to surface against published factors', () => {
  it.each(factors.pairs)('view factor: $what', ({ first, second, factor }) => {
    const value = polygonViewFactor(first.flat(), second.flat(), 16);
    expectClose(value / factor, 1, factors.tolerance, 'share');
  });

  it.each(cie.floorFactor.rows)('CIE 171 5.6, scenario 2: the floor as one piece, $place at $at m', (row) => {
    const [px, py, pz, nx, ny, nz] =
      row.place === 'wall' ? [2, 0, row.at, 0, 1, 0] : [2, row.at, 3, 0, 0, -1];
    const floor = [0, 0, 0, 4, 0, 0, 4, 4, 0, 0, 4, 0];
    const value = 100 * pointFactor(px, py, pz, nx, ny, nz, floor);
    expectClose(value, row.factor100, cie.floorFactor.tolerance, 'factor × 100');
  });

  it('CIE 171 5.6, scenario 2: the floor as patches of a room', () => {
    const { floorFactor } = cie;
    const exchange = factorRoomAtOnce(boxRoom(floorFactor.room, 0.3));
    const exitance = Float64Array.from(exchange.patches.surfaces, ({ kind }) => (kind === 'floor' ? 100 : 0));
    const sight = createSight(exchange.room);
    for (const { place, at, factor100 } of floorFactor.rows) {
      const point = place === 'wall' ? { x: 2, y: 0, z: at } : { x: 2, y: at, z: 3 };
      const normal = place === 'wall' ? { x: 0, y: 1, z: 0 } : { x: 0, y: 0, z: -1 };
      const value = returnedAt(exchange, sight, exitance, point, normal);
      expectClose(value / factor100, 1, 'one-percent', `${place} at ${at} m`);
    }
  });

  it.each(cavities.rows)('IESNA: effective reflectance of a cavity of ratio $ratio', ({ ratio, percent }) => {
    const side = 6;
    cavities.columns.forEach((column, k) => {
      const [base, walls] = column.split('/').map((text) => Number(text) / 100) as [number, number];
      const size = { widthM: side, depthM: side, heightM: (ratio * side) / 10 };
      // The ceiling is the opening: even diffuse light comes in through it, and what reaches it is out.
      const exchange = factored(boxRoom(size, base, 0, walls), 1.5);
      const got = openingReflectance(exchange);
      expectClose(100 * got, percent[k] ?? Number.NaN, cavities.tolerance, column);
    });
  });
});

/** Share of even diffuse light through the ceiling of a room that comes back out there. */
function openingReflectance({ patches, formFactors, response }: RoomExchange): number {
  const { count, areas, surfaces } = patches;
  const all = Array.from({ length: count }, (_, index) => index);
  const opening = all.filter((index) => surfaces[index]?.kind === 'ceiling');
  const entering = all.map((i) => opening.reduce((light, j) => light + (formFactors[i * count + j] ?? 0), 0));
  const exitance = all.map((i) =>
    all.reduce((m, j) => m + (response[i * count + j] ?? 0) * (entering[j] ?? 0), 0),
  );
  const leaving = opening.reduce((flux, j) => {
    const onIt = all.reduce((e, i) => e + (formFactors[j * count + i] ?? 0) * (exitance[i] ?? 0), 0);
    return flux + onIt * (areas[j] ?? 0);
  }, 0);
  return leaving / opening.reduce((area, j) => area + (areas[j] ?? 0), 0);
}

describe('light that the room returns', () => {
  const { closedCavity } = cie;
  const cube = { widthM: closedCavity.sideM, depthM: closedCavity.sideM, heightM: closedCavity.sideM };

  it.each(closedCavity.rows)(
    'CIE 171 5.8: closed cavity, reflectance $reflectance',
    ({ reflectance, lux }) => {
      const exchange = factorRoomAtOnce(boxRoom(cube, reflectance));
      const light = isotropicLight(exchange, [2, 2, 2], closedCavity.lumens);
      const returned = meanOver(exchange, light.returned, () => true);
      const direct = meanOver(exchange, light.direct, () => true);
      if (lux === 0) expect(returned).toBe(0);
      else expectClose(returned / lux, 1, closedCavity.tolerance, 'returned, mean');
      expectClose(direct / closedCavity.directMeanLux, 1, 'one-percent', 'direct, mean');
    },
  );

  it('CIE 171 5.8, derived: the middle of a face gets more than the mean, its corner less', () => {
    const { halfReflecting: half, lumens } = closedCavity;
    const exchange = factorRoomAtOnce(boxRoom(cube, half.reflectance));
    const { exitance } = isotropicLight(exchange, [2, 2, 2], lumens);
    const sight = createSight(exchange.room);
    const at = (xy: number) =>
      returnedAt(exchange, sight, exitance, { x: xy, y: xy, z: 0 }, { x: 0, y: 0, z: 1 });
    expectClose(at(2) / half.faceCentreLux, 1, 'patch-average', 'middle');
    expectClose(at(half.nearCornerM) / half.nearCornerLux, 1, 'about-corner', 'corner');
  });

  it('a closed box of one finish: emission 64, albedo 128/255', () => {
    // Every patch sends out 64 of its own; what it sends out in all is the response to that light.
    const { emission, albedo, radiance, tolerance } = points.box;
    const exchange = factorRoomAtOnce(boxRoom(cube, albedo));
    const { response, patches } = exchange;
    for (let i = 0; i < patches.count; i += 1) {
      const row = response.subarray(i * patches.count, (i + 1) * patches.count);
      // A patch of exitance 64 is one on which 64/albedo falls.
      const exitance = row.reduce((m, value) => m + (value * emission) / albedo, 0);
      expectClose(exitance / radiance, 1, tolerance, `patch ${i}`);
    }
  });

  it.each(boxRooms.rooms)('$what: mean over each surface', (room) => {
    const size = { widthM: room.lengthM, depthM: room.widthM, heightM: room.heightM };
    const exchange = factorRoomAtOnce(boxRoom(size, room.floor, room.ceiling, room.walls));
    const light = isotropicLight(exchange, room.at as unknown as Triple, boxRooms.lumens);
    const wall = (k: number) => (surface: Surface) => surface.kind === 'wall' && surface.wall === k;
    const kind = (name: string) => (surface: Surface) => surface.kind === name;
    // Walls 0 to 3 are y = 0, x = L, y = W, x = 0.
    const order = [kind('floor'), kind('ceiling'), wall(3), wall(1), wall(0), wall(2)];
    order.forEach((belongs, k) => {
      const direct = meanOver(exchange, light.direct, belongs) / (room.direct[k] ?? 0);
      const returned = meanOver(exchange, light.returned, belongs) / (room.returned[k] ?? 0);
      expectClose(direct, 1, boxRooms.tolerance, `direct, surface ${k}`);
      expectClose(returned, 1, boxRooms.tolerance, `returned, surface ${k}`);
    });
  });

  it('absorbs what the lamp gives and no more, in rooms of any shape and finish', () => {
    // Energy balance: Σ (1 − ρ)·E·A is what fell on the room straight from the lamp.
    for (const [shape, seed] of [
      ['convex', 1],
      ['angled', 2],
      ['horseshoe', 3],
      ['pillars', 4],
      ['tent', 5],
    ] as const) {
      const exchange = factorRoomAtOnce(randomRoom(shape, 'isotropic', seed).model);
      const { patches } = exchange;
      const { lamp, coreLamp } = randomRoom(shape, 'isotropic', seed);
      const light = lightRoom(exchange, createSight(exchange.room), coreLamp);
      const area = (i: number) => patches.areas[i] ?? 0;
      const straight = sum(patches.count, (i) => (light.direct[i] ?? 0) * area(i));
      const absorbed = sum(patches.count, (i) => {
        return (
          (1 - (patches.reflectances[i] ?? 0)) * ((light.direct[i] ?? 0) + (light.returned[i] ?? 0)) * area(i)
        );
      });
      expectClose(absorbed / straight, 1, 'exact', `${shape}: absorbed`);
      expectClose(straight / lamp.flux, 1, 'one-percent', `${shape}: straight from the lamp`);
    }
  });

  it('integrating sphere: a closed room of one finish multiplies light by ρ/(1 − ρ), whatever its shape', () => {
    for (const { reflectance, multiplier } of points.sphere) {
      const { model, coreLamp } = randomRoom('angled', 'isotropic', 6);
      const finishes = { ceiling: reflectance, walls: reflectance, floor: reflectance };
      const exchange = factorRoomAtOnce({ ...model, finishes });
      const light = lightRoom(exchange, createSight(exchange.room), coreLamp);
      const share =
        meanOver(exchange, light.returned, () => true) / meanOver(exchange, light.direct, () => true);
      expectClose(share / multiplier, 1, 'four-digits', 'multiplier');
    }
  });
});
