import { balanceExchange } from './balance.ts';
import type { Patches, RoomExchange } from './exchange.ts';
import { putExchangeRow } from './pair-exchange.ts';
import { patchDetail } from './patch-detail.ts';
import { cutIntoPatches } from './patches.ts';
import { responseOf } from './response.ts';
import type { RoomModel } from './room-model.ts';
import { createSight } from './sight.ts';

/** How finely a room is cut. */
export type RoomGrain = {
  /** Side of a patch [m]; without it, chosen for the room */
  readonly patchM?: number;
  /** Patches at most; the side grows until they fit */
  readonly mostPatches?: number;
};

/** Patches that are aimed for: what a phone factors in about a second. */
const WANTED_PATCHES = 600;
const MOST_PATCHES = 700;
/** In a small room patches get smaller than this [m] no more. */
const LEAST_PATCH_M = 0.5;
/** How often the side may grow by a twelfth: to about tenfold. */
const MOST_GROWTHS = 30;

function* cutToFit(
  room: RoomModel,
  { patchM, mostPatches = MOST_PATCHES }: RoomGrain,
): Generator<number, Patches> {
  const most = Math.max(6, Math.min(2000, mostPatches));
  const wanted = Math.min(WANTED_PATCHES, most);
  let side = Math.max(0.1, Math.min(30, patchM ?? 2));
  if (patchM === undefined) {
    // A first, coarse cut measures the whole surface.
    yield 0;
    const area = cutIntoPatches(room, side).areas.reduce((sum, one) => sum + one, 0);
    side = Math.max(LEAST_PATCH_M, Math.sqrt(area / wanted));
  }
  let patches = cutIntoPatches(room, side);
  for (let growth = 0; growth < MOST_GROWTHS && patches.count > most; growth += 1) {
    yield growth / MOST_GROWTHS;
    side *= 13 / 12;
    patches = cutIntoPatches(room, side);
  }
  return patches;
}

/** A part of the work, its own 0 to 1 shown as a part of the whole. */
function* within<T>(start: number, end: number, steps: Generator<number, T>): Generator<number, T> {
  let step = steps.next();
  while (!step.done) {
    yield start + (end - start) * step.value;
    step = steps.next();
  }
  return step.value;
}

/**
 * Makes a room ready for light: cut into patches, form factors between all of them, the response to direct
 * light. Depends on the room alone. The room counts as CLOSED: doors and windows return light as the walls do,
 * and what the estimates of the form factors leave over is spread by scaling, so that every row of F sums to 1
 * and A·F is symmetric exactly. ASSUMPTION: all surfaces are dull (Lambertian), one reflectance for each kind.
 * Patches are about a metre in a hall, 0.5 m in a small room, larger in a huge one: some 600, at most 700 unless
 * the room has very many things.
 *
 * @param room one without a problem (see `roomProblem`)
 * @returns the room made ready; yields the share done, 0 to 1
 * @source radiosity
 */
export function* factorRoom(room: RoomModel, grain: RoomGrain = {}): Generator<number, RoomExchange> {
  const patches = yield* within(0, 0.05, cutToFit(room, grain));
  yield 0.05;
  const { count, areas } = patches;
  const detail = patchDetail(room, patches);
  const sight = createSight(room);
  const exchange = new Float64Array(count * count);
  for (let i = 0; i < count; i += 1) {
    putExchangeRow(patches, detail, sight.hides ? sight : null, i, exchange);
    if (i % 8 === 0) yield 0.05 + (0.5 * i) / count;
  }
  yield* within(0.55, 0.6, balanceExchange(exchange, areas));
  const response = yield* within(0.6, 1, responseOf(patches, exchange));
  const formFactors = exchange;
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < count; j += 1)
      formFactors[i * count + j] = (exchange[i * count + j] as number) / (areas[i] as number);
  }
  return { room, patches, response, formFactors };
}

/**
 * `factorRoom` in one go, for where nobody waits.
 *
 * @param room one without a problem (see `roomProblem`)
 * @source radiosity
 */
export function factorRoomAtOnce(room: RoomModel, grain: RoomGrain = {}): RoomExchange {
  const steps = factorRoom(room, grain);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}
