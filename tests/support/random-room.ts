import type { Lamp } from '../../core/light/lamp.ts';
import { bareLamp } from '../../core/light/lamps/bare-lamp.ts';
import { discLamp } from '../../core/light/lamps/disc-lamp.ts';
import { lambertLobe } from '../../core/light/lamps/lobe.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import type { Meter } from './tracer.ts';
import { seededChance } from './tracer-chance.ts';
import { coreLampOf } from './tracer-core-lamp.ts';
import { bareHead, disc, isotropic, type TracerLamp } from './tracer-lamp.ts';
import { inPlan, type TracerPillar, type TracerRoom } from './tracer-room.ts';
import type { Triple } from './tracer-scene.ts';

type Plan = readonly (readonly [number, number])[];

export type RoomShape = 'convex' | 'angled' | 'horseshoe' | 'pillars' | 'tent';
export type LampKind = 'isotropic' | 'bare' | 'disc';

/** One room for both: as core sees it and as the tracer does, with a light in it and meters at face height. */
export type RandomRoom = {
  readonly model: RoomModel;
  readonly tracerRoom: TracerRoom;
  readonly lamp: TracerLamp;
  readonly coreLamp: Lamp;
  readonly meters: readonly Meter[];
};

const LAMP_CLEAR_M = 0.6;
const METER_CLEAR_M = 0.5;
const FACE_HEIGHT_M = 1.6;
const METERS = 6;
const DISC_RADIUS_M = 0.5;
const SHORTEST_SIDE_M = 2;

type Draw = { readonly chance: () => number; readonly between: (low: number, high: number) => number };

function turned(plan: Plan, turnRad: number): Plan {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return plan.map(([x, y]) => [c * x - s * y, s * x + c * y]);
}

const sideM = (plan: Plan, k: number): number => {
  const [a, b] = [plan[k] ?? [0, 0], plan[(k + 1) % plan.length] ?? [0, 0]];
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
};

/** Corners on an ellipse: convex whatever the angles. Drawn again until no side is a sliver. */
function convexPlan({ chance, between }: Draw): Plan {
  for (;;) {
    const [wide, deep] = [between(3.5, 12.5), between(3.5, 12.5)];
    const corners = 4 + Math.floor(chance() * 4);
    const angles = Array.from({ length: corners }, () => 2 * Math.PI * chance()).sort((a, b) => a - b);
    const plan = angles.map((angle) => [wide * Math.cos(angle), deep * Math.sin(angle)] as const);
    if (plan.every((_, k) => sideM(plan, k) >= SHORTEST_SIDE_M) && inPlan(plan, 0, 0)) return plan;
  }
}

function rectangle({ between }: Draw): Plan {
  const [w, d] = [between(7, 20), between(6, 14)];
  return [
    [0, 0],
    [w, 0],
    [w, d],
    [0, d],
  ];
}

function angledPlan({ between }: Draw): Plan {
  const [w, d] = [between(9, 22), between(9, 20)];
  const [cutW, cutD] = [w * between(0.35, 0.65), d * between(0.35, 0.65)];
  return [
    [0, 0],
    [w, 0],
    [w, d - cutD],
    [w - cutW, d - cutD],
    [w - cutW, d],
    [0, d],
  ];
}

function horseshoePlan({ between }: Draw): Plan {
  const [w, d] = [between(14, 24), between(9, 16)];
  const [left, right, deep] = [w * between(0.25, 0.35), w * between(0.62, 0.72), d * between(0.35, 0.6)];
  return [
    [0, 0],
    [w, 0],
    [w, d],
    [right, d],
    [right, d - deep],
    [left, d - deep],
    [left, d],
    [0, d],
  ];
}

function planOf(shape: RoomShape, draw: Draw): Plan {
  const plans = { convex: convexPlan, angled: angledPlan, horseshoe: horseshoePlan };
  const plan = shape === 'pillars' || shape === 'tent' ? rectangle(draw) : plans[shape](draw);
  const laid = turned(plan, draw.between(0, 2 * Math.PI));
  return draw.chance() < 0.5 ? laid : [...laid].reverse();
}

/** How far a spot is from the nearest side of a plan polygon [m]. */
function clearanceM(plan: Plan, x: number, y: number): number {
  return plan.reduce((least, [ax, ay], k) => {
    const [bx, by] = plan[(k + 1) % plan.length] ?? [ax, ay];
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
    return Math.min(least, Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)));
  }, Number.POSITIVE_INFINITY);
}

function spotIn(plan: Plan, pillars: readonly TracerPillar[], clearM: number, draw: Draw): [number, number] {
  const span = (axis: 0 | 1) => {
    const values = plan.map((corner) => corner[axis]);
    return [Math.min(...values), Math.max(...values)] as const;
  };
  for (;;) {
    const [x, y] = [draw.between(...span(0)), draw.between(...span(1))];
    const free = pillars.every(
      ({ outline }) => !inPlan(outline, x, y) && clearanceM(outline, x, y) >= clearM,
    );
    if (free && inPlan(plan, x, y) && clearanceM(plan, x, y) >= clearM) return [x, y];
  }
}

function pillarsIn(plan: Plan, heightM: number, draw: Draw): TracerPillar[] {
  const pillars: TracerPillar[] = [];
  for (let k = 0; k < 3; k += 1) {
    const [x, y] = spotIn(plan, pillars, 1.2, draw);
    const half = draw.between(0.25, 0.5);
    const square: Plan = [
      [-half, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ];
    const outline = turned(square, draw.between(0, 2 * Math.PI)).map(([a, b]) => [x + a, y + b] as const);
    // Two pillars carry the ceiling, one thing ends below it.
    const upM = k < 2 ? heightM : draw.between(1.2, heightM - 0.5);
    pillars.push({ outline, heightM: upM, reflectance: draw.between(0.05, 0.85) });
  }
  return pillars;
}

function randomAxis(draw: Draw): Triple {
  const up = draw.between(-0.7, 0.7);
  const turn = draw.between(0, 2 * Math.PI);
  const level = Math.sqrt(1 - up * up);
  return [level * Math.cos(turn), level * Math.sin(turn), up];
}

/** The same light twice: from the tracer's own formulas, and as core makes it. */
function lampAt(
  kind: LampKind,
  at: Triple,
  draw: Draw,
): { readonly lamp: TracerLamp; readonly coreLamp: Lamp } {
  const flux = draw.between(500, 5000);
  const [ax, ay, az] = randomAxis(draw);
  const place = { x: at[0], y: at[1], z: at[2] };
  if (kind === 'isotropic') {
    const lamp = isotropic(at, flux);
    return { lamp, coreLamp: coreLampOf(lamp, 0) };
  }
  if (kind === 'disc') {
    const axis = { x: ax, y: ay, z: az };
    const coreLamp = discLamp({ at: place, axis, radiusM: DISC_RADIUS_M, front: lambertLobe(flux) });
    return { lamp: disc(at, [ax, ay, az], DISC_RADIUS_M, flux), coreLamp };
  }
  const [guideNumberM, zoomMm] = [draw.between(20, 60), draw.between(24, 105)];
  // ISO 2720 with C = 250 lx·s: I = C·GN²/100. The beam's edge is the corner of the 36 × 24 mm frame.
  const lamp = bareHead(at, [ax, ay, az], 2.5 * guideNumberM ** 2, Math.atan(Math.hypot(18, 12) / zoomMm));
  const facingDeg = (Math.atan2(ax, -ay) * 180) / Math.PI;
  const head = { guideNumberM, zoomMm, leastPowerStops: -7 };
  return { lamp, coreLamp: bareLamp(head, place, facingDeg, (-Math.asin(az) * 180) / Math.PI) };
}

function modelOf(room: TracerRoom): RoomModel {
  const spots = (plan: Plan) => plan.map(([x, y]) => ({ x, y }));
  const [a, b] = [room.outline[0] ?? [0, 0], room.outline[1] ?? [0, 0]];
  const ridgeDeg = (Math.atan2(b[0] - a[0], a[1] - b[1]) * 180) / Math.PI;
  return {
    outline: spots(room.outline),
    ceilingM: room.heightM,
    roof: room.ridgeM === undefined ? { kind: 'flat' } : { kind: 'ridge', peakM: room.ridgeM, ridgeDeg },
    finishes: {
      ceiling: room.ceiling,
      walls: typeof room.walls === 'number' ? room.walls : (room.walls[0] ?? 0),
      floor: room.floor,
    },
    blockers: (room.pillars ?? []).map((pillar, k) => ({
      id: `pillar-${k}`,
      name: `Pillar ${k + 1}`,
      outline: spots(pillar.outline),
      heightM: pillar.heightM,
      reflectance: pillar.reflectance,
    })),
  };
}

/** A room, a light and six meters from a seed: the same seed gives the same room. */
export function randomRoom(shape: RoomShape, kind: LampKind, seed: number): RandomRoom {
  const chance = seededChance(seed);
  const draw: Draw = { chance, between: (low, high) => low + (high - low) * chance() };
  const outline = planOf(shape, draw);
  const heightM = shape === 'tent' ? draw.between(2.5, 3.5) : draw.between(2.5, 9);
  const pillars = shape === 'pillars' ? pillarsIn(outline, heightM, draw) : [];
  const finish = () => draw.between(0.05, 0.85);
  const tracerRoom: TracerRoom = {
    outline,
    heightM,
    ...(shape === 'tent' ? { ridgeM: heightM + draw.between(1, 3) } : {}),
    floor: finish(),
    ceiling: finish(),
    walls: finish(),
    pillars,
  };
  const [x, y] = spotIn(outline, pillars, LAMP_CLEAR_M, draw);
  const at: Triple = [x, y, draw.between(LAMP_CLEAR_M, heightM - LAMP_CLEAR_M)];
  const meters: Meter[] = [];
  while (meters.length < METERS) {
    const [mx, my] = spotIn(outline, pillars, METER_CLEAR_M, draw);
    const turn = draw.between(0, 2 * Math.PI);
    if (Math.hypot(mx - x, my - y, FACE_HEIGHT_M - at[2]) < METER_CLEAR_M) continue;
    meters.push({ at: [mx, my, FACE_HEIGHT_M], normal: [Math.cos(turn), Math.sin(turn), 0] });
  }
  return {
    model: modelOf(tracerRoom),
    tracerRoom,
    ...lampAt(kind, at, draw),
    meters,
  };
}
