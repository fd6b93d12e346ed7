import { pointing, type Vec3 } from '../../geometry/vec3.ts';
import { isPositive } from '../../units/finite.ts';
import type { FlashHead } from '../flash-head.ts';
import type { Lamp } from '../lamp.ts';
import { backLobe, forwardLobe, type Umbrella } from '../umbrella.ts';
import { bareLamp } from './bare-lamp.ts';
import { discLamp } from './disc-lamp.ts';

/**
 * A head shooting through a white umbrella as a lamp: a disc that throws its forward share toward the subject
 * and its back spill into the room behind. The law is that of `luxSecondsAt`.
 *
 * @param at centre of the umbrella [m]
 * @param facingDeg bearing of its axis [°]
 * @param tiltDeg of its axis, downward from level [°]
 * @returns the lamp at full power; a bare head for an umbrella without size
 * @source assumption-umbrella
 * @source howell-element-disc
 */
export function umbrellaLamp(
  head: FlashHead,
  umbrella: Umbrella,
  at: Vec3,
  facingDeg: number,
  tiltDeg: number,
): Lamp {
  if (!isPositive(umbrella.diameterM)) return bareLamp(head, at, facingDeg, tiltDeg);
  return discLamp({
    at,
    axis: pointing(facingDeg, tiltDeg),
    radiusM: umbrella.diameterM / 2,
    front: forwardLobe({ head, umbrella }),
    back: backLobe({ head, umbrella }),
  });
}
