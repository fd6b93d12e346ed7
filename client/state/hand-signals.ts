import { nearestOnSegment } from '../../core/geometry/polygon.ts';
import { distance, type Spot } from '../../core/geometry/spot.ts';
import { bearingDeg, turnDeg } from '../../core/guidance/bearing.ts';
import { DEFAULT_STEP_M, stepsFor } from '../../core/guidance/steps.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { Mark } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { asksToWalk } from '../words/mark-words.ts';
import { wayBetween } from './ways.ts';

/** One leg of a way as it is shown with arm and fingers across a room. */
export interface LegSignal {
  /** Where the lead's arm points, clockwise from the lead's own line to the assistant. */
  readonly armDeg: number;
  /** The same for the assistant, who looks at the lead. */
  readonly ownDeg: number;
  /** Steps of the assistant; a half for less than one. */
  readonly steps: number;
}

/** A carry as gestures: which stand, and for each leg which way and how far. */
export interface HandSignals {
  readonly letter: string;
  /** How many fingers: one for the first stand of the night, two for the second. */
  readonly fingers: number;
  readonly legs: readonly LegSignal[];
  /** Why nobody can walk there; the only leg is the straight line then. */
  readonly noWay: string | null;
}

function stepsOf(legM: number, stepM: number): number {
  return legM < 0.75 * stepM ? 0.5 : stepsFor(legM, stepM);
}

/** Bends flatter than this are left out: with the table before their eyes people go round it by themselves, m. */
const FLAT_M = 0.35;

/** How far a spot lies from the line between two others. */
function asideM(spot: Spot, from: Spot, to: Spot): number {
  return distance(spot, nearestOnSegment(from, to, spot));
}

/** A way with its flattest bends left out, so that few signs are needed; its ends stay. */
function fewerLegs(spots: readonly Spot[]): readonly Spot[] {
  const [from, to] = [spots[0], spots.at(-1)];
  if (!from || !to || spots.length < 3) return spots;
  const off = spots.map((spot) => asideM(spot, from, to));
  const widest = off.indexOf(Math.max(...off));
  if ((off[widest] ?? 0) < FLAT_M) return [from, to];
  return [...fewerLegs(spots.slice(0, widest + 1)), ...fewerLegs(spots.slice(widest)).slice(1)];
}

function legSignal(camera: Spot, from: Spot, to: Spot, stepM: number): LegSignal | null {
  const [sight, way] = [bearingDeg(camera, from), bearingDeg(from, to)];
  if (sight === null || way === null) return null;
  return {
    armDeg: turnDeg(sight, way),
    ownDeg: turnDeg(sight + 180, way),
    steps: stepsOf(distance(from, to), stepM),
  };
}

/**
 * The gestures that bring a stand to a mark, for a lead at the camera and an assistant who stands by the stand (then
 * at each bend) and looks at the lead. Null without a camera, or where the stand stands on it.
 */
export function handSignals(night: Night, stand: Stand, mark: Mark): HandSignals | null {
  const camera = night.moment?.view.camera.spot;
  if (!camera) return null;
  const from = stand.place.mark;
  const fingers = night.stands.findIndex(({ id }) => id === stand.id) + 1;
  const sign = { letter: stand.kit.letter, fingers };
  if (!asksToWalk(from, mark)) return { ...sign, legs: [], noWay: null };
  const way = wayBetween(night, from.spot, mark.spot);
  const spots = way.kind === 'way' ? fewerLegs(way.legs) : [from.spot, mark.spot];
  const carrier = [...night.people.values()].find(({ role }) => role === 'assistant');
  const legs = spots.slice(1).map((to, index) => {
    const start = spots[index] ?? to;
    return legSignal(camera, start, to, carrier?.stepM ?? DEFAULT_STEP_M);
  });
  const known = legs.filter((leg) => leg !== null);
  if (known.length < legs.length) return null;
  return { ...sign, legs: known, noWay: way.kind === 'none' ? way.reason : null };
}
