import * as z from 'zod/mini';
import { ID_PATTERN } from '../ids.ts';

/** The fields that entries of the night document are put together from, each with what it may hold. */
export const id = z.string().check(z.regex(ID_PATTERN));
export const within = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
export const text = (longest: number) => z.string().check(z.maxLength(longest));
export const name = z.string().check(z.minLength(1), z.maxLength(80));

/** Milliseconds since 1970 by the server's clock, as this phone estimates it. */
export const instant = within(0, 8.64e15);
export const degrees = within(-360, 360);
export const tiltDeg = within(-90, 90);
/** Power as log2 of the fraction: 0 = full, -6 = 1/64. */
export const powerStops = within(-10, 0);
export const ev100 = within(-6, 16);

export const spotSchema = z.object({ x: within(-500, 500), y: within(-500, 500) });

/** Where a light belongs: metres, degrees, stops. */
export const markSchema = z.object({
  spot: spotSchema,
  heightM: within(0.1, 8),
  facingDeg: degrees,
  tiltDeg,
  powerStops,
});

export const cameraSchema = z.object({ spot: spotSchema, heightM: within(0.1, 4) });

export const exposureSchema = z.object({
  iso: within(25, 204800),
  fNumber: within(0.7, 64),
  shutterS: within(1 / 16000, 60),
});
