import { edgesOf } from '../geometry/polygon.ts';
import { add, distance, dot, type Spot, scale, subtract, unit } from '../geometry/spot.ts';
import { isPositive } from '../units/finite.ts';
import { checkedOutline, type OutlineOutcome, outlineProblem, valueInWords } from './room-outline.ts';

/** Walls that differ by less than this are taken for parallel: sine of one degree. @source own-rule */
const PARALLEL_SINE = Math.sin(Math.PI / 180);
/** A wall that gives way keeps at least this much [m]. @source own-rule */
const LEAST_LEFT_M = 0.05;

function missing(what: 'corner' | 'wall', index: number, count: number): { readonly reason: string } {
  return { reason: `There is no ${what} ${valueInWords(index + 1, '')}; the room has ${count}.` };
}

/** @returns lengths of the walls; wall i runs from corner i to the next [m] */
export function wallLengthsM(outline: readonly Spot[]): number[] {
  return edgesOf(outline).map(([a, b]) => distance(a, b));
}

/**
 * The outline with one corner put elsewhere; both its walls turn with it.
 *
 * @param corner its index, from 0
 * @param spot where it goes [m]
 */
export function withCornerAt(outline: readonly Spot[], corner: number, spot: Spot): OutlineOutcome {
  if (outline[corner] === undefined) return missing('corner', corner, outline.length);
  return checkedOutline(outline.map((one, index) => (index === corner ? spot : one)));
}

/**
 * The outline with a new corner in a wall: after its first corner and before its second.
 *
 * @param wall its index, from 0: the wall that runs from corner `wall` to the next
 * @param spot the new corner [m]; on the wall or anywhere else
 */
export function withCornerAdded(outline: readonly Spot[], wall: number, spot: Spot): OutlineOutcome {
  if (outline[wall] === undefined) return missing('wall', wall, outline.length);
  return checkedOutline([...outline.slice(0, wall + 1), spot, ...outline.slice(wall + 1)]);
}

/**
 * The outline without one corner: its two walls become one.
 *
 * @param corner its index, from 0
 */
export function withoutCorner(outline: readonly Spot[], corner: number): OutlineOutcome {
  if (outline[corner] === undefined) return missing('corner', corner, outline.length);
  return checkedOutline(outline.filter((_, index) => index !== corner));
}

/** Which later wall gives or takes the difference: so many walls on; 'none' parallel, or none 'short' of it. */
function wallThatYields(
  outline: readonly Spot[],
  wall: number,
  along: Spot,
  byM: number,
): number | 'none' | 'short' {
  const edges = edgesOf(outline);
  let parallels = 0;
  for (let on = 1; on < edges.length; on++) {
    const edge = edges[(wall + on) % edges.length];
    const way = edge ? unit(subtract(edge[1], edge[0])) : null;
    if (!edge || !way || Math.abs(way.x * along.y - way.y * along.x) > PARALLEL_SINE) continue;
    parallels += 1;
    // Its start moves by `byM` along the edited wall and its end stays.
    const leftM = distance(edge[0], edge[1]) - byM * Math.sign(dot(way, along));
    if (leftM >= LEAST_LEFT_M) return on;
  }
  return parallels === 0 ? 'none' : 'short';
}

/**
 * The outline with one wall as long as typed. The wall's first corner stays. The rule for the rest: the walls
 * after it are pushed along the wall's own direction, unturned and unstretched, up to the first wall parallel
 * to it (within 1°) that is long enough to take the difference; that one becomes longer or shorter, and
 * everything after it stays. So a rectangle stays a rectangle, an L an L, and a corner that moves keeps its
 * angle. Where no wall is parallel (a triangle), only the wall's second corner moves, and angles change.
 *
 * @param wall its index, from 0: the wall that runs from corner `wall` to the next
 * @param lengthM wanted length [m]
 * @returns a new outline; else the reason, also when no parallel wall can give that much
 */
export function withWallLength(outline: readonly Spot[], wall: number, lengthM: number): OutlineOutcome {
  const edge = edgesOf(outline)[wall];
  if (edge === undefined) return missing('wall', wall, outline.length);
  const before = outlineProblem(outline);
  if (before !== null) return { reason: before };
  if (!isPositive(lengthM)) {
    return { reason: `The length is ${valueInWords(lengthM, ' m')}; it must be above 0.` };
  }
  const along = unit(subtract(edge[1], edge[0]));
  if (!along) return { reason: `Wall ${wall + 1} has no length.` };
  const byM = lengthM - distance(edge[0], edge[1]);
  const yielding = wallThatYields(outline, wall, along, byM);
  if (yielding === 'short') {
    const words = `No wall along wall ${wall + 1} can give ${valueInWords(Math.abs(byM), ' m')}.`;
    return { reason: words };
  }
  const moving = yielding === 'none' ? 1 : yielding;
  const push = scale(along, byM);
  return checkedOutline(
    outline.map((corner, index) => {
      const on = (index - wall - 1 + outline.length) % outline.length;
      return on < moving ? add(corner, push) : corner;
    }),
  );
}
