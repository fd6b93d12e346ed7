import { keepFinite } from '../../units/finite.ts';
import type { Lamp } from '../lamp.ts';

/**
 * Two lamps that fire together as one: their light adds.
 *
 * @param main where the pair is said to be
 * @param other fires with it
 * @returns the lamp at full power; as large as the larger of the two
 * @source navedtra14209
 */
export function sumLamp(main: Lamp, other: Lamp): Lamp {
  return {
    x: main.x,
    y: main.y,
    z: main.z,
    radiusM: Math.max(main.radiusM, other.radiusM),
    flux: keepFinite(main.flux + other.flux),
    on: (x, y, z, nx, ny, nz) => keepFinite(main.on(x, y, z, nx, ny, nz) + other.on(x, y, z, nx, ny, nz)),
    toward: (x, y, z) => keepFinite(main.toward(x, y, z) + other.toward(x, y, z)),
  };
}
