import type { Spot } from '../geometry/spot.ts';
import type { RimCorner } from './rim-corners.ts';
import type { WalkFloor } from './walk-floor.ts';

/** Corners and the legs between those that see each other; legs of corner i are legStart[i] … legStart[i+1]. */
export type WalkGraph = {
  readonly corners: readonly RimCorner[];
  readonly legStart: Int32Array;
  readonly legTo: Int32Array;
  readonly legsM: Float64Array;
  /** Corners with one number can be walked to from each other */
  readonly partOf: Int32Array;
};

/** A spot this near to the line of a side counts as on it [m]. */
const ON_LINE_M = 1e-6;

/**
 * Would a taut string bend at this corner on its way to a spot? It does not when the spot lies in front of
 * both sides (the string would lift off) or behind both (it would cut through).
 *
 * @source visibility-graph
 */
export function isTaut({ spot, before, after }: RimCorner, toward: Spot): boolean {
  const x = toward.x - spot.x;
  const y = toward.y - spot.y;
  const one = x * before.x + y * before.y;
  const other = x * after.x + y * after.y;
  return one > ON_LINE_M ? other <= ON_LINE_M : one >= -ON_LINE_M || other >= -ON_LINE_M;
}

/** Six numbers a corner: its spot and the normals of its sides. */
const CORNER_LONG = 6;

function packed(corners: readonly RimCorner[]): Float64Array {
  return Float64Array.from(
    corners.flatMap(({ spot, before, after }) => [spot.x, spot.y, before.x, before.y, after.x, after.y]),
  );
}

/** As isTaut, for corners in one long array: the corner at `at`, toward a point. */
function isTautAt(numbers: Float64Array, at: number, towardX: number, towardY: number): boolean {
  const x = towardX - (numbers[at] as number);
  const y = towardY - (numbers[at + 1] as number);
  const one = x * (numbers[at + 2] as number) + y * (numbers[at + 3] as number);
  const other = x * (numbers[at + 4] as number) + y * (numbers[at + 5] as number);
  return one > ON_LINE_M ? other <= ON_LINE_M : one >= -ON_LINE_M || other >= -ON_LINE_M;
}

/** Pairs of corners between which one can walk and a taut string would run. */
function pairsOf(corners: readonly RimCorner[], floor: WalkFloor, clearM: number): [number, number][] {
  const pairs: [number, number][] = [];
  const numbers = packed(corners);
  for (let i = 0; i < corners.length; i += 1) {
    const x = numbers[i * CORNER_LONG] as number;
    const y = numbers[i * CORNER_LONG + 1] as number;
    for (let j = i + 1; j < corners.length; j += 1) {
      const at = j * CORNER_LONG;
      if (!isTautAt(numbers, at, x, y)) continue;
      if (!isTautAt(numbers, i * CORNER_LONG, numbers[at] as number, numbers[at + 1] as number)) continue;
      const [a, b] = [corners[i] as RimCorner, corners[j] as RimCorner];
      if (floor.keepsClear(a.spot, b.spot, clearM)) pairs.push([i, j]);
    }
  }
  return pairs;
}

/** Numbers the parts of the graph that hang together. */
function partsOf(count: number, legStart: Int32Array, legTo: Int32Array): Int32Array {
  const partOf = new Int32Array(count).fill(-1);
  for (let root = 0; root < count; root += 1) {
    if (partOf[root] !== -1) continue;
    partOf[root] = root;
    const waiting = [root];
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      for (let leg = legStart[at] as number; leg < (legStart[at + 1] as number); leg += 1) {
        const to = legTo[leg] as number;
        if (partOf[to] !== -1) continue;
        partOf[to] = root;
        waiting.push(to);
      }
    }
  }
  return partOf;
}

/**
 * The visibility graph over the corners of all rims, without the legs that no shortest way uses.
 *
 * @param clearM how far a leg stays from every edge [m]
 * @source visibility-graph
 */
export function walkGraph(corners: readonly RimCorner[], floor: WalkFloor, clearM: number): WalkGraph {
  const pairs = pairsOf(corners, floor, clearM);
  const legStart = new Int32Array(corners.length + 1);
  for (const [i, j] of pairs) {
    legStart[i + 1] = (legStart[i + 1] as number) + 1;
    legStart[j + 1] = (legStart[j + 1] as number) + 1;
  }
  for (let at = 0; at < corners.length; at += 1) {
    legStart[at + 1] = (legStart[at + 1] as number) + (legStart[at] as number);
  }
  const legTo = new Int32Array(pairs.length * 2);
  const legsM = new Float64Array(pairs.length * 2);
  const next = legStart.slice();
  const put = (from: number, to: number, lengthM: number) => {
    const leg = next[from] as number;
    legTo[leg] = to;
    legsM[leg] = lengthM;
    next[from] = leg + 1;
  };
  for (const [i, j] of pairs) {
    const a = (corners[i] as RimCorner).spot;
    const b = (corners[j] as RimCorner).spot;
    const lengthM = Math.hypot(b.x - a.x, b.y - a.y);
    put(i, j, lengthM);
    put(j, i, lengthM);
  }
  return { corners, legStart, legTo, legsM, partOf: partsOf(corners.length, legStart, legTo) };
}
