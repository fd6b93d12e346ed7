import type { Triple } from './tracer-scene.ts';

/** A light of the tracer. Its formulas are written down here a second time, from their sources. */
export type TracerLamp = {
  readonly flux: number;
  /** A photon leaves: place and way, from four numbers in [0, 1) */
  readonly emit: (u: Float64Array, from: Float64Array, way: Float64Array) => void;
  /** Places that stand for the lamp when it is looked at, each with an equal share of it */
  readonly places: readonly Triple[];
  /** Intensity of one such place toward a unit vector [cd·s for lm·s] */
  readonly intensity: (way: Triple) => number;
};

/** Two unit vectors square to a unit vector and to each other. */
function sideways([x, y, z]: Triple): [Triple, Triple] {
  const other: Triple = Math.abs(z) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const raw: Triple = [y * other[2] - z * other[1], z * other[0] - x * other[2], x * other[1] - y * other[0]];
  const long = Math.hypot(...raw);
  const a: Triple = [raw[0] / long, raw[1] / long, raw[2] / long];
  return [a, [y * a[2] - z * a[1], z * a[0] - x * a[2], x * a[1] - y * a[0]]];
}

/** Writes the unit vector at the angle with this cosine from an axis, turned about it. */
export function leaning(axis: Triple, cosine: number, turn: number, into: Float64Array): void {
  const [a, b] = sideways(axis);
  const sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
  const [p, q] = [sine * Math.cos(turn), sine * Math.sin(turn)];
  for (let k = 0; k < 3; k += 1)
    into[k] = cosine * (axis[k] as number) + p * (a[k] as number) + q * (b[k] as number);
}

/** Equally bright in all directions: I = Φ/4π. */
export function isotropic(at: Triple, flux: number): TracerLamp {
  return {
    flux,
    places: [at],
    intensity: () => flux / (4 * Math.PI),
    emit: (u, from, way) => {
      from.set(at);
      leaning([0, 0, 1], 2 * (u[0] as number) - 1, 2 * Math.PI * (u[1] as number), way);
    },
  };
}

const ANGLES = 4096;

/**
 * A bare head: on the axis `axial`, one stop less at `edge` after a square law, 16 stops more for every edge
 * farther out, nothing behind. Angles are drawn from the running sum of I·2π·sin θ, which also gives the flux.
 */
export function bareHead(at: Triple, axis: Triple, axial: number, edgeRad: number): TracerLamp {
  const fall = (angle: number) => {
    const ratio = angle / edgeRad;
    return axial * 2 ** -(ratio <= 1 ? ratio * ratio : 1 + 16 * (ratio - 1));
  };
  const step = Math.PI / 2 / ANGLES;
  const sums = new Float64Array(ANGLES + 1);
  for (let k = 0; k < ANGLES; k += 1) {
    const middle = (k + 0.5) * step;
    sums[k + 1] = (sums[k] as number) + fall(middle) * 2 * Math.PI * Math.sin(middle) * step;
  }
  const flux = sums[ANGLES] as number;
  return {
    flux,
    places: [at],
    intensity: (way) => {
      const cosine = way[0] * axis[0] + way[1] * axis[1] + way[2] * axis[2];
      return cosine <= 0 ? 0 : fall(Math.acos(Math.min(1, cosine)));
    },
    emit: (u, from, way) => {
      const wanted = (u[0] as number) * flux;
      let [low, high] = [0, ANGLES];
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if ((sums[middle] as number) <= wanted) low = middle;
        else high = middle;
      }
      const within = (wanted - (sums[low] as number)) / ((sums[high] as number) - (sums[low] as number));
      from.set(at);
      leaning(axis, Math.cos((low + within) * step), 2 * Math.PI * (u[1] as number), way);
    },
  };
}

const RINGS = 12;

/** An evenly bright Lambertian disc that shines to one side: places on a sunflower pattern when looked at. */
export function disc(at: Triple, axis: Triple, radiusM: number, flux: number): TracerLamp {
  const [a, b] = sideways(axis);
  const onDisc = (share: number, turn: number): Triple => {
    const [p, q] = [radiusM * Math.sqrt(share) * Math.cos(turn), radiusM * Math.sqrt(share) * Math.sin(turn)];
    return [at[0] + p * a[0] + q * b[0], at[1] + p * a[1] + q * b[1], at[2] + p * a[2] + q * b[2]];
  };
  const count = RINGS * RINGS;
  const goldenTurn = Math.PI * (3 - Math.sqrt(5));
  return {
    flux,
    places: Array.from({ length: count }, (_, k) => onDisc((k + 0.5) / count, k * goldenTurn)),
    intensity: (way) =>
      (Math.max(0, way[0] * axis[0] + way[1] * axis[1] + way[2] * axis[2]) * flux) / Math.PI,
    emit: (u, from, way) => {
      from.set(onDisc(u[2] as number, 2 * Math.PI * (u[3] as number)));
      leaning(axis, Math.sqrt(1 - (u[0] as number)), 2 * Math.PI * (u[1] as number), way);
    },
  };
}

/** One-sided Lambertian rectangle, given by a corner and two square edges; it shines along `axis`. */
export function panel(
  corner: Triple,
  edges: readonly [Triple, Triple],
  axis: Triple,
  flux: number,
): TracerLamp {
  const [e, f] = edges;
  const onPanel = (s: number, t: number): Triple => [
    corner[0] + s * e[0] + t * f[0],
    corner[1] + s * e[1] + t * f[1],
    corner[2] + s * e[2] + t * f[2],
  ];
  const cells = 60;
  return {
    flux,
    places: Array.from({ length: cells * cells }, (_, k) =>
      onPanel(((k % cells) + 0.5) / cells, (Math.floor(k / cells) + 0.5) / cells),
    ),
    intensity: (way) =>
      (Math.max(0, way[0] * axis[0] + way[1] * axis[1] + way[2] * axis[2]) * flux) / Math.PI,
    emit: (u, from, way) => {
      from.set(onPanel(u[2] as number, u[3] as number));
      leaning(axis, Math.sqrt(1 - (u[0] as number)), 2 * Math.PI * (u[1] as number), way);
    },
  };
}
