import type { Spot } from '../../../core/geometry/spot.ts';
import { castFrame, type FrameRays } from '../../../core/light/frame/cast-frame.ts';
import type { FrameFeature, FrameScene } from '../../../core/light/frame/scene.ts';
import type { Lamp } from '../../../core/light/lamp.ts';
import type { RoomModel } from '../../../core/light/room/room-model.ts';

export function box(x: number, y: number, widthM: number, depthM: number): Spot[] {
  return [
    { x, y },
    { x: x + widthM, y },
    { x: x + widthM, y: y + depthM },
    { x, y: y + depthM },
  ];
}

/** An empty hall of 18 × 12 m, 4 m high. */
export const HALL: RoomModel = {
  outline: box(0, 0, 18, 12),
  ceilingM: 4,
  roof: { kind: 'flat' },
  finishes: { ceiling: 0.7, walls: 0.5, floor: 0.2 },
  blockers: [],
};

/** The camera at the foot of the plan looks up it, level, past a subject in the middle; 35 mm. */
export const SCENE: FrameScene = {
  room: HALL,
  features: [],
  camera: { spot: { x: 9, y: 11 }, heightM: 1.6 },
  subject: { spot: { x: 9, y: 7 }, eyeM: 1.6, facingDeg: 180 },
  frame: { focalMm: 35, sensorWidthMm: 36, sensorHeightMm: 24, upright: false },
  stands: [],
};

export function feature(id: string, outline: readonly Spot[], heightM: number): FrameFeature {
  return {
    id,
    name: `The ${id}`,
    outline,
    heightM,
    background: 'neither',
    blocksLight: false,
    reflectance: 0.4,
  };
}

export function raysOf(scene: FrameScene, columns = 48, rows = 32): FrameRays {
  const rays = castFrame(scene, columns, rows);
  if (rays.kind === 'cannot') throw new Error(rays.reason);
  return rays;
}

/** Number of the ray nearest to a point of the picture, given in shares of its sides. */
export function rayAt({ columns, rows }: FrameRays, asideFraction: number, downFraction: number): number {
  const column = Math.min(columns - 1, Math.floor(asideFraction * columns));
  return Math.min(rows - 1, Math.floor(downFraction * rows)) * columns + column;
}

/** A lamp that gives every surface it sees the same, wherever it stands; for arithmetic. */
export function evenLamp(luxSeconds: number, x = 9, y = 10.9, z = 3): Lamp {
  return { x, y, z, radiusM: 0, flux: 1, on: () => luxSeconds, toward: () => luxSeconds };
}
