/** Rows may be off by so much, relative, when the balancing ends. */
const CLOSE_ENOUGH = 1e-7;
const MOST_ROUNDS = 200;

function dotRow(matrix: Float64Array, start: number, vector: Float64Array): number {
  const count = vector.length;
  let [a, b, c, d] = [0, 0, 0, 0];
  let j = 0;
  for (; j + 3 < count; j += 4) {
    a += (matrix[start + j] as number) * (vector[j] as number);
    b += (matrix[start + j + 1] as number) * (vector[j + 1] as number);
    c += (matrix[start + j + 2] as number) * (vector[j + 2] as number);
    d += (matrix[start + j + 3] as number) * (vector[j + 3] as number);
  }
  for (; j < count; j += 1) a += (matrix[start + j] as number) * (vector[j] as number);
  return a + b + (c + d);
}

/** One round: factors nearer to those that give every row its sum. @returns the largest relative error before it */
function improve(exchange: Float64Array, areas: Float64Array, factors: Float64Array): number {
  const count = areas.length;
  const next = new Float64Array(count);
  let worst = 0;
  for (let i = 0; i < count; i += 1) {
    const sum = (factors[i] as number) * dotRow(exchange, i * count, factors);
    const ratio = (areas[i] as number) / sum;
    const usable = ratio < 1e6;
    if (usable) worst = Math.max(worst, Math.abs(ratio - 1));
    // The root keeps the rounds from swinging; the cap keeps a nook that hardly sees the room from exploding.
    next[i] = usable ? Math.min(4, (factors[i] as number) * Math.sqrt(ratio)) : 1;
  }
  factors.set(next);
  return worst;
}

/**
 * Makes a symmetric exchange S = A·F exact: the estimates are scaled, the same for rows and columns, until
 * every row sums to its patch's area (a closed room: what leaves a patch arrives somewhere). What is left over
 * in a nook that hardly sees the room goes back to the patch itself, so that rows always sum exactly.
 *
 * @param exchange row-major count × count [m²], symmetric with empty diagonal; scaled in place
 * @returns nothing; yields the share done at most, 0 to 1
 * @source radiosity
 */
export function* balanceExchange(exchange: Float64Array, areas: Float64Array): Generator<number, void> {
  const count = areas.length;
  const factors = new Float64Array(count).fill(1);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const worst = improve(exchange, areas, factors);
    if (worst < CLOSE_ENOUGH) break;
    if (round % 8 === 7) yield round / MOST_ROUNDS;
  }
  const over = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const sum = (factors[i] as number) * dotRow(exchange, i * count, factors);
    over[i] = Math.max(1, sum / (areas[i] as number));
  }
  for (let i = 0; i < count; i += 1) {
    let sum = 0;
    for (let j = 0; j < count; j += 1) {
      const scaled = (exchange[i * count + j] as number) * ((factors[i] as number) * (factors[j] as number));
      const value = scaled / Math.max(over[i] as number, over[j] as number);
      exchange[i * count + j] = value;
      if (j !== i) sum += value;
    }
    exchange[i * count + i] = Math.max(0, (areas[i] as number) - sum);
  }
}
