import type { Quantity } from './rules-figures.ts';

/** A figure that is no fact of the project: by which words it is known, what it says, and why it is none. */
export type Outside = {
  readonly near: RegExp;
  readonly says: readonly Quantity[] | 'any';
  readonly because: string;
};

const TURNS = [0, 90, 180, 270, 360].map((value): Quantity => ({ value, unit: '°' }));

/** Figures in the documents that no code of this project could change. */
export const OUTSIDES: readonly Outside[] = [
  { near: /./, says: TURNS, because: 'quarters of a turn' },
  {
    near: /another port/i,
    says: [{ value: 8090, unit: '' }],
    because: 'an example of a port somebody takes',
  },
  {
    near: /stop 1 m short/i,
    says: [{ value: 1, unit: 'm' }],
    because: 'an example of a sentence on the card',
  },
  { near: /higher/i, says: [{ value: 0.1, unit: 'm' }], because: 'an example of a change on the card' },
  { near: /\bmeasured\b/i, says: 'any', because: 'a measurement of one day, on a machine named beside it' },
];
