import type { Spot } from '../../core/geometry/spot.ts';
import type { LengthUnit } from './length-unit.ts';
import { type DrawnPlan, type FileTrouble, type PlanShape, trouble } from './plan-file.ts';

/** More shapes than this are no plan of a room, and would keep a phone busy. */
export const MOST_SHAPES = 5_000;
/** Corners of all shapes together. */
export const MOST_POINTS = 100_000;
/** Things looked at, those without a shape too: a drawing that holds itself many times over ends here. */
const MOST_LOOKS = 200_000;
/** Further from the drawing's origin than this nothing is meant, native units: 1000 km in millimetres. */
const FARTHEST = 1e9;

/** Where a reader puts what it finds. */
export interface ShapeList {
  /** Adds a shape; one that has no extent, or a corner that is no place, is counted as left out. */
  readonly add: (outline: readonly Spot[], closed: boolean, name: string) => void;
  /** Counts something that is not read. */
  readonly leaveOut: () => void;
  /** One more thing is looked at. @returns false when the drawing is too large, or has gone on for too long */
  readonly goOn: () => boolean;
  /** @returns what was gathered, or why it is no plan */
  readonly plan: (unit: LengthUnit | null) => DrawnPlan | FileTrouble;
}

const isPlace = ({ x, y }: Spot) => Math.abs(x) <= FARTHEST && Math.abs(y) <= FARTHEST;

/** Without corners that repeat the one before, and without the first repeated at the end. */
function withoutRepeats(outline: readonly Spot[]): { readonly kept: Spot[]; readonly returned: boolean } {
  const kept = outline.filter((spot, index) => {
    const before = outline[index - 1];
    return !before || spot.x !== before.x || spot.y !== before.y;
  });
  const [first, last] = [kept[0], kept.at(-1)];
  const returned = kept.length > 3 && first?.x === last?.x && first?.y === last?.y;
  if (returned) kept.pop();
  return { kept, returned };
}

/** @returns an empty list, with the limits that keep the page alive */
export function createShapeList(): ShapeList {
  const shapes: PlanShape[] = [];
  let points = 0;
  let looks = 0;
  let leftOut = 0;
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  const reason = () => {
    if (shapes.length > MOST_SHAPES)
      return `The drawing holds more than ${MOST_SHAPES} shapes. Hide all but walls and tables, and save it again.`;
    if (points > MOST_POINTS)
      return `The drawing holds more than ${MOST_POINTS} points. Hide all but walls and tables, and save it again.`;
    if (looks > MOST_LOOKS)
      return 'The drawing holds too many things. Hide all but walls and tables, and save it again.';
    if (shapes.length === 0)
      return 'The file holds no lines that can be read. A picture of the plan can be traced instead.';
    return null;
  };
  return {
    add: (outline, closed, name) => {
      points += outline.length;
      const { kept, returned } = withoutRepeats(outline);
      const isClosed = (closed || returned) && kept.length > 2;
      if (kept.length < 2 || !kept.every(isPlace)) {
        leftOut++;
        return;
      }
      shapes.push({ outline: kept, closed: isClosed, name });
      for (const { x, y } of kept) {
        box.left = Math.min(box.left, x);
        box.top = Math.min(box.top, y);
        box.right = Math.max(box.right, x);
        box.bottom = Math.max(box.bottom, y);
      }
    },
    leaveOut: () => {
      leftOut++;
    },
    goOn: () => ++looks <= MOST_LOOKS && shapes.length <= MOST_SHAPES && points <= MOST_POINTS,
    plan: (unit) => {
      const said = reason();
      return said ? trouble(said) : { kind: 'shapes', shapes, unit, boxNative: box, leftOut };
    },
  };
}
