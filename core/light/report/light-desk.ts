import { above } from '../../geometry/vec3.ts';
import { ratioFromStops } from '../../units/stops.ts';
import { flashStops } from '../exposure.ts';
import type { Observation } from '../fit/update.ts';
import { lampOf } from '../lamps/lamp-recipe.ts';
import { flashesLeft, recycleS } from '../powers/recycle.ts';
import type { SolvedPowers } from '../powers/solve-powers.ts';
import type { RoomExchange } from '../room/exchange.ts';
import { gatherWeights } from '../room/gather.ts';
import { lampProblem } from '../room/room-problem.ts';
import { createSight } from '../room/sight.ts';
import { faceGrid } from './face-grid.ts';
import { frameReport } from './frame-report.ts';
import { levelMap } from './level-map.ts';
import type { LightInput, LightUnit } from './light-input.ts';
import type { CannotReport, LightReport, UnitReport } from './light-report.ts';
import { createMemo } from './memo.ts';
import { learntOf, nextFrame, outputFactor, roomFactor, roomFit, type UnitParts } from './room-fit.ts';
import { rimParts, subjectParts, subjectReport } from './subject-report.ts';
import { type RoomLight, roomLight, type SeenLight, seenLight, unitKey } from './unit-light.ts';
import { type ViewLight, viewKey, viewLight } from './view-light.ts';
import { wantedPowers } from './wanted-powers.ts';

/** A room that is ready to be asked about its light. Numbers that a question leaves as they were are kept. */
export interface LightDesk {
  report(input: LightInput): LightReport | CannotReport;
}

/** Points of the face grid that are looked at between two signs of progress. */
const POINTS_AT_A_TIME = 48;

/** Which light is outside the room, inside a pillar, or somewhere else that it cannot be. */
function unitProblem({ room }: RoomExchange, units: readonly LightUnit[]): string | null {
  for (const { letter, mark } of units) {
    const problem = lampProblem(room, above(mark.spot, mark.heightM));
    if (problem !== null) return `${letter}: ${problem}`;
  }
  return null;
}

/** A unit as the report tells of it. */
function unitReport(
  unit: LightUnit,
  at: number,
  parts: readonly UnitParts[],
  light: { readonly out: readonly number[]; readonly room: number; readonly powers: SolvedPowers },
  input: LightInput,
): Omit<UnitReport, 'seen' | 'facingStops'> {
  const { out, room, powers } = light;
  const full = parts.map(({ straightLuxSeconds, returnedLuxSeconds }, index) => ({
    straight: straightLuxSeconds * (out[index] ?? 1),
    returned: returnedLuxSeconds * (out[index] ?? 1) * room,
  }));
  const others = full.reduce((sum, { straight, returned }, index) => {
    const power = ratioFromStops(input.units[index]?.mark.powerStops ?? 0);
    return index === at ? sum : sum + (straight + returned) * power;
  }, 0);
  const own = full[at] ?? { straight: 0, returned: 0 };
  const solved = powers.lights.find(({ id }) => id === unit.id)?.powerStops ?? unit.mark.powerStops;
  return {
    id: unit.id,
    letter: unit.letter,
    returnedStops: flashStops(own.returned * ratioFromStops(unit.mark.powerStops), input.exposure),
    straightLuxSeconds: own.straight,
    returnedLuxSeconds: own.returned,
    othersLuxSeconds: others,
    recycleS: unit.recycleS === null ? null : recycleS(unit.recycleS, solved),
    flashesLeft: unit.flashesFull === null ? null : flashesLeft(unit.flashesFull, [], solved),
  };
}

/**
 * Makes a room ready to be asked: the face grid gathers from every patch once. Gives its progress, 0 to 1, so
 * that whoever waits can be told.
 *
 * @param exchange of a room that `roomProblem` finds nothing wrong with
 * @returns the desk; a report of it names what is impossible in plain words instead of failing
 * @source own-rule
 */
export function* prepareLightDesk(exchange: RoomExchange): Generator<number, LightDesk> {
  const sight = createSight(exchange.room);
  const grid = faceGrid(exchange.room.outline);
  const { count } = exchange.patches;
  const gridWeights = new Float64Array(grid.points.length * count);
  for (let from = 0; from < grid.points.length; from += POINTS_AT_A_TIME) {
    const some = grid.points.slice(from, from + POINTS_AT_A_TIME);
    gridWeights.set(gatherWeights(exchange, sight, some, null), from * count);
    yield Math.min(1, (from + POINTS_AT_A_TIME) / grid.points.length);
  }
  const rememberRoom = createMemo<RoomLight>();
  const rememberSeen = createMemo<SeenLight>();
  const rememberView = createMemo<ReturnType<typeof viewLight>>();
  const rememberFrame = createMemo<Observation | null>();

  const reportOf = (input: LightInput, view: ViewLight, madeFrom: string): LightReport | CannotReport => {
    const { units, exposure } = input;
    const belief = roomFit(exchange, sight, input, rememberFrame);
    const rooms = units.map((unit) =>
      rememberRoom(unit.id, unitKey(unit), () =>
        roomLight(exchange, sight, grid, gridWeights, lampOf(unit.recipe, unit.mark)),
      ),
    );
    const lit = units.map((unit, at) => ({
      unit,
      seen: rememberSeen(unit.id, unitKey(unit) + madeFrom, () =>
        seenLight(view, sight, rooms[at] as RoomLight),
      ),
    }));
    const lamps = units.map((unit, at) => ({ unit, lamp: (rooms[at] as RoomLight).lamp }));
    const seen = frameReport({ input, view, sight, lit, rooms, belief });
    if (!seen) return { kind: 'cannot', reason: 'The camera’s settings give no picture.' };
    const subject = subjectParts(lit);
    const rim = rimParts(lit);
    const { powers, advice } = wantedPowers({ input, view, lit, belief, subject, rim });
    const out = units.map((unit) => outputFactor(belief, unit));
    const shared = { out, room: roomFactor(belief), powers };
    return {
      kind: 'report',
      units: units.map((unit, at) => ({
        ...unitReport(unit, at, subject, shared, input),
        facingStops: flashStops(
          (lit[at]?.seen.subject.facingLuxSeconds ?? 0) *
            (out[at] ?? 1) *
            ratioFromStops(unit.mark.powerStops),
          exposure,
        ),
        seen: seen.lights.find(({ standId }) => standId === unit.id) ?? null,
      })),
      subject: subjectReport({ input, view, sight, lit, lamps, belief }),
      frame: seen.frame,
      map: levelMap(grid, input, rooms, belief),
      powers,
      advice,
      learnt: learntOf(belief),
      next: nextFrame(belief, subject, rim, view.ambientLux, exposure),
    };
  };

  return {
    report: (input) => {
      const problem = unitProblem(exchange, input.units);
      if (problem !== null) return { kind: 'cannot', reason: problem };
      const madeFrom = viewKey(input);
      const view = rememberView('view', madeFrom, () => viewLight(exchange, sight, input));
      return view.kind === 'cannot' ? view : reportOf(input, view, madeFrom);
    },
  };
}
