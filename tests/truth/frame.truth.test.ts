import { describe, expect, it } from 'vitest';
import { castFrame } from '../../core/light/frame/cast-frame.ts';
import { darkBehind } from '../../core/light/frame/dark-behind.ts';
import { lightsInFrame } from '../../core/light/frame/lights-in-frame.ts';
import { linkFrame } from '../../core/light/frame/link-frame.ts';
import { framePicture } from '../../core/light/frame/picture.ts';
import type { FrameScene } from '../../core/light/frame/scene.ts';
import { shadeFrame } from '../../core/light/frame/shade-frame.ts';
import { MID_REFLECTANCE } from '../../core/light/frame/shade-lamp.ts';
import { bareLamp } from '../../core/light/lamps/bare-lamp.ts';
import { umbrellaLamp } from '../../core/light/lamps/umbrella-lamp.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { aimAt } from '../../core/placing/mark.ts';
import { expectClose } from './expect-close.ts';
import truth from './fixtures/frame.json' with { type: 'json' };

const { backLight } = truth;
const HEAD = { guideNumberM: backLight.guideNumberM, zoomMm: backLight.zoomMm, leastPowerStops: -8 };

/** A tall dark ballroom, 16 × 16 m; the camera looks up the plan. */
const BALLROOM: RoomModel = {
  outline: [
    { x: 0, y: 0 },
    { x: 16, y: 0 },
    { x: 16, y: 16 },
    { x: 0, y: 16 },
  ],
  ceilingM: 7,
  roof: { kind: 'flat' },
  finishes: { ceiling: 0.2, walls: 0.25, floor: 0.15 },
  blockers: [],
};
const SCENE: FrameScene = {
  room: BALLROOM,
  features: [],
  camera: { spot: { x: 8, y: 15 }, heightM: 1.6 },
  subject: { spot: { x: 8, y: 11 }, eyeM: 1.6, facingDeg: 180 },
  frame: { focalMm: 35, sensorWidthMm: 36, sensorHeightMm: 24, upright: false },
  stands: [],
};

/** A bare head so far from the camera, a little aside of the axis, aimed at the subject's head. */
function backAt(fromCameraM: number) {
  const { camera, subject } = SCENE;
  const asideM = 0.15 * fromCameraM;
  const spot = { x: 8 + asideM, y: camera.spot.y - Math.sqrt(fromCameraM ** 2 - asideM ** 2) };
  const { facingDeg, tiltDeg } = aimAt(spot, 2.4, subject.spot, subject.eyeM);
  return { spot, lamp: bareLamp(HEAD, { ...spot, z: 2.4 }, facingDeg, tiltDeg) };
}

describe('the frame against published values', () => {
  it('the reflectance that both kinds of meter agree on is 0.157', () => {
    const { value, tolerance } = truth.midReflectance;
    expectClose(MID_REFLECTANCE, value, tolerance, 'πK/C');
  });

  it('mid-grey is encoded as 118 of 255 (from memory)', () => {
    expect(framePicture(Float64Array.of(0), 1, 1)[0]).toBe(truth.midGrey);
  });
});

describe('common practice, nothing of which is built in', () => {
  it.each(backLight.fromCameraM)(
    'P11: a back light in the picture %d m away is a veil at 1/4 and more, a star at 1/64 and less',
    (fromCameraM) => {
      const { spot, lamp } = backAt(fromCameraM);
      const stand = { id: 'back', letter: 'B', spot, heightM: 2.4, umbrellaRadiusM: null };
      const judged = (powerStops: number) =>
        lightsInFrame({ ...SCENE, stands: [stand] }, [{ standId: 'back', lamp, powerStops }], backLight)[0]
          ?.judged;
      expect(backLight.veilPowerStops.map(judged)).toEqual(backLight.veilPowerStops.map(() => 'veil'));
      expect(backLight.starPowerStops.map(judged)).toEqual(backLight.starPowerStops.map(() => 'star'));
    },
  );

  it('P9: in a dark ballroom, the share of the frame that is black behind the back light grows as it comes forward', () => {
    const rays = castFrame(SCENE, 48, 32);
    if (rays.kind === 'cannot') throw new Error(rays.reason);
    const exchange = factorRoomAtOnce(BALLROOM, { patchM: 1.6 });
    const sight = createSight(BALLROOM);
    const links = linkFrame(rays, exchange.patches, sight);
    const sail = { diameterM: 1, forwardFraction: 0.5 };
    const mark = { spot: { x: 6.2, y: 12.8 }, heightM: 2.4 };
    const aim = aimAt(mark.spot, mark.heightM, SCENE.subject.spot, 1.6);
    const key = umbrellaLamp(HEAD, sail, { ...mark.spot, z: mark.heightM }, aim.facingDeg, aim.tiltDeg);
    const keyLight = { lamp: key, powerStops: -6, light: lightRoom(exchange, sight, key) };
    const shares = truth.forward.fromCameraM.map((fromCameraM) => {
      const { spot, lamp } = backAt(fromCameraM);
      const back = { lamp, powerStops: -4, light: lightRoom(exchange, sight, lamp) };
      const levels = shadeFrame(links, sight, [keyLight, back], 0, backLight) ?? new Float64Array();
      return darkBehind(rays, levels, spot).darkFraction;
    });
    for (const [index, share] of shares.entries())
      if (index > 0) expect(share).toBeGreaterThan(shares[index - 1] ?? 1);
  });
});
