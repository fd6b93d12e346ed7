import type { Vec3 } from '../../geometry/vec3.ts';
import { shadeReturned, shadeStraight } from '../frame/shade-lamp.ts';
import type { Lamp } from '../lamp.ts';
import type { LampLight, RoomExchange } from '../room/exchange.ts';
import { lightRoom } from '../room/light-room.ts';
import type { Sight } from '../room/sight.ts';
import type { SubjectLight } from '../subject/subject-levels.ts';
import type { FaceGrid } from './face-grid.ts';
import type { LightUnit } from './light-input.ts';
import type { ViewLight } from './view-light.ts';

/** What a lamp at full power does in a room, whoever looks at it. */
export type RoomLight = {
  readonly lamp: Lamp;
  readonly light: LampLight;
  /** At the points of the face grid: straight, on an element that faces the lamp; and returned [lx·s] */
  readonly mapStraight: Float64Array;
  readonly mapReturned: Float64Array;
};

/** Sum of one row of weights times what every patch sends out [lx·s]. */
function gathered(weights: Float64Array, row: number, exitance: Float64Array): number {
  const start = row * exitance.length;
  let sum = 0;
  for (let patch = 0; patch < exitance.length; patch += 1) {
    sum += (weights[start + patch] as number) * (exitance[patch] as number);
  }
  return sum;
}

/**
 * A lamp's light in a room and over its face grid.
 *
 * @param gridWeights what each point of the grid gathers from every patch, a row per point
 * @source own-rule
 */
export function roomLight(
  exchange: RoomExchange,
  sight: Sight,
  grid: FaceGrid,
  gridWeights: Float64Array,
  lamp: Lamp,
): RoomLight {
  const light = lightRoom(exchange, sight, lamp);
  const count = grid.points.length;
  const mapStraight = new Float64Array(count);
  const mapReturned = new Float64Array(count);
  for (let index = 0; index < count; index += 1) {
    const { x, y, z } = grid.points[index] as Vec3;
    mapStraight[index] = sight.clear(lamp.x, lamp.y, lamp.z, x, y, z) ? lamp.toward(x, y, z) : 0;
    mapReturned[index] = gathered(gridWeights, index, light.exitance);
  }
  return { lamp, light, mapStraight, mapReturned };
}

/** What a lamp at full power does to the picture and to the subject. */
export type SeenLight = {
  /** On every ray of the frame, relative to mid-grey [lx·s]: straight alone, and returned alone */
  readonly shadeStraight: Float64Array;
  readonly shadeReturned: Float64Array;
  readonly subject: Omit<SubjectLight, 'id' | 'job' | 'powerStops'>;
};

/**
 * A lamp's light on the frame and on the subject's face.
 *
 * @source iso2720
 */
export function seenLight(view: ViewLight, sight: Sight, { lamp, light }: RoomLight): SeenLight {
  const { x, y, z } = view.eye;
  const clear = sight.clear(lamp.x, lamp.y, lamp.z, x, y, z);
  const on = (normal: Vec3) => (clear ? lamp.on(x, y, z, normal.x, normal.y, normal.z) : 0);
  return {
    shadeStraight: shadeStraight(view.links, sight, lamp),
    shadeReturned: shadeReturned(view.links, light),
    subject: {
      facingLuxSeconds: clear ? lamp.toward(x, y, z) : 0,
      keySideLuxSeconds: on(view.sides.keySide),
      shadowSideLuxSeconds: on(view.sides.shadowSide),
      returnedKeySideLuxSeconds: gathered(view.faceWeights, 0, light.exitance),
      returnedShadowSideLuxSeconds: gathered(view.faceWeights, 1, light.exitance),
    },
  };
}

/**
 * What a unit's lamp is made from, as text to compare: its power is not in it.
 *
 * @source own-rule
 */
export function unitKey({ recipe, mark }: LightUnit): string {
  return JSON.stringify([recipe, mark.spot, mark.heightM, mark.facingDeg, mark.tiltDeg]);
}
