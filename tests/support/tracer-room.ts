import type { Face, Triple } from './tracer-scene.ts';

type Plan = readonly (readonly [number, number])[];

/** A box or any other upright prism that stands on the floor. */
export type TracerPillar = { readonly outline: Plan; readonly heightM: number; readonly reflectance: number };

/** A room as the tracer sees it: a prism over any simple polygon, flat or with a ridge over a rectangle. */
export type TracerRoom = {
  readonly outline: Plan;
  readonly heightM: number;
  /** Over a rectangle: the ridge runs parallel to its side 0–1, half-way between it and side 2–3. */
  readonly ridgeM?: number;
  readonly floor: number;
  readonly ceiling: number;
  /** One for all, or one each */
  readonly walls: number | readonly number[];
  readonly pillars?: readonly TracerPillar[];
};

/** Area of a plan polygon [m²], positive whichever way it turns. */
export function planAreaM2(plan: Plan): number {
  let twice = 0;
  plan.forEach(([x, y], k) => {
    const [nextX, nextY] = plan[(k + 1) % plan.length] ?? [x, y];
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

/** True when a spot lies in a plan polygon. */
export function inPlan(plan: Plan, x: number, y: number): boolean {
  let inside = false;
  plan.forEach(([ax, ay], k) => {
    const [bx, by] = plan[(k + 1) % plan.length] ?? [ax, ay];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  });
  return inside;
}

/** Sideways from side k, to the inner side of the polygon. */
function inward(plan: Plan, k: number): [number, number] {
  const [ax, ay] = plan[k] ?? [0, 0];
  const [bx, by] = plan[(k + 1) % plan.length] ?? [0, 0];
  const length = Math.hypot(bx - ax, by - ay);
  const [nx, ny] = [-(by - ay) / length, (bx - ax) / length];
  const inside = inPlan(plan, (ax + bx) / 2 + 1e-6 * nx, (ay + by) / 2 + 1e-6 * ny);
  return inside ? [nx, ny] : [-nx, -ny];
}

function side(plan: Plan, k: number, heightM: number): Triple[] {
  const [ax, ay] = plan[k] ?? [0, 0];
  const [bx, by] = plan[(k + 1) % plan.length] ?? [0, 0];
  return [
    [ax, ay, 0],
    [bx, by, 0],
    [bx, by, heightM],
    [ax, ay, heightM],
  ];
}

const level = (plan: Plan, heightM: number): Triple[] => plan.map(([x, y]) => [x, y, heightM]);

function pillarFaces(pillar: TracerPillar, index: number, roomHeightM: number): Face[] {
  const { outline, heightM, reflectance } = pillar;
  const surface = `blocker ${index}`;
  const sides = outline.map((_, k): Face => {
    const [nx, ny] = inward(outline, k);
    return { surface, corners: side(outline, k, heightM), intoAir: [-nx, -ny, 0], reflectance };
  });
  if (heightM >= roomHeightM) return sides;
  return [...sides, { surface, corners: level(outline, heightM), intoAir: [0, 0, 1], reflectance }];
}

/** The middle of side k, at the height of the ridge. */
function gableTop(plan: Plan, k: number, ridgeM: number): Triple {
  const [ax, ay] = plan[k] ?? [0, 0];
  const [bx, by] = plan[(k + 1) % plan.length] ?? [0, 0];
  return [(ax + bx) / 2, (ay + by) / 2, ridgeM];
}

function roofFaces({ outline, heightM, ridgeM, ceiling }: TracerRoom, coveredM2: number): Face[] {
  const shared = { surface: 'ceiling', intoAir: [0, 0, -1] as Triple, reflectance: ceiling };
  const top = level(outline, heightM);
  if (ridgeM === undefined) return [{ ...shared, corners: top, coveredM2 }];
  const [a, b, c, d] = top as [Triple, Triple, Triple, Triple];
  const [right, left] = [gableTop(outline, 1, ridgeM), gableTop(outline, 3, ridgeM)];
  return [
    { ...shared, corners: [a, b, right, left] },
    { ...shared, corners: [c, d, left, right] },
  ];
}

/** All faces of a room: floor, ceiling, `wall k` from corner k to the next, `blocker k`. */
export function facesOf(room: TracerRoom): Face[] {
  const { outline, heightM, ridgeM, floor, walls, pillars = [] } = room;
  const covered = (atM: number) =>
    pillars.reduce((sum, p) => sum + (p.heightM >= atM ? planAreaM2(p.outline) : 0), 0);
  const wallFaces = outline.map((_, k): Face => {
    const corners = side(outline, k, heightM);
    if (ridgeM !== undefined && k % 2 === 1) corners.splice(3, 0, gableTop(outline, k, ridgeM));
    const reflectance = typeof walls === 'number' ? walls : (walls[k] ?? 0);
    return { surface: `wall ${k}`, corners, intoAir: [...inward(outline, k), 0], reflectance };
  });
  return [
    {
      surface: 'floor',
      corners: level(outline, 0),
      intoAir: [0, 0, 1],
      reflectance: floor,
      coveredM2: covered(0),
    },
    ...roofFaces(room, covered(heightM)),
    ...wallFaces,
    ...pillars.flatMap((pillar, k) => pillarFaces(pillar, k, heightM)),
  ];
}
