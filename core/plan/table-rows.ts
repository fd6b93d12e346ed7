import { boxOf } from '../geometry/box.ts';
import { add, rotate, type Spot, subtract } from '../geometry/spot.ts';
import { isPositive } from '../units/finite.ts';
import type { Arranged } from './arrange.ts';
import { valueInWords } from './room-outline.ts';

/** Rows of equal things. */
export type Rows = {
  readonly rows: number;
  readonly columns: number;
  /** Clear floor between two neighbours [m]; 0 puts them edge to edge */
  readonly gapM: number;
};

/** Rows of tables: the first one's middle, one table's size, and how the whole is turned. */
export type TableRows = Rows & {
  readonly at: Spot;
  /** Of one table along the row; a round one's diameter [m] */
  readonly widthM: number;
  readonly depthM: number;
  /** Clockwise about `at` [°]; at 0 a row runs to the right, the next row lies below */
  readonly turnDeg: number;
};

/** Spots, or why there are none, as a sentence with the value. */
export type SpotsOutcome = { readonly spots: readonly Spot[] } | { readonly reason: string };

/** More copies at once are a slip of the finger. @source own-rule */
const MOST_SPOTS = 200;
const MOST_SIZE_M = 200;

function rowsFault({ rows, columns, gapM }: Rows): string | null {
  for (const [count, what] of [
    [rows, 'rows'],
    [columns, 'columns'],
  ] as const) {
    if (!Number.isInteger(count) || count < 1)
      return `${valueInWords(count, '')} ${what}; at least one, and whole.`;
  }
  if (rows * columns > MOST_SPOTS) {
    return `That is ${valueInWords(rows * columns, '')} at once; at most ${MOST_SPOTS} can be placed.`;
  }
  return gapM >= 0 && gapM <= MOST_SIZE_M
    ? null
    : `The gap is ${valueInWords(gapM, ' m')}; 0 to ${MOST_SIZE_M} m.`;
}

function sizeFault({ at, widthM, depthM, turnDeg }: TableRows): string | null {
  for (const sizeM of [widthM, depthM]) {
    if (!isPositive(sizeM) || sizeM > MOST_SIZE_M) {
      return `A side is ${valueInWords(sizeM, ' m')}; above 0 and up to ${MOST_SIZE_M} m.`;
    }
  }
  return [at.x, at.y, turnDeg].every(Number.isFinite) ? null : 'The place or the turn is not a number.';
}

/**
 * Where the tables of some rows stand.
 *
 * @returns their middles [m], row by row from `at`; else the reason
 */
export function tableRows(wanted: TableRows): SpotsOutcome {
  const reason = rowsFault(wanted) ?? sizeFault(wanted);
  if (reason !== null) return { reason };
  const { at, rows, columns, gapM, widthM, depthM, turnDeg } = wanted;
  const spots = Array.from({ length: rows * columns }, (_, index) => {
    const [row, column] = [Math.floor(index / columns), index % columns];
    return add(at, rotate({ x: column * (widthM + gapM), y: row * (depthM + gapM) }, turnDeg));
  });
  return { spots };
}

/**
 * Where copies of a feature belong so that rows begin with it; they lie along its own turn.
 *
 * @returns places of the copies, without the feature's own [m]; none for one row of one; else the reason
 */
export function duplicateSpots(feature: Omit<Arranged, 'id'>, { rows, columns, gapM }: Rows): SpotsOutcome {
  const { at, turnDeg, outline } = feature;
  const unturned = boxOf(outline.map((corner) => rotate(subtract(corner, at), -turnDeg)));
  const widthM = unturned.mostX - unturned.leastX;
  const depthM = unturned.mostY - unturned.leastY;
  const outcome = tableRows({ at, rows, columns, gapM, widthM, depthM, turnDeg });
  return 'reason' in outcome ? outcome : { spots: outcome.spots.slice(1) };
}
