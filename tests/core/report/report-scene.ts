import type { LampRecipe } from '../../../core/light/lamps/lamp-recipe.ts';
import { type LightDesk, prepareLightDesk } from '../../../core/light/report/light-desk.ts';
import type { LightInput, LightUnit } from '../../../core/light/report/light-input.ts';
import type { LightReport } from '../../../core/light/report/light-report.ts';
import { factorRoomAtOnce } from '../../../core/light/room/factor-room.ts';
import type { RoomModel } from '../../../core/light/room/room-model.ts';
import { aimAt } from '../../../core/placing/mark.ts';

/** A plain room of 12 × 9 m with one pillar; y goes down the plan. */
export const ROOM: RoomModel = {
  outline: [
    { x: 0, y: 0 },
    { x: 12, y: 0 },
    { x: 12, y: 9 },
    { x: 0, y: 9 },
  ],
  ceilingM: 3.5,
  roof: { kind: 'flat' },
  finishes: { ceiling: 0.7, walls: 0.5, floor: 0.2 },
  blockers: [
    {
      id: 'pillar',
      name: 'Pillar',
      outline: [
        { x: 2, y: 6 },
        { x: 2.5, y: 6 },
        { x: 2.5, y: 6.5 },
        { x: 2, y: 6.5 },
      ],
      heightM: 3.5,
      reflectance: 0.4,
    },
  ],
};

const HEAD = { guideNumberM: 33, zoomMm: 35, leastPowerStops: -7 };
const UMBRELLA: LampRecipe = {
  kind: 'umbrella',
  head: HEAD,
  umbrella: { diameterM: 1, forwardFraction: 0.5 },
};
export const BARE: LampRecipe = { kind: 'bare', head: HEAD };

export const SUBJECT = { spot: { x: 6, y: 4 }, eyeM: 1.6, facingDeg: 180 };

/** A light at a spot, aimed at the subject's eyes. */
export function unit(
  job: LightUnit['job'],
  spot: { x: number; y: number },
  rest: Partial<LightUnit> = {},
): LightUnit {
  const heightM = job === 'camera' ? 1.75 : 2.4;
  return {
    id: job,
    letter: { key: 'K', back: 'B', camera: 'C' }[job],
    job,
    recipe: job === 'key' ? UMBRELLA : BARE,
    mark: { spot, heightM, ...aimAt(spot, heightM, SUBJECT.spot, SUBJECT.eyeM), powerStops: -6 },
    leastPowerStops: -7,
    recycleS: 2,
    flashesFull: 180,
    unknownIds: [`head:${job}`, ...(job === 'key' ? ['umbrella:key'] : [])],
    ...rest,
  };
}

/** Key from camera-right in front, back light deep in the room on the other side. */
export const INPUT: LightInput = {
  units: [unit('key', { x: 8, y: 6 }), unit('back', { x: 2, y: 1 })],
  features: [],
  subject: SUBJECT,
  camera: { spot: { x: 6, y: 8 }, heightM: 1.6 },
  frame: { focalMm: 35, sensorWidthMm: 36, sensorHeightMm: 24, upright: false },
  exposure: { iso: 1600, fNumber: 2, shutterS: 1 / 160 },
  ambientSpots: [],
  ambientEv100: 3,
  wish: { subjectStops: 0, backgroundStops: -1.5, rimStops: 1, groupWidthM: 1.2 },
  taken: [],
  crowdPerM2: 1,
  isMoving: false,
};

/** A desk for a room, cut coarsely: the tests are about what is put together, not about the room's own accuracy. */
export function deskFor(room: RoomModel, mostPatches = 150): LightDesk {
  const steps = prepareLightDesk(factorRoomAtOnce(room, { mostPatches }));
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** The report of an input that must have one. */
export function reportOf(desk: LightDesk, input: LightInput): LightReport {
  const report = desk.report(input);
  if (report.kind === 'cannot') throw new Error(report.reason);
  return report;
}
