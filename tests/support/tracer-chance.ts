/** Numbers in [0, 1) from a seed (mulberry32): the same seed gives the same run on every machine. */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** How many numbers of a photon's life are spread evenly: four to leave the lamp, two to leave its first hit. */
export const EVEN_NUMBERS = 6;

/** The root of x^(d+1) = x + 1, whose powers make an evenly spread sequence in d dimensions. */
const ROOT = (() => {
  let root = 2;
  for (let step = 0; step < 60; step += 1) root = (1 + root) ** (1 / (EVEN_NUMBERS + 1));
  return root;
})();
const STRIDES = Array.from({ length: EVEN_NUMBERS }, (_, k) => ROOT ** -(k + 1));

/**
 * An evenly spread sequence, shifted at random: each shift gives an estimate without bias, and the scatter
 * between shifts is the error of their mean.
 */
export function evenSequence(chance: () => number): (index: number, into: Float64Array) => void {
  const shifts = STRIDES.map(() => chance());
  return (index, into) => {
    for (let k = 0; k < EVEN_NUMBERS; k += 1)
      into[k] = ((shifts[k] ?? 0) + (index + 1) * (STRIDES[k] ?? 0)) % 1;
  };
}
