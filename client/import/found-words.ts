/** How much of a drawing was not taken, and why. */
export interface LeftOut {
  /** Lines that end somewhere. */
  readonly open: number;
  /** Outlines that cross or touch themselves. */
  readonly tangled: number;
  /** Rings outside the room or through its walls. */
  readonly outside: number;
  /** Rings that fill the room nearly whole. */
  readonly likeRoom: number;
  /** Signs, too small to be a thing. */
  readonly tiny: number;
  /** Drawn twice. */
  readonly twice: number;
  /** Beyond the number of things that a person would go through. */
  readonly beyondMost: number;
}

/** In this order they are said: what is most likely missed comes first. */
const REASONS: readonly (readonly [keyof LeftOut, string])[] = [
  ['open', 'with open ends'],
  ['tangled', 'crossing themselves'],
  ['beyondMost', 'beyond what a plan holds'],
  ['outside', 'outside the room'],
  ['likeRoom', 'as large as the room'],
  ['tiny', 'too small'],
  ['twice', 'drawn twice'],
];

/** @returns a size as it is said, three figures of each side */
export function sizeWords(widthM: number, depthM: number): string {
  return `${Number(widthM.toPrecision(3))} × ${Number(depthM.toPrecision(3))} m`;
}

/** @returns what was found in a drawing and what was left out, without a full stop */
export function foundWords({
  widthM,
  depthM,
  things,
  leftOut,
}: {
  readonly widthM: number;
  readonly depthM: number;
  readonly things: number;
  readonly leftOut: LeftOut;
}): string {
  const left = REASONS.flatMap(([key, why]) => (leftOut[key] > 0 ? [`${leftOut[key]} ${why}`] : []));
  const found = `A room of ${sizeWords(widthM, depthM)} with ${things} ${things === 1 ? 'thing' : 'things'}`;
  return left.length > 0 ? `${found}; left out: ${left.join(', ')}` : found;
}
