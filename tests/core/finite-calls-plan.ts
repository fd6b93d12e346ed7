import fc from 'fast-check';
import { lOutline, rectangleOutline } from '../../core/plan/room-shapes.ts';
import { number, spot, spots, units } from './finite-inputs.ts';

const args = (...each: fc.Arbitrary<unknown>[]): fc.Arbitrary<unknown[]> => fc.tuple(...each);

/** Rooms that can be drawn beside outlines of any numbers: the parts behind the first refusal are reached too. */
const ROOMS = [
  rectangleOutline(18, 12),
  lOutline({ widthM: 18, depthM: 12, cutWidthM: 6, cutDepthM: 4, corner: 'bottom-right' }),
].flatMap((outcome) => ('outline' in outcome ? [outcome.outline] : []));
const room = fc.oneof(spots, fc.constantFrom(...ROOMS));
const index = fc.integer({ min: -1, max: 6 });
const box = fc.record({ leastX: number, mostX: number, leastY: number, mostY: number });
const feature = fc.record({
  id: fc.constantFrom('a', 'b', 'c'),
  kind: fc.constantFrom('table', 'bar', 'exit', 'dance-floor'),
  name: fc.constantFrom('Bar', 'Table 4'),
  at: spot,
  turnDeg: number,
  outline: room,
  blocksWalking: fc.boolean(),
});
const features = fc.array(feature, { maxLength: 4 });
const line = fc.record(
  { a: spot, b: spot, lengthM: number, bearingDeg: number },
  { requiredKeys: ['a', 'b', 'lengthM'] },
);
const quad = fc.oneof(fc.array(spot, { minLength: 3, maxLength: 5 }), fc.constantFrom(...ROOMS.slice(0, 1)));
const asIs = fc.constant((pixel: unknown) => pixel);
const rows = { rows: fc.integer({ min: -1, max: 9 }), columns: number, gapM: number };
const snapTo = fc.record({
  kind: fc.constantFrom('table-edge', 'feature', 'corner', 'wall', 'wall-parallel', 'grid'),
  name: fc.constantFrom(null, 'Bar'),
  distanceM: number,
});

/** What the functions of core/plan are called with. */
export const PLAN_CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  boxOf: args(spots),
  boxesNear: args(box, box, number),
  valueInWords: args(number, fc.constant(' m')),
  outlineProblem: args(room),
  checkedOutline: args(room),
  rectangleOutline: args(number, number),
  lOutline: args(
    fc.record({
      widthM: number,
      depthM: number,
      cutWidthM: number,
      cutDepthM: number,
      corner: fc.constantFrom('top-left', 'top-right', 'bottom-right', 'bottom-left'),
    }),
  ),
  roundOutline: args(number, fc.oneof(number, fc.integer({ min: 3, max: 30 }))),
  manySidedOutline: args(fc.oneof(number, fc.integer({ min: 3, max: 30 })), number),
  wallLengthsM: args(room),
  withCornerAt: args(room, index, spot),
  withCornerAdded: args(room, index, spot),
  withoutCorner: args(room, index),
  withWallLength: args(room, index, number),
  stepFromKnownLength: args(number, number),
  lengthFromSteps: args(number, number, fc.boolean()),
  createTrace: args(line, number),
  checkedAgainst: args(asIs, line),
  createHomography: args(quad, quad),
  snapSpot: args(
    spot,
    fc.record({
      outline: room,
      features,
      gridM: number,
      radiusM: number,
      except: fc.constantFrom('a', 'none'),
    }),
  ),
  snapWords: args(snapTo, units),
  aligned: args(features, fc.constantFrom('left', 'right', 'top', 'bottom', 'middle-across', 'middle-down')),
  evenlySpaced: args(features, fc.constantFrom('across', 'down')),
  turnedBy: args(features, spot, number),
  tableRows: args(fc.record({ ...rows, at: spot, widthM: number, depthM: number, turnDeg: number })),
  duplicateSpots: args(feature, fc.record(rows)),
  outlinesCross: args(room, room),
  overlapM: args(room, room),
  beyondM: args(room, room),
  planProblems: args(room, features, units),
};
