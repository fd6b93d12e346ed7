import { keepFinite } from '../../units/finite.ts';
import type { Lamp } from '../lamp.ts';
import { directOn } from './direct-light.ts';
import type { LampLight, RoomExchange } from './exchange.ts';
import type { Sight } from './sight.ts';

/** One row of a square matrix times a vector. */
function rowTimes(matrix: Float64Array, i: number, vector: Float64Array): number {
  const count = vector.length;
  const row = i * count;
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let j = 0;
  for (; j + 3 < count; j += 4) {
    s0 += (matrix[row + j] as number) * (vector[j] as number);
    s1 += (matrix[row + j + 1] as number) * (vector[j + 1] as number);
    s2 += (matrix[row + j + 2] as number) * (vector[j + 2] as number);
    s3 += (matrix[row + j + 3] as number) * (vector[j + 3] as number);
  }
  for (; j < count; j += 1) s0 += (matrix[row + j] as number) * (vector[j] as number);
  return s0 + s1 + (s2 + s3);
}

/** Below this reflectance, exitance over reflectance would lose its digits. */
const LEAST_REFLECTANCE = 1e-3;

/**
 * What one lamp at full power does to a room: direct light on every patch (averaged over more points the nearer
 * the patch; hidden points get none), then all bounces in one matrix–vector product.
 * ASSUMPTION: a lamp is hidden or not as its centre is. Nearer than about 5 cm to a surface the peak of light
 * there falls between the points: that patch, and what it returns, may then be off by half and more.
 *
 * @param sight of the same room
 * @returns direct and returned light [lx·s] and exitance [lm·s/m²] of every patch, for power 1
 * @source radiosity
 */
export function lightRoom(exchange: RoomExchange, sight: Sight, lamp: Lamp): LampLight {
  const { count, reflectances } = exchange.patches;
  const direct = directOn(exchange, sight, lamp);
  const exitance = new Float64Array(count);
  const returned = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    if ((reflectances[i] as number) > 0) exitance[i] = keepFinite(rowTimes(exchange.response, i, direct));
  }
  for (let i = 0; i < count; i += 1) {
    const reflectance = reflectances[i] as number;
    const back =
      reflectance > LEAST_REFLECTANCE
        ? (exitance[i] as number) / reflectance - (direct[i] as number)
        : rowTimes(exchange.formFactors, i, exitance);
    returned[i] = Math.max(0, keepFinite(back));
  }
  return { direct, exitance, returned };
}
