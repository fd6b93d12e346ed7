/** A place or a direction of the tracer: x, y, z [m]. It shares no code with core on purpose. */
export type Triple = readonly [number, number, number];

/** A flat face that light lands on from one side: the side its normal points to. */
export type Face = {
  readonly surface: string;
  readonly corners: readonly Triple[];
  /** Any vector into the air; it only chooses between the two normals. */
  readonly intoAir: Triple;
  readonly reflectance: number;
  /** Part of the face that something stands on [m²] */
  readonly coveredM2?: number;
};

/** Faces made ready for rays. Face k lies in the plane n·p = offset. */
export type Scene = {
  readonly surfaces: readonly string[];
  readonly areasM2: readonly number[];
  readonly count: number;
  readonly normals: Float64Array;
  readonly offsets: Float64Array;
  readonly reflectances: Float64Array;
  readonly surfaceOf: Int32Array;
  /** The two axes on which the face is drawn flat, and its corners there */
  readonly axes: Int32Array;
  readonly flat: readonly Float64Array[];
  /** No face hides another: every corner lies before every plane */
  readonly open: boolean;
};

/** Twice the area vector of a flat polygon, after Newell. */
function areaVector(corners: readonly Triple[]): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length] ?? a;
    sum[0] += (a[1] - b[1]) * (a[2] + b[2]);
    sum[1] += (a[2] - b[2]) * (a[0] + b[0]);
    sum[2] += (a[0] - b[0]) * (a[1] + b[1]);
  });
  return sum;
}

const dotOf = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Faces with their normals, areas by surface and flat corners. */
export function sceneOf(faces: readonly Face[]): Scene {
  const surfaces = [...new Set(faces.map(({ surface }) => surface))];
  const areasM2 = surfaces.map(() => 0);
  const count = faces.length;
  const scene = {
    surfaces,
    areasM2,
    count,
    normals: new Float64Array(3 * count),
    offsets: new Float64Array(count),
    reflectances: Float64Array.from(faces, ({ reflectance }) => reflectance),
    surfaceOf: Int32Array.from(faces, ({ surface }) => surfaces.indexOf(surface)),
    axes: new Int32Array(2 * count),
    flat: faces.map(({ corners }) => new Float64Array(2 * corners.length)),
  };
  faces.forEach((face, k) => {
    const vector = areaVector(face.corners);
    const twice = Math.hypot(...vector);
    const sign = dotOf(vector, face.intoAir) < 0 ? -1 : 1;
    const normal = vector.map((part) => (sign * part) / twice);
    scene.normals.set(normal, 3 * k);
    scene.offsets[k] = dotOf(normal as unknown as Triple, face.corners[0] ?? [0, 0, 0]);
    const surface = scene.surfaceOf[k] ?? 0;
    areasM2[surface] = (areasM2[surface] ?? 0) + twice / 2 - (face.coveredM2 ?? 0);
    const steepest = normal.reduce((best, part, axis) => {
      return Math.abs(part) > Math.abs(normal[best] ?? 0) ? axis : best;
    }, 0);
    const axes = [0, 1, 2].filter((axis) => axis !== steepest);
    scene.axes.set(axes, 2 * k);
    face.corners.forEach((corner, c) => {
      scene.flat[k]?.set([corner[axes[0] ?? 0] ?? 0, corner[axes[1] ?? 1] ?? 0], 2 * c);
    });
  });
  const open = faces.every((_, k) => faces.every(({ corners }) => corners.every((p) => before(scene, k, p))));
  return { ...scene, open };
}

function before(scene: Pick<Scene, 'normals' | 'offsets'>, k: number, p: Triple): boolean {
  const n = scene.normals.subarray(3 * k, 3 * k + 3);
  return dotOf([n[0] ?? 0, n[1] ?? 0, n[2] ?? 0], p) - (scene.offsets[k] ?? 0) > -1e-9;
}

/** True when a point of a face's plane, drawn flat, lies in the polygon (crossing count). */
function inFlat(flat: Float64Array, u: number, v: number): boolean {
  let inside = false;
  let ua = flat[flat.length - 2] as number;
  let va = flat[flat.length - 1] as number;
  for (let c = 0; c < flat.length; c += 2) {
    const ub = flat[c] as number;
    const vb = flat[c + 1] as number;
    if (va > v !== vb > v && u < ((ua - ub) * (v - vb)) / (va - vb) + ub) inside = !inside;
    ua = ub;
    va = vb;
  }
  return inside;
}

const NEAR = 1e-9;

/**
 * The first face that a ray meets from its front: index of the face, with how far the ray goes in `far[0]`; −1
 * for none within `far[0]`. Rays start in the air or on a face, so a face is always met from its front.
 */
export function firstHit(scene: Scene, from: Float64Array, way: Float64Array, far: Float64Array): number {
  const { normals, offsets, axes, flat, count } = scene;
  const [px, py, pz] = from as unknown as Triple;
  const [dx, dy, dz] = way as unknown as Triple;
  let nearest = far[0] as number;
  let hit = -1;
  for (let k = 0; k < count; k += 1) {
    const nx = normals[3 * k] as number;
    const ny = normals[3 * k + 1] as number;
    const nz = normals[3 * k + 2] as number;
    const toward = nx * dx + ny * dy + nz * dz;
    if (toward >= 0) continue;
    const t = ((offsets[k] as number) - nx * px - ny * py - nz * pz) / toward;
    if (t < NEAR || t >= nearest) continue;
    const a = axes[2 * k] as number;
    const b = axes[2 * k + 1] as number;
    const u = (from[a] as number) + t * (way[a] as number);
    const v = (from[b] as number) + t * (way[b] as number);
    if (!inFlat(flat[k] as Float64Array, u, v)) continue;
    nearest = t;
    hit = k;
  }
  far[0] = nearest;
  return hit;
}
