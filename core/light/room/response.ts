import type { Patches } from './exchange.ts';

/** Dot product of two pieces of the same matrix: four sums at a time keep the processor busy. */
function dotOf(matrix: Float64Array, a: number, b: number, length: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = 0;
  for (; k + 3 < length; k += 4) {
    s0 += (matrix[a + k] as number) * (matrix[b + k] as number);
    s1 += (matrix[a + k + 1] as number) * (matrix[b + k + 1] as number);
    s2 += (matrix[a + k + 2] as number) * (matrix[b + k + 2] as number);
    s3 += (matrix[a + k + 3] as number) * (matrix[b + k + 3] as number);
  }
  for (; k < length; k += 1) s0 += (matrix[a + k] as number) * (matrix[b + k] as number);
  return s0 + s1 + (s2 + s3);
}

/** Row i of M = I − ρ^½ A^−½ S A^−½ ρ^½, up to its diagonal. */
function putSystemRow(matrix: Float64Array, exchange: Float64Array, roots: Float64Array, i: number): void {
  const count = roots.length;
  const root = roots[i] as number;
  for (let j = 0; j <= i; j += 1) {
    const at = i * count + j;
    matrix[at] = (i === j ? 1 : 0) - root * (exchange[at] as number) * (roots[j] as number);
  }
}

/** Row i of the lower Cholesky factor, in place of row i of the matrix. */
function factorRow(matrix: Float64Array, count: number, i: number): void {
  const row = i * count;
  for (let j = 0; j < i; j += 1) {
    const sum = dotOf(matrix, row, j * count, j);
    matrix[row + j] = ((matrix[row + j] as number) - sum) / (matrix[j * count + j] as number);
  }
  const left = (matrix[row + i] as number) - dotOf(matrix, row, row, i);
  // Rows of F sum to 1 and ρ stays below 1, so that more than 0 is left; the floor is for rounding only.
  matrix[row + i] = Math.sqrt(Math.max(left, 1e-12));
}

/** Column j of the inverse of the lower factor, as row j (from j on) of `inverse`. */
function putInverseColumn(matrix: Float64Array, inverse: Float64Array, count: number, j: number): void {
  const row = j * count;
  inverse[row + j] = 1 / (matrix[row + j] as number);
  for (let i = j + 1; i < count; i += 1) {
    let s0 = 0;
    let s1 = 0;
    let k = j;
    const factor = i * count;
    for (; k + 1 < i; k += 2) {
      s0 += (matrix[factor + k] as number) * (inverse[row + k] as number);
      s1 += (matrix[factor + k + 1] as number) * (inverse[row + k + 1] as number);
    }
    if (k < i) s0 += (matrix[factor + k] as number) * (inverse[row + k] as number);
    inverse[row + i] = -(s0 + s1) / (matrix[factor + i] as number);
  }
}

/** Row i of the response, and its mirror: R = ρ^½ A^−½ · (L⁻ᵀ L⁻¹) · ρ^½ A^½. */
function putResponseRow(
  response: Float64Array,
  inverse: Float64Array,
  { areas, reflectances, count }: Patches,
  i: number,
): void {
  const areaI = areas[i] as number;
  const rootI = Math.sqrt(reflectances[i] as number);
  for (let j = 0; j <= i; j += 1) {
    const inner = dotOf(inverse, i * count + i, j * count + i, count - i);
    const value = inner * rootI * Math.sqrt(reflectances[j] as number);
    const stretch = Math.sqrt((areas[j] as number) / areaI);
    response[i * count + j] = value * stretch;
    response[j * count + i] = value / stretch;
  }
}

/**
 * The matrix that turns direct light into what every patch sends out, all bounces together:
 * B = ρ·E + ρ·F·B. With B = ρ^½ A^−½ y the system becomes symmetric and positive definite,
 * (I − ρ^½ A^−½ S A^−½ ρ^½) y = ρ^½ A^½ E, is factored (Cholesky) and inverted once. ρ = 0 is no special case.
 *
 * @param exchange row-major S = A·F [m²], symmetric, rows summing to the areas
 * @returns row-major count × count [1]; yields the share done, 0 to 1
 * @source radiosity
 * @source cholesky
 */
export function* responseOf(patches: Patches, exchange: Float64Array): Generator<number, Float64Array> {
  const { count, areas, reflectances } = patches;
  const roots = areas.map((area, i) => Math.sqrt((reflectances[i] as number) / area));
  const matrix = new Float64Array(count * count);
  const inverse = new Float64Array(count * count);
  const response = new Float64Array(count * count);
  const batch = 1 + Math.floor(2e6 / (count * count));
  for (let i = 0; i < count; i += 1) {
    putSystemRow(matrix, exchange, roots, i);
    factorRow(matrix, count, i);
    if (i % batch === 0) yield i / count / 3;
  }
  for (let j = 0; j < count; j += 1) {
    putInverseColumn(matrix, inverse, count, j);
    if (j % batch === 0) yield (1 + j / count) / 3;
  }
  for (let i = 0; i < count; i += 1) {
    putResponseRow(response, inverse, patches, i);
    if (i % batch === 0) yield (2 + i / count) / 3;
  }
  return response;
}
