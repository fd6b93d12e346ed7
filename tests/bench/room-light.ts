import type { Lamp } from '../../core/light/lamp.ts';
import { bareLamp } from '../../core/light/lamps/bare-lamp.ts';
import type { LampLight, RoomExchange } from '../../core/light/room/exchange.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { gatherWeights } from '../../core/light/room/gather.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import { createSight, type Sight } from '../../core/light/room/sight.ts';
import { type Meter, trace } from '../support/tracer.ts';
import { seededChance } from '../support/tracer-chance.ts';
import { bareHead, type TracerLamp } from '../support/tracer-lamp.ts';
import { facesOf } from '../support/tracer-room.ts';
import { type Scene, sceneOf, type Triple } from '../support/tracer-scene.ts';
import { spread, spreadLine } from './percentiles.ts';

const SIZE = { lengthM: 20, widthM: 14, heightM: 5 } as const;
const FINISHES = { ceiling: 0.7, walls: 0.5, floor: 0.2 } as const;
const HEAD = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 } as const;
const UPDATES = 200;
const WARM_UP = 50;
const FACTORINGS = 5;
/** Lights over which the deviations are taken together. */
const JUDGED = 3;
const BATCHES = 16;
const REFERENCE_PHOTONS = 800_000;
const TIMED_PHOTONS = 100_000;

const CORNERS = [
  [0, 0],
  [SIZE.lengthM, 0],
  [SIZE.lengthM, SIZE.widthM],
  [0, SIZE.widthM],
] as const;

/** Of the table that finds the patch under a photon [m]. */
const CELL_M = 0.02;

/** Six faces across the room, at 1.6 m. */
const METERS: readonly Meter[] = Array.from({ length: 6 }, (_, k) => ({
  at: [3 + 5.5 * (k % 3), 4 + 6 * Math.floor(k / 3), 1.6],
  normal: [Math.cos(k), Math.sin(k), 0],
}));

export type RoomLightFigures = {
  readonly patches: number;
  /** Median of five [ms] */
  readonly factorMs: number;
  /** Medians of 200: all patches after one light moved, and the six points as well [ms] */
  readonly updateMs: number;
  readonly updateWithPointsMs: number;
  /** Root mean square of the model's relative deviation: returned light at six points, all light on all patches */
  readonly deviationAtPoints: number;
  readonly deviationOnPatches: number;
  /**
   * What the Monte Carlo would take to be as sure of the same [ms]: measured at 100 000 photons, stretched by
   * (standard error / deviation)², since errors fall as 1/√n.
   */
  readonly monteCarloMsAtEqualError: number;
  readonly monteCarloMsOnPatches: number;
  /** Monte Carlo time over update time */
  readonly ratio: number;
  readonly ratioOnPatches: number;
};

type Light = { readonly core: Lamp; readonly traced: TracerLamp };

function lightsFrom(seed: number): () => Light {
  const chance = seededChance(seed);
  return () => {
    const at: Triple = [
      1 + (SIZE.lengthM - 2) * chance(),
      1 + (SIZE.widthM - 2) * chance(),
      1 + 2 * chance(),
    ];
    const [facing, tilt] = [2 * Math.PI * chance(), 0.6 * chance() - 0.2];
    const axis: Triple = [
      Math.sin(facing) * Math.cos(tilt),
      -Math.cos(facing) * Math.cos(tilt),
      -Math.sin(tilt),
    ];
    const degrees = 180 / Math.PI;
    const place = { x: at[0], y: at[1], z: at[2] };
    return {
      core: bareLamp(HEAD, place, facing * degrees, tilt * degrees),
      traced: bareHead(at, axis, 2.5 * HEAD.guideNumberM ** 2, Math.atan(Math.hypot(18, 12) / HEAD.zoomMm)),
    };
  };
}

function timed<T>(work: () => T): { readonly ms: number; readonly value: T } {
  const start = performance.now();
  const value = work();
  return { ms: performance.now() - start, value };
}

const medianOf = (values: readonly number[]): number => spread(values).p50;
const meanSquare = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0) / values.length;

/** Finds the patch of a box room that a photon landed on: of those that face the same way, the nearest. */
type PatchFinder = (face: number, place: Float64Array) => number;

function patchFinder({ patches }: RoomExchange, scene: Scene): PatchFinder {
  const onFace = Array.from({ length: scene.count }, (_, face) => {
    const same = (axis: number, index: number) =>
      Math.abs((scene.normals[3 * face + axis] ?? 0) - (patches.normals[3 * index + axis] ?? 0)) < 1e-6;
    return Int32Array.from({ length: patches.count }, (_, index) => index).filter((index) =>
      [0, 1, 2].every((axis) => same(axis, index)),
    );
  });
  const { centres } = patches;
  const nearest = (face: number, place: readonly number[]): number => {
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    for (const index of onFace[face] ?? []) {
      const dx = (centres[3 * index] as number) - (place[0] as number);
      const dy = (centres[3 * index + 1] as number) - (place[1] as number);
      const dz = (centres[3 * index + 2] as number) - (place[2] as number);
      const square = dx * dx + dy * dy + dz * dz;
      if (square < least) [best, least] = [index, square];
    }
    return best;
  };
  // Asked millions of times: looked up in cells of 2 cm, far smaller than a patch.
  const known = new Map<number, number>();
  const cell = (at: number | undefined) => Math.floor((at ?? 0) / CELL_M + 1e-6);
  return (face, place) => {
    const [i, j, k] = [cell(place[0]), cell(place[1]), cell(place[2])];
    const key = ((face * 2048 + i) * 2048 + j) * 2048 + k;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = nearest(face, [(i + 0.5) * CELL_M, (j + 0.5) * CELL_M, (k + 0.5) * CELL_M]);
    known.set(key, found);
    return found;
  };
}

/** Relative standard errors on all patches and their means, from one run of the tracer. */
function tracePatches(
  exchange: RoomExchange,
  scene: Scene,
  find: PatchFinder,
  lamp: TracerLamp,
  photons: number,
  seed: number,
) {
  const { count, areas } = exchange.patches;
  const tallies = Array.from({ length: BATCHES }, () => new Float64Array(count));
  const landed = (batch: number, face: number, place: Float64Array, weight: number) => {
    const tally = tallies[batch] as Float64Array;
    const index = find(face, place);
    tally[index] = (tally[index] as number) + weight;
  };
  trace(scene, lamp, [], { photons, seed, batches: BATCHES, landed });
  const scale = lamp.flux / Math.ceil(photons / BATCHES);
  return Array.from({ length: count }, (_, index) => {
    const values = tallies.map((tally) => ((tally[index] ?? 0) * scale) / (areas[index] ?? 1));
    const mean = values.reduce((sum, value) => sum + value, 0) / BATCHES;
    const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return { mean, error: Math.sqrt(square / (BATCHES - 1) / BATCHES) / mean };
  });
}

function pointsOf(weights: Float64Array, { exitance }: LampLight): number[] {
  return METERS.map((_, k) =>
    exitance.reduce((sum, m, j) => sum + m * (weights[k * exitance.length + j] ?? 0), 0),
  );
}

type Judged = { readonly deviation: number; readonly error: number; readonly ms: number };

/** Mean squares of the model's deviation and of the tracer's error at six points, the reference's noise taken off. */
function judgePoints(
  exchange: RoomExchange,
  sight: Sight,
  scene: Scene,
  weights: Float64Array,
  light: Light,
): Judged {
  const got = pointsOf(weights, lightRoom(exchange, sight, light.core));
  const reference = trace(scene, light.traced, METERS, { photons: REFERENCE_PHOTONS, seed: 71 }).meters;
  const run = timed(() => trace(scene, light.traced, METERS, { photons: TIMED_PHOTONS, seed: 72 }).meters);
  const noise = meanSquare(reference.map(({ returned }) => returned.error / returned.mean));
  const away = meanSquare(got.map((value, k) => value / (reference[k]?.returned.mean ?? 1) - 1));
  return {
    deviation: Math.max(away - noise, 0),
    error: meanSquare(run.value.map(({ returned }) => returned.error / returned.mean)),
    ms: run.ms,
  };
}

/** The same for all light on every patch. */
function judgePatches(exchange: RoomExchange, sight: Sight, scene: Scene, light: Light): Judged {
  const { direct, returned } = lightRoom(exchange, sight, light.core);
  const find = patchFinder(exchange, scene);
  const reference = tracePatches(exchange, scene, find, light.traced, REFERENCE_PHOTONS, 73);
  // Timed without the counting by patch, which is not the tracer's fault.
  const run = timed(() => trace(scene, light.traced, [], { photons: TIMED_PHOTONS, seed: 74 }));
  const rough = tracePatches(exchange, scene, find, light.traced, TIMED_PHOTONS, 74);
  const noise = meanSquare(reference.map(({ error }) => error));
  const away = meanSquare(
    reference.map(({ mean }, index) => ((direct[index] ?? 0) + (returned[index] ?? 0)) / mean - 1),
  );
  return {
    deviation: Math.max(away - noise, 0),
    error: meanSquare(rough.map(({ error }) => error)),
    ms: run.ms,
  };
}

function together(judged: readonly Judged[]): { readonly deviation: number; readonly equalMs: number } {
  const mean = (of: (one: Judged) => number) => judged.reduce((sum, one) => sum + of(one), 0) / judged.length;
  const deviation = mean((one) => one.deviation);
  return {
    deviation: Math.sqrt(deviation),
    equalMs: (mean(({ ms }) => ms) * mean((one) => one.error)) / deviation,
  };
}

/** Factoring, updating and the independent Monte Carlo in one room, all in one run. */
function measureRoomLight(): RoomLightFigures {
  const outline = CORNERS.map(([x, y]) => ({ x, y }));
  const room: RoomModel = {
    outline,
    ceilingM: SIZE.heightM,
    roof: { kind: 'flat' },
    finishes: FINISHES,
    blockers: [],
  };
  const factorings = Array.from({ length: FACTORINGS }, () => timed(() => factorRoomAtOnce(room)));
  const exchange = factorings[0]?.value ?? factorRoomAtOnce(room);
  const sight = createSight(room);
  const points = METERS.map(({ at: [x, y, z] }) => ({ x, y, z }));
  const weights = gatherWeights(
    exchange,
    sight,
    points,
    METERS.map(({ normal: [x, y, z] }) => ({ x, y, z })),
  );
  const moved = lightsFrom(5);
  const times: number[] = [];
  const timesWithPoints: number[] = [];
  for (let round = 0; round < WARM_UP + UPDATES; round += 1) {
    const { core } = moved();
    const update = timed(() => lightRoom(exchange, sight, core));
    const pointsToo = timed(() => pointsOf(weights, update.value));
    if (round < WARM_UP) continue;
    times.push(update.ms);
    timesWithPoints.push(update.ms + pointsToo.ms);
  }
  const scene = sceneOf(facesOf({ outline: CORNERS, heightM: SIZE.heightM, ...FINISHES }));
  const judgedLights = Array.from({ length: JUDGED }, lightsFrom(6));
  const atPoints = together(judgedLights.map((light) => judgePoints(exchange, sight, scene, weights, light)));
  const onPatches = together(judgedLights.map((light) => judgePatches(exchange, sight, scene, light)));
  const [updateMs, updateWithPointsMs] = [medianOf(times), medianOf(timesWithPoints)];
  return {
    patches: exchange.patches.count,
    factorMs: medianOf(factorings.map(({ ms }) => ms)),
    updateMs,
    updateWithPointsMs,
    deviationAtPoints: atPoints.deviation,
    deviationOnPatches: onPatches.deviation,
    monteCarloMsAtEqualError: atPoints.equalMs,
    monteCarloMsOnPatches: onPatches.equalMs,
    ratio: atPoints.equalMs / updateWithPointsMs,
    ratioOnPatches: onPatches.equalMs / updateMs,
  };
}

/** The figures as lines of the bench; a single number stands in all three columns. */
export async function benchRoomLight(): Promise<string[]> {
  const figures = measureRoomLight();
  const line = (name: string, value: number, unit: string) => spreadLine(name, spread([value]), unit);
  return [
    line(`room of ${figures.patches} patches, factored`, figures.factorMs, 'ms'),
    line('one light moved, all patches', figures.updateMs, 'ms'),
    line('one light moved, patches and six points', figures.updateWithPointsMs, 'ms'),
    line('deviation at six points, rms', 100 * figures.deviationAtPoints, '%'),
    line('deviation on all patches, rms', 100 * figures.deviationOnPatches, '%'),
    line('Monte Carlo as sure of six points (1/√n)', figures.monteCarloMsAtEqualError, 'ms'),
    line('Monte Carlo as sure of all patches (1/√n)', figures.monteCarloMsOnPatches, 'ms'),
    line('Monte Carlo over update, six points', figures.ratio, '×'),
    line('Monte Carlo over update, all patches', figures.ratioOnPatches, '×'),
  ];
}
