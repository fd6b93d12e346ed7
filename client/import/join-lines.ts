import { distance, type Spot } from '../../core/geometry/spot.ts';

/** An end of a line that is still free. */
interface End {
  readonly line: number;
  readonly atStart: boolean;
  readonly spot: Spot;
}

/** Ends sorted into squares as wide as the tolerance, so that looking near one costs the same in any drawing. */
function createEndFinder(lines: readonly (readonly Spot[])[], toleranceM: number) {
  const squares = new Map<string, End[]>();
  const taken = new Set<number>();
  const square = (value: number) => Math.floor(value / toleranceM);
  for (const [line, points] of lines.entries()) {
    for (const [atStart, spot] of [[true, points[0]] as const, [false, points.at(-1)] as const]) {
      if (!spot) continue;
      const key = `${square(spot.x)} ${square(spot.y)}`;
      const there = squares.get(key);
      const end = { line, atStart, spot };
      if (there) there.push(end);
      else squares.set(key, [end]);
    }
  }
  return {
    take: (line: number) => taken.add(line),
    isTaken: (line: number) => taken.has(line),
    /** The nearest free end within the tolerance. */
    near: (spot: Spot): End | null => {
      let best: End | null = null;
      let bestM = toleranceM;
      for (let x = square(spot.x) - 1; x <= square(spot.x) + 1; x++)
        for (let y = square(spot.y) - 1; y <= square(spot.y) + 1; y++)
          for (const end of squares.get(`${x} ${y}`) ?? []) {
            if (taken.has(end.line)) continue;
            const awayM = distance(end.spot, spot);
            if (awayM <= bestM) [best, bestM] = [end, awayM];
          }
      return best;
    },
  };
}

/** What became of lines that were drawn piece by piece. */
export interface Joined {
  /** Rings, first corner not repeated [m]. */
  readonly rings: readonly (readonly Spot[])[];
  /** Lines that lead nowhere [m]. */
  readonly open: readonly (readonly Spot[])[];
}

/**
 * Joins lines whose ends meet into rings. Where more than two meet, the nearest is taken, and of equals any: a
 * drawing with T-shaped walls may need its outline traced.
 *
 * @param lines each two points or more [m]
 * @param toleranceM ends no further apart than this are the same corner
 */
export function joinLines(lines: readonly (readonly Spot[])[], toleranceM: number): Joined {
  const ends = createEndFinder(lines, toleranceM);
  const rings: Spot[][] = [];
  const open: Spot[][] = [];
  for (const [index, line] of lines.entries()) {
    if (ends.isTaken(index)) continue;
    ends.take(index);
    let chain = [...line];
    const isRing = () => {
      const [first, last] = [chain[0], chain.at(-1)];
      return first && last && chain.length > 3 && distance(first, last) <= toleranceM;
    };
    // From the last point on as far as it goes, then from the first one, which then is the last.
    for (let side = 0; side < 2; side++) {
      while (!isRing()) {
        const last = chain.at(-1);
        const next = last && ends.near(last);
        if (!next) break;
        ends.take(next.line);
        const points = lines[next.line] ?? [];
        chain.push(...(next.atStart ? points.slice(1) : points.slice(0, -1).reverse()));
      }
      chain = chain.reverse();
    }
    if (isRing()) rings.push(chain.slice(0, -1));
    else open.push(chain);
  }
  return { rings, open };
}
