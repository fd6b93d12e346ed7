import { costOf, middleRow, type ReadyTarget, targetLevel } from './power-targets.ts';

const MOST_STEPS = 40;
/** A step that gains less than this is the last [stops²]. */
const LEAST_GAIN = 1e-10;
const GENTLEST = 1e-6;
const STIFFEST = 1e6;

/** Normal equations JᵀJ and Jᵀr of the misses at some powers; `fractions` must belong to these powers. */
function normalEquations(targets: readonly ReadyTarget[], fractions: Float64Array) {
  const n = fractions.length;
  const square = new Float64Array(n * n);
  const pull = new Float64Array(n);
  const slope = new Float64Array(n);
  for (const target of targets) {
    if (target.weight === 0) continue;
    const level = targetLevel(target, fractions);
    const row = middleRow(target, level);
    // d log2(level) / d power = share of this light in the level
    for (let i = 0; i < n; i += 1) {
      slope[i] = ((target.perLight[row * n + i] ?? 0) * (fractions[i] ?? 0)) / level;
    }
    const miss = Math.log2(level) - target.wantedStops;
    for (let i = 0; i < n; i += 1) {
      pull[i] = (pull[i] ?? 0) + target.weight * (slope[i] ?? 0) * miss;
      for (let j = 0; j < n; j += 1) {
        square[i * n + j] = (square[i * n + j] ?? 0) + target.weight * (slope[i] ?? 0) * (slope[j] ?? 0);
      }
    }
  }
  return { square, pull };
}

/** Solves a small positive definite system in place, by elimination without pivoting. */
function solveInPlace(matrix: Float64Array, vector: Float64Array): void {
  const n = vector.length;
  for (let k = 0; k < n; k += 1) {
    const pivot = matrix[k * n + k] ?? 1;
    for (let i = k + 1; i < n; i += 1) {
      const factor = (matrix[i * n + k] ?? 0) / pivot;
      for (let j = k; j < n; j += 1) {
        matrix[i * n + j] = (matrix[i * n + j] ?? 0) - factor * (matrix[k * n + j] ?? 0);
      }
      vector[i] = (vector[i] ?? 0) - factor * (vector[k] ?? 0);
    }
  }
  for (let k = n - 1; k >= 0; k -= 1) {
    let rest = vector[k] ?? 0;
    for (let j = k + 1; j < n; j += 1) rest -= (matrix[k * n + j] ?? 0) * (vector[j] ?? 0);
    vector[k] = rest / (matrix[k * n + k] ?? 1);
  }
}

/** The next powers to try: a damped step, with lights that press against a bound left where they are. */
function stepFrom(
  powers: Float64Array,
  least: Float64Array,
  { square, pull }: { readonly square: Float64Array; readonly pull: Float64Array },
  damping: number,
): Float64Array {
  const n = powers.length;
  const matrix = square.slice();
  const step = pull.map((value) => -value);
  for (let i = 0; i < n; i += 1) {
    const power = powers[i] ?? 0;
    const held = (power >= 0 && (pull[i] ?? 0) < 0) || (power <= (least[i] ?? 0) && (pull[i] ?? 0) > 0);
    if (held) {
      for (let j = 0; j < n; j += 1) matrix[i * n + j] = matrix[j * n + i] = 0;
      step[i] = 0;
    }
    matrix[i * n + i] = (matrix[i * n + i] ?? 0) + (held ? 1 : damping);
  }
  solveInPlace(matrix, step);
  return powers.map((power, i) => Math.max(least[i] ?? 0, Math.min(0, power + (step[i] ?? 0))));
}

/**
 * Powers without steps that make the cost small, from a start downhill: Gauss–Newton with damping
 * (Levenberg–Marquardt), kept between each light's least power and full.
 *
 * @param start powers [stops], not changed
 * @param least least powers [stops]
 * @returns powers [stops]; a local minimum, not more
 * @source levenberg-marquardt
 */
export function descendPowers(
  targets: readonly ReadyTarget[],
  start: Float64Array,
  least: Float64Array,
): Float64Array {
  const fractions = new Float64Array(start.length);
  const triedFractions = new Float64Array(start.length);
  let powers: Float64Array = start.slice();
  let cost = costOf(targets, powers, fractions);
  let damping = 1e-2;
  let equations = normalEquations(targets, fractions);
  for (let turn = 0; turn < MOST_STEPS && damping <= STIFFEST; turn += 1) {
    const tried = stepFrom(powers, least, equations, damping);
    const triedCost = costOf(targets, tried, triedFractions);
    if (!(triedCost < cost)) {
      damping *= 8;
      continue;
    }
    const gain = cost - triedCost;
    powers = tried;
    cost = triedCost;
    if (gain < LEAST_GAIN) break;
    fractions.set(triedFractions);
    equations = normalEquations(targets, fractions);
    damping = Math.max(GENTLEST, damping / 5);
  }
  return powers;
}
