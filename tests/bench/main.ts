import { benchDrag } from './drag.ts';
import { benchFirstLoad } from './first-load.ts';
import { benchFrameCheck } from './frame-check.ts';
import { benchOneWay } from './one-way.ts';
import { benchPlan } from './plan.ts';
import { benchRoomLight } from './room-light.ts';
import { benchTapToDrawn } from './tap-to-drawn.ts';

// `npm run bench`: figures of this machine in this hour. Compare ratios, not milliseconds, with another run's.
console.log(`${''.padEnd(46)} ${'p50'.padStart(8)} ${'p95'.padStart(8)} ${'p99'.padStart(8)}`);
for (const bench of [
  benchRoomLight,
  benchFrameCheck,
  benchDrag,
  benchPlan,
  benchOneWay,
  benchTapToDrawn,
  benchFirstLoad,
])
  for (const line of await bench()) console.log(line);
