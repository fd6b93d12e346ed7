import type { Spot } from '../../../core/geometry/spot.ts';
import type { Feature } from '../../../shared/document/parts.ts';
import type { Entry, FeatureKind } from '../../../shared/document/schema.ts';

type Stamp = Omit<Entry<'feature'>, 'name' | 'at'> & { readonly word: string };

const solid = {
  blocksLight: false,
  blocksWalking: true,
  chairs: false,
  background: 'neither',
  turnDeg: 0,
} as const;
const flat = { ...solid, blocksWalking: false } as const;
const box = (widthM: number, depthM: number) => ({ kind: 'box', widthM, depthM }) as const;

/** What each kind of thing usually measures; heights and sizes are usual ones, and every one can be changed. */
export const STAMPS: Readonly<Record<FeatureKind, Stamp>> = {
  table: {
    ...solid,
    kind: 'table',
    word: 'Table',
    shape: { kind: 'round', radiusM: 0.9 },
    heightM: 0.75,
    chairs: true,
  },
  'dance-floor': {
    ...flat,
    kind: 'dance-floor',
    word: 'Dance floor',
    shape: box(6, 5),
    heightM: 0,
    background: 'wanted',
  },
  bar: { ...solid, kind: 'bar', word: 'Bar', shape: box(4, 0.8), heightM: 1.15 },
  band: {
    ...solid,
    kind: 'band',
    word: 'Band',
    shape: box(4, 2.5),
    heightM: 1.9,
    blocksLight: true,
    background: 'wanted',
  },
  cake: {
    ...solid,
    kind: 'cake',
    word: 'Cake table',
    shape: { kind: 'round', radiusM: 0.5 },
    heightM: 1.1,
    background: 'wanted',
  },
  pillar: { ...solid, kind: 'pillar', word: 'Pillar', shape: box(0.5, 0.5), heightM: 4, blocksLight: true },
  door: { ...flat, kind: 'door', word: 'Door', shape: box(1, 0.1), heightM: 2.1 },
  exit: { ...flat, kind: 'exit', word: 'Exit', shape: box(1.8, 0.1), heightM: 2.1, background: 'unwanted' },
  screen: { ...solid, kind: 'screen', word: 'Screen', shape: box(2, 0.2), heightM: 2.2, blocksLight: true },
  other: { ...solid, kind: 'other', word: 'Thing', shape: box(1, 1), heightM: 1 },
};

/** Kinds in the order in which a room is usually filled. */
export const STAMP_ORDER: readonly FeatureKind[] = [
  'dance-floor',
  'table',
  'exit',
  'door',
  'bar',
  'band',
  'cake',
  'pillar',
  'screen',
  'other',
];

/** A name that no other feature has: the number stands first when there are several, so that names differ at once. */
export function freshName(word: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map(({ name }) => name));
  if (!names.has(word)) return word;
  for (let number = 2; ; number++) {
    const name = `${word} ${number}`;
    if (!names.has(name)) return name;
  }
}

/** A thing of this kind at a spot, as it usually is. */
export function stampOf(kind: FeatureKind, at: Spot, taken: readonly Feature[]): Entry<'feature'> {
  const { word, ...usual } = STAMPS[kind];
  return { ...usual, name: freshName(word, taken), at };
}
