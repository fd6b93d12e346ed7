import fc from 'fast-check';
import { outlineOf, type Shape } from '../../../core/geometry/shape.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { Landmark } from '../../../core/guidance/landmark.ts';
import type { Plan } from './way-grid.ts';

const NAMES = [
  'Bar',
  'Cake table',
  'Band',
  'Pillar',
  'Piano',
  'Screen',
  'Stairs',
  'Table 1',
  'Table 2',
  'Table 3',
];

/** Even over the range, to the millimetre: by itself fast-check crowds around the ends of a range. */
const size = (least: number, most: number) =>
  fc.noBias(fc.integer({ min: least * 1000, max: most * 1000 })).map((thousandths) => thousandths / 1000);
const shape: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), widthM: size(0.2, 2.5), depthM: size(0.1, 0.8) }),
  fc.record({ kind: fc.constant('round' as const), radiusM: size(0.15, 0.8) }),
  // A bar round a corner: the thing itself has a nook.
  fc.constant({
    kind: 'outline' as const,
    points: [
      { x: -1.5, y: -1 },
      { x: 1.5, y: -1 },
      { x: 1.5, y: -0.4 },
      { x: -0.9, y: -0.4 },
      { x: -0.9, y: 1 },
      { x: -1.5, y: 1 },
    ],
  }),
);

const WIDE = 9;
const DEEP = 7;
/** A hall, and one round a corner. */
const outline: fc.Arbitrary<Spot[]> = fc.constantFrom(
  [
    { x: 0, y: 0 },
    { x: WIDE, y: 0 },
    { x: WIDE, y: DEEP },
    { x: 0, y: DEEP },
  ],
  [
    { x: 0, y: 0 },
    { x: WIDE, y: 0 },
    { x: WIDE, y: 3 },
    { x: 4, y: 3 },
    { x: 4, y: DEEP },
    { x: 0, y: DEEP },
  ],
);

export const inRoom: fc.Arbitrary<Spot> = fc.record({ x: size(0, WIDE), y: size(0, DEEP) });

export type Furnished = Plan & { readonly landmarks: readonly Landmark[] };

/** Rooms with up to 15 things, which may overlap each other and the walls. */
export const furnished: fc.Arbitrary<Furnished> = fc
  .record({
    outline,
    things: fc.array(fc.record({ at: inRoom, turnDeg: size(0, 360), shape, tall: fc.boolean() }), {
      maxLength: 15,
      size: 'max',
    }),
  })
  .map(({ outline: walls, things }) => {
    const landmarks = things.map((thing, index) => ({
      id: `l${index}`,
      name: NAMES[index % NAMES.length] ?? 'Pillar',
      outline: outlineOf(thing),
      heightM: thing.tall ? 2.5 : 0.75,
      tall: thing.tall,
    }));
    return { outline: walls, obstacles: landmarks, landmarks };
  });

export const box = (
  id: string,
  name: string,
  at: Spot,
  widthM: number,
  depthM: number,
  tall = false,
): Landmark => ({
  id,
  name,
  outline: outlineOf({ at, turnDeg: 0, shape: { kind: 'box', widthM, depthM } }),
  heightM: 1,
  tall,
});

export const round = (id: string, name: string, at: Spot, radiusM: number): Landmark => ({
  id,
  name,
  outline: outlineOf({ at, turnDeg: 0, shape: { kind: 'round', radiusM } }),
  heightM: 1,
  tall: false,
});
