import { costOf, type ReadyTarget } from './power-targets.ts';

/** Choices in one interval of this width cost the same [stops²]; the one with less light in all is taken. */
const SAME_COST = 1e-9;
/** Thirds that one light may fall by while another rises: light can be traded over a long way. */
const TRADED_THIRDS = [1, 2, 3, 5, 8, 13] as const;

/** A choice of powers in thirds of a stop, as whole numbers, and what it costs. */
export type StepChoice = { readonly thirds: Int32Array; readonly cost: number };

/** Light of all heads together, to choose between equals. */
function lightOf(thirds: Int32Array): number {
  let sum = 0;
  for (const third of thirds) sum += 2 ** (third / 3);
  return sum;
}

/** An order without circles: by interval of the cost, then by light, so that a search must end. */
function isBetter(one: StepChoice, other: StepChoice): boolean {
  const [a, b] = [Math.round(one.cost / SAME_COST), Math.round(other.cost / SAME_COST)];
  return a === b ? lightOf(one.thirds) < lightOf(other.thirds) - 1e-12 : a < b;
}

/** Every light up one step, down one, or left, in every combination. */
function nearMoves(lights: number): Int32Array[] {
  return Array.from({ length: 3 ** lights }, (_, code) =>
    Int32Array.from({ length: lights }, (_zero, i) => (Math.floor(code / 3 ** i) % 3) - 1),
  );
}

/** One light falls, another rises or stays, the others are left: every light adds to every level. */
function trades(lights: number): Int32Array[] {
  const moves: Int32Array[] = [];
  for (let down = 0; down < lights; down += 1) {
    for (let up = 0; up < lights; up += 1) {
      if (up === down) continue;
      for (const fall of TRADED_THIRDS) {
        for (const rise of [0, ...TRADED_THIRDS]) {
          const move = new Int32Array(lights);
          move[down] = -fall;
          move[up] = rise;
          moves.push(move);
        }
      }
    }
  }
  return moves;
}

/**
 * Goes from a choice of steps to the best of its neighbours (every light up one step, down one, or left),
 * until no neighbour is better.
 *
 * @param start powers in thirds of a stop, whole numbers
 * @param least least powers in thirds of a stop, whole numbers at most 0
 * @param reach 'far' also trades one light for another, by up to 4⅓ stops
 * @returns a choice that no neighbour beats, and its cost [stops²]
 * @source own-rule
 */
export function searchSteps(
  targets: readonly ReadyTarget[],
  start: Int32Array,
  least: Int32Array,
  reach: 'near' | 'far',
): StepChoice {
  const n = start.length;
  const powers = new Float64Array(n);
  const fractions = new Float64Array(n);
  const moves = reach === 'near' ? nearMoves(n) : [...nearMoves(n), ...trades(n)];
  const choiceAt = (from: Int32Array, move: Int32Array | null): StepChoice => {
    const thirds = from.map((third, i) => Math.max(least[i] ?? 0, Math.min(0, third + (move?.[i] ?? 0))));
    for (let i = 0; i < n; i += 1) powers[i] = (thirds[i] ?? 0) / 3;
    return { thirds, cost: costOf(targets, powers, fractions) };
  };
  let best = choiceAt(start, null);
  // Every turn is better than the last and there are finitely many choices: this ends.
  for (;;) {
    const from = best;
    for (const move of moves) {
      const choice = choiceAt(from.thirds, move);
      if (isBetter(choice, best)) best = choice;
    }
    if (best === from) return best;
  }
}
