import { ratioFromStops } from '../../units/stops.ts';
import { INCIDENT_C } from '../exposure.ts';
import type { Belief } from '../fit/belief.ts';
import { ambientLuxAt } from '../lamps/ambient-at.ts';
import type { FaceGrid } from './face-grid.ts';
import type { LightInput } from './light-input.ts';
import type { LevelMap } from './light-report.ts';
import { ambientFactor, outputFactor, roomFactor } from './room-fit.ts';
import type { RoomLight } from './unit-light.ts';

/** Stands for no light at all: darker than anything a camera tells from nothing [stops]. */
const NO_LIGHT_STOPS = -99;

/**
 * Levels over the plan at face height: straight light of every lamp as a meter turned to it reads it, what the
 * room returns as the mean from all round, and the ambient; at the powers that are set.
 *
 * @param rooms what each unit of the input does in the room, in their order
 * @returns stops over correct
 * @source iso2720
 */
export function levelMap(
  grid: FaceGrid,
  input: LightInput,
  rooms: readonly RoomLight[],
  belief: Belief,
): LevelMap {
  const { columns, rows, left, top, stepM } = grid;
  const { iso, fNumber, shutterS } = input.exposure;
  const scale = iso / (INCIDENT_C * fNumber * fNumber);
  const room = roomFactor(belief);
  const ambient = ambientFactor(belief) * shutterS;
  const light = new Float64Array(grid.points.length);
  for (const [index, point] of grid.points.entries()) {
    light[index] = (ambientLuxAt(input.ambientSpots, point, input.ambientEv100) ?? 0) * ambient;
  }
  for (const [at, { mapStraight, mapReturned }] of rooms.entries()) {
    const unit = input.units[at];
    if (!unit) continue;
    const power = outputFactor(belief, unit) * ratioFromStops(unit.mark.powerStops);
    for (let index = 0; index < light.length; index += 1) {
      const both = (mapStraight[index] as number) + (mapReturned[index] as number) * room;
      light[index] = (light[index] as number) + both * power;
    }
  }
  const stops = new Float64Array(columns * rows).fill(NO_LIGHT_STOPS);
  const inside = new Uint8Array(columns * rows);
  for (let index = 0; index < light.length; index += 1) {
    const place = grid.places[index] as number;
    const level = Math.log2((light[index] as number) * scale);
    inside[place] = 1;
    stops[place] = Number.isFinite(level) ? Math.max(NO_LIGHT_STOPS, level) : NO_LIGHT_STOPS;
  }
  return { columns, rows, left, top, stepM, stops, inside };
}
