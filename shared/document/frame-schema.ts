import * as z from 'zod/mini';
import {
  cameraSchema,
  degrees,
  ev100,
  exposureSchema,
  id,
  instant,
  markSchema,
  powerStops,
  spotSchema,
  tiltDeg,
  within,
} from './fields.ts';

/** How the flash on the camera is used: straight, with its card, or turned to ceiling and walls. */
const FLASH_USES = ['direct', 'card', 'bounce'] as const;

/** The flash on the camera in one moment; tilt and facing only where it is turned away from the lens axis. */
export const cameraLightSchema = z.object({
  use: z.enum(['off', ...FLASH_USES]),
  powerStops,
  /** Downward from level, as for a head. */
  tiltDeg: z.exactOptional(tiltDeg),
  /** Bearing, clockwise from plan-up. */
  facingDeg: z.exactOptional(degrees),
});

/** A light that fired in a test frame, with everything that was set on it: later changes do not reach it. */
const firedSchema = z.discriminatedUnion('on', [
  z.object({
    on: z.literal('stand'),
    standId: id,
    job: z.enum(['key', 'back']),
    headGear: id,
    umbrellaGear: z.nullable(id),
    mark: markSchema,
  }),
  z.object({
    on: z.literal('camera'),
    use: z.enum(FLASH_USES),
    flashGear: id,
    cardGear: z.nullable(id),
    /** The flash itself: spot and height of the camera, where it points, its power. */
    mark: markSchema,
  }),
]);

/** One test frame: what was set, and how far over or under it came out. */
export const frameSchema = z.object({
  by: id,
  at: instant,
  momentId: id,
  /** The lights that fired; none for a frame of the ambient light alone. */
  lights: z.array(firedSchema).check(z.maxLength(12)),
  /** Where the stand-in stood; it faces the camera. */
  spot: spotSchema,
  eyeM: within(0.3, 3),
  camera: cameraSchema,
  exposure: exposureSchema,
  /** The ambient light as it was known then. */
  ambientEv100: z.nullable(ev100),
  /** Where the result comes from: judged by eye, a flash meter, or read from a picture. */
  source: z.enum(['seen', 'meter', 'picture']),
  /** Over (+) or under (−) what is correct. */
  stops: within(-10, 10),
  /** What of the picture the result is about. */
  what: z.enum(['subject', 'background', 'rim']),
});
