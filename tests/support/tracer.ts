import { EVEN_NUMBERS, evenSequence, seededChance } from './tracer-chance.ts';
import { leaning, type TracerLamp } from './tracer-lamp.ts';
import { firstHit, type Scene, type Triple } from './tracer-scene.ts';

/** A small flat meter in the air. */
export type Meter = { readonly at: Triple; readonly normal: Triple };

/** An estimate and the standard error of it. */
export type Estimate = { readonly mean: number; readonly error: number };

/** Light straight from the lamp, light that came back from the room, and both [lx·s for lm·s]. */
export type Traced = { readonly direct: Estimate; readonly returned: Estimate; readonly total: Estimate };

export type TraceResult = {
  readonly surfaces: ReadonlyMap<string, Traced>;
  readonly meters: readonly Traced[];
};

/** Told of every landing of a photon: batch, face, place and weight (1 when it left the lamp). */
export type Landed = (batch: number, face: number, place: Float64Array, weight: number) => void;

export type TraceRun = {
  readonly photons: number;
  readonly seed: number;
  readonly batches?: number;
  readonly landed?: Landed;
};

/** Below this weight a photon lives on with the chance weight/LEAST, at weight LEAST: no bias, fewer steps. */
const LEAST = 0.1;
/** A photon that finds no face has slipped through a crack between two; more than this share is a broken room. */
const MOST_LOST = 1e-5;

/** What one batch of photons brings: flux by surface, straight and returned, and light on the meters. */
type Tally = {
  readonly straight: Float64Array;
  readonly back: Float64Array;
  readonly meters: Float64Array;
  readonly landed: ((face: number, place: Float64Array, weight: number) => void) | null;
};

/** Scratch of one photon, so that its steps allocate nothing. */
type Photon = {
  readonly from: Float64Array;
  readonly way: Float64Array;
  readonly far: Float64Array;
  readonly look: Float64Array;
};

function normalOf(scene: Scene, face: number): Triple {
  const n = scene.normals;
  return [n[3 * face] as number, n[3 * face + 1] as number, n[3 * face + 2] as number];
}

/** Light that a meter gets from a spot of a face sending out `flux`, all of it diffuse, if nothing is between. */
function reach(scene: Scene, photon: Photon, normal: Triple, meter: Meter, flux: number): number {
  const { from, look, far } = photon;
  const dx = meter.at[0] - (from[0] as number);
  const dy = meter.at[1] - (from[1] as number);
  const dz = meter.at[2] - (from[2] as number);
  const square = dx * dx + dy * dy + dz * dz;
  const leaves = normal[0] * dx + normal[1] * dy + normal[2] * dz;
  const lands = -(meter.normal[0] * dx + meter.normal[1] * dy + meter.normal[2] * dz);
  if (leaves <= 0 || lands <= 0) return 0;
  if (!scene.open) {
    const long = Math.sqrt(square);
    look[0] = dx / long;
    look[1] = dy / long;
    look[2] = dz / long;
    far[0] = long;
    if (firstHit(scene, from, look, far) >= 0) return 0;
  }
  return (flux * leaves * lands) / (Math.PI * square * square);
}

/** Follows one photon until it is absorbed. @returns the weight that was lost in a crack, nearly always 0 */
function follow(
  scene: Scene,
  photon: Photon,
  meters: readonly Meter[],
  u: Float64Array,
  chance: () => number,
  tally: Tally,
): number {
  const { from, way, far } = photon;
  let weight = 1;
  for (let bounce = 0; ; bounce += 1) {
    far[0] = Number.POSITIVE_INFINITY;
    const face = firstHit(scene, from, way, far);
    if (face < 0) return weight;
    const into = bounce === 0 ? tally.straight : tally.back;
    const surface = scene.surfaceOf[face] as number;
    into[surface] = (into[surface] as number) + weight;
    for (let k = 0; k < 3; k += 1) from[k] = (from[k] as number) + (far[0] as number) * (way[k] as number);
    tally.landed?.(face, from, weight);
    weight *= scene.reflectances[face] as number;
    if (weight <= 0) return 0;
    if (weight < LEAST) {
      if (chance() * LEAST >= weight) return 0;
      weight = LEAST;
    }
    const normal = normalOf(scene, face);
    for (let m = 0; m < meters.length; m += 1)
      tally.meters[m] =
        (tally.meters[m] as number) + reach(scene, photon, normal, meters[m] as Meter, weight);
    const [a, b] = bounce === 0 ? [u[4] as number, u[5] as number] : [chance(), chance()];
    leaning(normal, Math.sqrt(1 - a), 2 * Math.PI * b, way);
  }
}

/** Light on a meter straight from the lamp: the sum over the places that stand for it, each looked at. */
export function straightOn(scene: Scene, lamp: TracerLamp, { at, normal }: Meter): number {
  const far = new Float64Array(1);
  let sum = 0;
  for (const place of lamp.places) {
    const [dx, dy, dz] = [at[0] - place[0], at[1] - place[1], at[2] - place[2]];
    const long = Math.hypot(dx, dy, dz);
    const way: Triple = [dx / long, dy / long, dz / long];
    const lands = -(normal[0] * way[0] + normal[1] * way[1] + normal[2] * way[2]);
    if (lands <= 0) continue;
    far[0] = long * (1 - 1e-9);
    if (firstHit(scene, Float64Array.from(place), Float64Array.from(way), far) >= 0) continue;
    sum += (lamp.intensity(way) * lands) / (long * long);
  }
  return sum / lamp.places.length;
}

function estimate(values: readonly number[]): Estimate {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(square / (values.length - 1) / values.length) };
}

function traceBatch(
  scene: Scene,
  lamp: TracerLamp,
  meters: readonly Meter[],
  photons: number,
  chance: () => number,
  landed: Tally['landed'],
): Tally {
  const surfaces = scene.surfaces.length;
  const tally: Tally = {
    landed,
    straight: new Float64Array(surfaces),
    back: new Float64Array(surfaces),
    meters: new Float64Array(meters.length),
  };
  const spread = evenSequence(chance);
  const u = new Float64Array(EVEN_NUMBERS);
  const photon = {
    from: new Float64Array(3),
    way: new Float64Array(3),
    far: new Float64Array(1),
    look: new Float64Array(3),
  };
  let lost = 0;
  for (let k = 0; k < photons; k += 1) {
    spread(k, u);
    lamp.emit(u, photon.from, photon.way);
    lost += follow(scene, photon, meters, u, chance, tally);
  }
  if (lost > MOST_LOST * photons + 1) throw new Error(`${lost} of ${photons} photons left the room`);
  return tally;
}

/**
 * Mean light on every surface and light on every meter, by photons that start at the lamp and bounce until they
 * are absorbed; at every bounce each meter is looked at. The batches' scatter gives the standard errors.
 */
export function trace(scene: Scene, lamp: TracerLamp, meters: readonly Meter[], run: TraceRun): TraceResult {
  const { photons, seed, batches = 16, landed } = run;
  const chance = seededChance(seed);
  const perBatch = Math.ceil(photons / batches);
  const tallies = Array.from({ length: batches }, (_, batch) => {
    const told = landed
      ? (face: number, place: Float64Array, weight: number) => landed(batch, face, place, weight)
      : null;
    return traceBatch(scene, lamp, meters, perBatch, chance, told);
  });
  const share = lamp.flux / perBatch;
  const surfaces = scene.surfaces.map((name, s): [string, Traced] => {
    const scaled = (of: (tally: Tally) => number) =>
      estimate(tallies.map((tally) => (of(tally) * share) / (scene.areasM2[s] ?? 1)));
    const [straight, back] = [(t: Tally) => t.straight[s] ?? 0, (t: Tally) => t.back[s] ?? 0];
    const total = scaled((tally) => straight(tally) + back(tally));
    return [name, { direct: scaled(straight), returned: scaled(back), total }];
  });
  return {
    surfaces: new Map(surfaces),
    meters: meters.map((meter, m) => {
      const direct = { mean: straightOn(scene, lamp, meter), error: 0 };
      const returned = estimate(tallies.map((tally) => (tally.meters[m] ?? 0) * share));
      return { direct, returned, total: { mean: direct.mean + returned.mean, error: returned.error } };
    }),
  };
}
