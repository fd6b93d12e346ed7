import { boxesNear, boxOf } from '../geometry/box.ts';
import { nearestOnOutline } from '../geometry/polygon.ts';
import { distance, type Spot } from '../geometry/spot.ts';
import { type LengthUnits, lengthLabel } from '../units/length.ts';
import { beyondM, outlinesCross, overlapM } from './overlap.ts';
import type { PlanFeature } from './plan-feature.ts';

/** One thing on the plan that cannot be as drawn, or that is worth a look. */
export type PlanProblem = {
  /** The feature's */
  readonly id: string;
  /** The other one's, where two are in each other */
  readonly otherId: string | null;
  readonly level: 'note' | 'problem';
  readonly reason: string;
};

type Drawn = Pick<PlanFeature, 'id' | 'kind' | 'name' | 'outline' | 'blocksWalking'>;

/** What lies in each other by less is drawn a little loosely, no more [m]. @source own-rule */
const LOOSE_M = 0.05;
/** An exit farther from every wall than this is not in a wall [m]. @source own-rule */
const IN_WALL_WITHIN_M = 0.5;

/** Doors and exits are drawn across the wall that they are in. */
function isInWalls({ kind }: Drawn): boolean {
  return kind === 'door' || kind === 'exit';
}

/** How far it is from an outline to the nearest wall, inside or outside [m]. */
function wallGapM(outline: readonly Spot[], room: readonly Spot[]): number {
  if (outlinesCross(outline, room)) return 0;
  const gap = (from: readonly Spot[], to: readonly Spot[]) =>
    from.map((corner) => {
      const nearest = nearestOnOutline(to, corner);
      return nearest ? distance(nearest, corner) : Number.POSITIVE_INFINITY;
    });
  return Math.min(...gap(outline, room), ...gap(room, outline));
}

function placeProblem(room: readonly Spot[], feature: Drawn, units: LengthUnits): PlanProblem[] {
  const { id, name, outline } = feature;
  const found = (level: PlanProblem['level'], reason: string) => [{ id, otherId: null, level, reason }];
  if (isInWalls(feature)) {
    const gapM = wallGapM(outline, room);
    if (gapM <= IN_WALL_WITHIN_M) return [];
    return found('note', `${name} is ${lengthLabel(gapM, units)} from the nearest wall.`);
  }
  const overM = beyondM(outline, room);
  if (overM <= LOOSE_M) return [];
  if (overlapM(outline, room) <= LOOSE_M) return found('problem', `${name} is outside the room.`);
  return found('problem', `${name} goes ${lengthLabel(overM, units)} into a wall.`);
}

/**
 * What on a plan cannot be as drawn: a feature outside the room, one that goes into a wall, two solid ones in
 * each other (more than 5 cm each); and, as a note, an exit or door that is in no wall (more than 0.5 m off).
 * It is about the drawing only: an empty list says nothing about the room itself.
 *
 * @param outline the room's [m]; one that is no room (fewer than three corners) has no walls to check against
 * @param features those with fewer than three corners are left out
 * @returns in the order of the features, pairs last
 */
export function planProblems(
  outline: readonly Spot[],
  features: readonly Drawn[],
  units: LengthUnits = 'metric',
): PlanProblem[] {
  const drawn = features.filter((feature) => feature.outline.length >= 3);
  const alone = outline.length < 3 ? [] : drawn.flatMap((feature) => placeProblem(outline, feature, units));
  const solid = drawn
    .filter((feature) => feature.blocksWalking && !isInWalls(feature))
    .map((feature) => ({ ...feature, box: boxOf(feature.outline) }));
  const pairs = solid.flatMap((one, index) =>
    solid.slice(index + 1).flatMap((other): PlanProblem[] => {
      // Boxes that share less than that hold no deeper point; most pairs end here.
      if (!boxesNear(one.box, other.box, -LOOSE_M)) return [];
      const deepM = overlapM(one.outline, other.outline);
      if (deepM <= LOOSE_M) return [];
      const reason = `${one.name} and ${other.name} are ${lengthLabel(deepM, units)} in each other.`;
      return [{ id: one.id, otherId: other.id, level: 'problem', reason }];
    }),
  );
  return [...alone, ...pairs];
}
