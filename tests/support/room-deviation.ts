import type { LampLight, RoomExchange, Surface } from '../../core/light/room/exchange.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { returnedAt } from '../../core/light/room/gather.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import { createSight, type Sight } from '../../core/light/room/sight.ts';
import type { RandomRoom } from './random-room.ts';
import { type Estimate, type Meter, type TraceRun, trace } from './tracer.ts';
import { facesOf } from './tracer-room.ts';
import { sceneOf } from './tracer-scene.ts';

/** One quantity twice: by the room model and by the tracer. */
export type Compared = {
  /** `total floor`, `returned meter 3` … */
  readonly what: string;
  readonly model: number;
  readonly traced: Estimate;
  /** model/traced − 1 */
  readonly deviation: number;
  /** Standard error of the tracer over its mean */
  readonly error: number;
};

/** The tracer's name of a surface of core. */
function nameOf(surface: Surface): string {
  if (surface.kind === 'wall') return `wall ${surface.wall}`;
  return surface.kind === 'blocker' ? `blocker ${surface.blocker}` : surface.kind;
}

/** Means over each surface [lx·s]. */
function meansOf(
  { patches }: RoomExchange,
  light: LampLight,
): Map<string, { total: number; returned: number }> {
  const sums = new Map<string, { area: number; direct: number; returned: number }>();
  patches.surfaces.forEach((surface, index) => {
    const name = nameOf(surface);
    const sum = sums.get(name) ?? { area: 0, direct: 0, returned: 0 };
    const area = patches.areas[index] ?? 0;
    sum.area += area;
    sum.direct += area * (light.direct[index] ?? 0);
    sum.returned += area * (light.returned[index] ?? 0);
    sums.set(name, sum);
  });
  return new Map(
    [...sums].map(([name, { area, direct, returned }]) => [
      name,
      { total: (direct + returned) / area, returned: returned / area },
    ]),
  );
}

function compared(what: string, model: number, traced: Estimate): Compared {
  return { what, model, traced, deviation: model / traced.mean - 1, error: traced.error / traced.mean };
}

function atMeter(exchange: RoomExchange, sight: Sight, light: LampLight, room: RandomRoom, meter: Meter) {
  const [x, y, z] = meter.at;
  const [nx, ny, nz] = meter.normal;
  const lamp = room.coreLamp;
  const direct = sight.clear(lamp.x, lamp.y, lamp.z, x, y, z) ? lamp.on(x, y, z, nx, ny, nz) : 0;
  const returned = returnedAt(exchange, sight, light.exitance, { x, y, z }, { x: nx, y: ny, z: nz });
  return { total: direct + returned, returned };
}

/** Total and returned light on every surface and every meter of a room, by the model and by the tracer. */
export function compareRoom(room: RandomRoom, run: TraceRun): Compared[] {
  const exchange = factorRoomAtOnce(room.model);
  const sight = createSight(room.model);
  const light = lightRoom(exchange, sight, room.coreLamp);
  const { surfaces, meters } = trace(sceneOf(facesOf(room.tracerRoom)), room.lamp, room.meters, run);
  const means = meansOf(exchange, light);
  const bySurface = [...surfaces].flatMap(([name, traced]) => {
    const mean = means.get(name) ?? { total: 0, returned: 0 };
    return [
      compared(`total ${name}`, mean.total, traced.total),
      compared(`returned ${name}`, mean.returned, traced.returned),
    ];
  });
  const byMeter = meters.flatMap((traced, index) => {
    const meter = room.meters[index] as Meter;
    const got = atMeter(exchange, sight, light, room, meter);
    return [
      compared(`total meter ${index}`, got.total, traced.total),
      compared(`returned meter ${index}`, got.returned, traced.returned),
    ];
  });
  return [...bySurface, ...byMeter];
}
