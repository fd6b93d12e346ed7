import { areaOf, centroidOf, contains, isSimple } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import type { Vec3 } from '../../geometry/vec3.ts';
import { plainOutline, positiveOrder, reflexCorners } from './outline.ts';
import { createRoof } from './roof.ts';
import type { Blocker, RoomModel } from './room-model.ts';

/** Why a room cannot be lit: which part of it, the blocker where it is one's, and the reason in plain words. */
export type RoomProblem = {
  readonly field: 'outline' | 'ceilingM' | 'roof' | 'ceiling' | 'walls' | 'floor' | 'blocker';
  readonly id: string | null;
  readonly reason: string;
};

/** A room or thing may be this long [m], a wall this low and this high [m], a thing this high [m]. */
const MOST_M = 300;
const LEAST_WALL_M = 1.5;
const MOST_WALL_M = 60;
/** A room smaller than this [m²] is no room. */
const LEAST_AREA_M2 = 1;
/** What is brighter would need hundreds of bounces, and no painted surface is. */
const MOST_REFLECTANCE = 0.95;
/** Beyond this many, no plan is a plan of a reception. */
const MOST_BLOCKERS = 60;
const MOST_CORNERS = 200;

function inWords(value: number, unit: string): string {
  if (!Number.isFinite(value)) return 'not a number';
  return `${Math.abs(value) < 1e6 ? Math.round(value * 100) / 100 : value.toExponential(1)}${unit}`;
}

/** What is wrong with an outline, to be put after "The outline …"; null for nothing. */
function outlineFault(outline: readonly Spot[]): string | null {
  if (outline.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y)))
    return 'has a corner that is nowhere';
  if (outline.length < 3) return `has ${outline.length} corners; it needs 3 or more`;
  if (outline.length > MOST_CORNERS)
    return `has ${outline.length} corners; at most ${MOST_CORNERS} can be used`;
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const lengthM = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  if (!(lengthM <= MOST_M)) return `is ${inWords(lengthM, ' m')} long; at most ${MOST_M} m can be used`;
  // Farther off, the corners would lose their digits.
  const farM = Math.max(...xs.map(Math.abs), ...ys.map(Math.abs));
  if (farM > 100 * MOST_M) return `lies ${inWords(farM, ' m')} from the plan’s origin`;
  if (!isSimple(outline)) return areaOf(outline) > 0 ? 'crosses itself' : 'has no area';
  return null;
}

function reflectanceFault(value: number): string | null {
  if (value >= 0 && value <= MOST_REFLECTANCE) return null;
  return `${inWords(value, '')}; it must lie between 0 and ${MOST_REFLECTANCE}`;
}

function outlineProblem({ outline }: RoomModel): RoomProblem | null {
  const fault = outlineFault(outline);
  if (fault) return { field: 'outline', id: null, reason: `The room’s outline ${fault}.` };
  const area = areaOf(outline);
  if (area >= LEAST_AREA_M2) return null;
  return {
    field: 'outline',
    id: null,
    reason: `The room’s outline holds ${inWords(area, ' m²')}; too small for a room.`,
  };
}

function heightProblem({ outline, ceilingM, roof }: RoomModel): RoomProblem | null {
  if (!(ceilingM >= LEAST_WALL_M && ceilingM <= MOST_WALL_M)) {
    const reason = `The walls are ${inWords(ceilingM, ' m')} high; between ${LEAST_WALL_M} m and ${MOST_WALL_M} m can be used.`;
    return { field: 'ceilingM', id: null, reason };
  }
  if (roof.kind === 'flat') return null;
  const problem = (reason: string): RoomProblem => ({ field: 'roof', id: null, reason });
  if (!(roof.peakM > ceilingM)) {
    return problem(
      `The peak at ${inWords(roof.peakM, ' m')} is not above the walls, ${inWords(ceilingM, ' m')}.`,
    );
  }
  if (roof.peakM > MOST_WALL_M) {
    return problem(`The peak is ${inWords(roof.peakM, ' m')} high; at most ${MOST_WALL_M} m can be used.`);
  }
  if (roof.kind === 'ridge') {
    return Number.isFinite(roof.ridgeDeg) ? null : problem('The bearing of the ridge is not a number.');
  }
  const inward = reflexCorners(positiveOrder(outline)).length;
  if (inward === 0) return null;
  return problem(`A roof with one peak needs an outline without inward corners; this one has ${inward}.`);
}

function finishProblem({ finishes }: RoomModel): RoomProblem | null {
  for (const field of ['ceiling', 'walls', 'floor'] as const) {
    const fault = reflectanceFault(finishes[field]);
    if (fault) return { field, id: null, reason: `The reflectance of the ${field} is ${fault}.` };
  }
  return null;
}

function blockerProblem({ id, name, outline, heightM, reflectance }: Blocker): RoomProblem | null {
  const problem = (reason: string): RoomProblem => ({ field: 'blocker', id, reason });
  const fault = outlineFault(outline);
  if (fault) return problem(`The outline of ${name} ${fault}.`);
  if (!(heightM > 0))
    return problem(`${name} is ${inWords(heightM, ' m')} high; its height must be above 0.`);
  if (!Number.isFinite(heightM)) return problem(`The height of ${name} is not a number.`);
  const faint = reflectanceFault(reflectance);
  return faint ? problem(`The reflectance of ${name} is ${faint}.`) : null;
}

/**
 * Why a room cannot be made ready for light, the first reason found. A blocker that reaches outside the room is
 * no problem: what is outside is left out.
 *
 * @returns the part, the blocker's id where it is one, and a sentence with the value; null when all can be used
 * @source own-rule
 */
export function roomProblem(room: RoomModel): RoomProblem | null {
  const own = outlineProblem(room) ?? heightProblem(room) ?? finishProblem(room);
  if (own) return own;
  if (room.blockers.length > MOST_BLOCKERS) {
    const reason = `${room.blockers.length} tall things stand in the room; at most ${MOST_BLOCKERS} can be used.`;
    return { field: 'blocker', id: null, reason };
  }
  for (const blocker of room.blockers) {
    const problem = blockerProblem(blocker);
    if (problem) return problem;
  }
  const middle = centroidOf(room.outline);
  const filling = room.blockers.find(
    ({ outline }) => contains(outline, middle) && room.outline.every((corner) => contains(outline, corner)),
  );
  if (!filling) return null;
  return { field: 'blocker', id: filling.id, reason: `${filling.name} fills the whole room.` };
}

/**
 * Why a lamp cannot stand where it is.
 *
 * @param room one without a problem of its own
 * @param at the lamp's centre [m]
 * @returns a sentence with the value; null when it can
 * @source own-rule
 */
export function lampProblem(room: RoomModel, at: Vec3): string | null {
  if (![at.x, at.y, at.z].every(Number.isFinite)) return 'The light’s place is not a number.';
  if (!contains(room.outline, at)) return 'The light stands outside the room.';
  if (!(at.z > 0)) return `The light is at ${inWords(at.z, ' m')}; that is not above the floor.`;
  const roofM = createRoof(room)(at);
  if (!(at.z < roofM)) {
    return `The light is ${inWords(at.z, ' m')} up; the roof there is at ${inWords(roofM, ' m')}.`;
  }
  const inside = room.blockers.find(
    ({ outline, heightM }) =>
      at.z < heightM && (contains(outline, at) || contains(plainOutline(outline), at)),
  );
  return inside ? `The light is inside ${inside.name}.` : null;
}
