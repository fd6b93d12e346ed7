import type { Spot } from '../../geometry/spot.ts';
import { isPositive, keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';
import { type Exposure, INCIDENT_C } from '../exposure.ts';
import type { Lamp } from '../lamp.ts';
import type { LampLight } from '../room/exchange.ts';
import type { Sight } from '../room/sight.ts';
import type { FrameRays } from './cast-frame.ts';
import type { FrameLinks } from './link-frame.ts';
import { MID_REFLECTANCE, shadeLamp } from './shade-lamp.ts';

/** A lamp as it is set, and what it does to the room at full power; null when that is not known. */
export type FrameLight = {
  readonly lamp: Lamp;
  /** log2 of the power fraction [stops]; 0 is full */
  readonly powerStops: number;
  readonly light: LampLight | null;
};

/** The shade of one lamp at full power, and the power it is set to. */
export type PoweredShade = { readonly shade: Float64Array; readonly powerStops: number };

/** No camera tells anything darker from nothing [stops from mid-grey]. */
const BLACK_STOPS = -20;

/**
 * What the ambient light does to the picture, for every ray: illuminance times reflectance over that of
 * mid-grey. ASSUMPTION: it comes from everywhere alike, so that which way a surface faces does not matter.
 *
 * @param luxAt illuminance over a spot of the plan [lx]
 * @returns one number per ray [lx]; below zero counts as zero
 * @source iso2720
 */
export function shadeAmbient(rays: FrameRays, luxAt: (spot: Spot) => number): Float64Array {
  const shade = new Float64Array(rays.count);
  for (let ray = 0; ray < rays.count; ray += 1) {
    const lux = luxAt({ x: rays.positions[3 * ray] ?? 0, y: rays.positions[3 * ray + 1] ?? 0 });
    shade[ray] = Math.max(0, keepFinite((lux * (rays.reflectances[ray] ?? 0)) / MID_REFLECTANCE));
  }
  return shade;
}

/**
 * Puts the shades of all lamps and of the ambient light together, as light, and gives what the camera makes
 * of it: log2(H·S/(C·N²)) + log2(ρ/ρ_mid). Cheap: once per change of power or exposure.
 *
 * @param shades of lamps at full power [lx·s], with their powers
 * @param ambient as `shadeAmbient` gives it [lx]; null for none
 * @param count rays in the frame
 * @returns stops from mid-grey, one per ray, −20 where there is no light; null when a setting of the camera
 *   is not above zero
 * @source iso2720
 * @source navedtra14209
 */
export function combineShades(
  shades: readonly PoweredShade[],
  ambient: Float64Array | null,
  exposure: Exposure,
  count: number,
): Float64Array | null {
  const { iso, fNumber, shutterS } = exposure;
  const scale = iso / (INCIDENT_C * fNumber * fNumber);
  if (!isPositive(scale) || !isPositive(fNumber) || !isPositive(shutterS)) return null;
  const powers = shades.map(({ powerStops }) => ratioFromStops(powerStops));
  const rays = Number.isInteger(count) && count > 0 ? Math.min(count, MOST_RAYS) : 0;
  const levels = new Float64Array(rays);
  for (let ray = 0; ray < rays; ray += 1) {
    let light = ambient ? (ambient[ray] ?? 0) * shutterS : 0;
    for (let index = 0; index < shades.length; index += 1) {
      light += (shades[index]?.shade[ray] ?? 0) * (powers[index] ?? 0);
    }
    levels[ray] = Math.max(BLACK_STOPS, keepFinite(Math.log2(light * scale)));
  }
  return levels;
}

/** Own rule: as many as a frame of 512 × 512 has. */
const MOST_RAYS = 512 * 512;

/**
 * The whole picture in one go: every lamp shaded and all put together.
 *
 * @param ambientLux illuminance of the ambient light, the same everywhere [lx]; 0 for none
 * @returns stops from mid-grey, one per ray; null when a setting of the camera is not above zero
 * @source iso2720
 */
export function shadeFrame(
  links: FrameLinks,
  sight: Sight,
  lights: readonly FrameLight[],
  ambientLux: number,
  exposure: Exposure,
): Float64Array | null {
  const shades = lights.map(({ lamp, powerStops, light }) => ({
    shade: shadeLamp(links, sight, lamp, light),
    powerStops,
  }));
  const ambient = shadeAmbient(links.rays, () => ambientLux);
  return combineShades(shades, ambient, exposure, links.rays.count);
}
