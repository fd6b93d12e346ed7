import * as Y from 'yjs';
import { lightInputOf } from '../../client/state/light-input.ts';
import { roomModelOf } from '../../client/state/room-model.ts';
import { castFrame } from '../../core/light/frame/cast-frame.ts';
import { frameStats } from '../../core/light/frame/frame-stats.ts';
import { linkFrame } from '../../core/light/frame/link-frame.ts';
import { framePicture } from '../../core/light/frame/picture.ts';
import { combineShades } from '../../core/light/frame/shade-frame.ts';
import { shadeLamp } from '../../core/light/frame/shade-lamp.ts';
import { lampOf } from '../../core/light/lamps/lamp-recipe.ts';
import { prepareLightDesk } from '../../core/light/report/light-desk.ts';
import type { LightInput } from '../../core/light/report/light-input.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { demoNight } from '../../server/nights/demo-night.ts';
import { createNight } from '../../shared/document/create-night.ts';
import { declareRoots } from '../../shared/document/roots.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { asId, type NightId } from '../../shared/ids.ts';
import { spread, spreadLine } from './percentiles.ts';

const RUNS = 120;
const WARM_UP = 30;
const [COLUMNS, ROWS] = [48, 32];

/** The demo night, as the lead's phone reads it. */
function demo() {
  const doc = new Y.Doc();
  declareRoots(doc);
  let made = 0;
  const hand = { person: 'bench', now: () => 1, newId: () => `id-${made++}` };
  createNight(doc, hand, asId<NightId>('bench'), demoNight('2026-05-16'));
  const night = readNight(doc);
  const room = roomModelOf(night);
  const input = lightInputOf(night, (stand) => stand.place.mark, true);
  if (!room || !input) throw new Error('the demo night has no room or no moment');
  return { room, input };
}

/** The key a little farther on its way across the floor. */
const moved = (input: LightInput, run: number): LightInput => ({
  ...input,
  units: input.units.map((unit) =>
    unit.job === 'key'
      ? { ...unit, mark: { ...unit.mark, spot: { x: 12.9 - run * 0.02, y: 9.1 - run * 0.01 } } }
      : unit,
  ),
});

function timed(work: (run: number) => unknown): number[] {
  const took: number[] = [];
  for (let run = -WARM_UP; run < RUNS; run++) {
    const from = performance.now();
    work(run + WARM_UP);
    if (run >= 0) took.push(performance.now() - from);
  }
  return took;
}

/** What the frame check of the demo hall takes, part by part, and a whole report while a stand is dragged. */
export async function benchFrameCheck(): Promise<string[]> {
  const { room, input } = demo();
  const exchange = factorRoomAtOnce(room);
  const sight = createSight(room);
  const { features, camera, subject, frame, exposure } = input;
  const scene = { room, features, camera, subject, frame, stands: [] };
  const cast = () => {
    const rays = castFrame(scene, COLUMNS, ROWS);
    if (rays.kind === 'cannot') throw new Error(rays.reason);
    return linkFrame(rays, exchange.patches, sight);
  };
  const links = cast();
  const [key] = input.units;
  if (!key) throw new Error('the demo night has no key');
  const lamp = lampOf(key.recipe, key.mark);
  const light = lightRoom(exchange, sight, lamp);
  const shade = shadeLamp(links, sight, lamp, light);
  const look = () => {
    const levels = combineShades([{ shade, powerStops: -6 }], null, exposure, links.rays.count);
    if (!levels) throw new Error('no levels');
    return [frameStats(links.rays, levels), framePicture(levels, COLUMNS, ROWS)];
  };
  const steps = prepareLightDesk(exchange);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const desk = step.value;
  const parts = {
    cast: timed(cast),
    shade: timed(() => shadeLamp(links, sight, lamp, light)),
    look: timed(look),
    report: timed((run) => desk.report(moved(input, run))),
  };
  return [
    spreadLine('frame check: rays cast and linked', spread(parts.cast), 'ms'),
    spreadLine('frame check: one moved light shaded', spread(parts.shade), 'ms'),
    spreadLine('frame check: levels, numbers, picture', spread(parts.look), 'ms'),
    spreadLine('whole report, one light dragged', spread(parts.report), 'ms'),
  ];
}
