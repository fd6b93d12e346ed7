import type { Spot } from '../../../core/geometry/spot.ts';

export interface Label {
  readonly id: string;
  readonly text: string;
  /** Where it would stand best, in px. */
  readonly at: Spot;
  /** Which label wins where two would lie over each other: the greater. */
  readonly weight: number;
}

/** A label with room of its own, moved inside the drawing where its best place lies partly outside. */
export interface PlacedLabel extends Label {
  readonly x: number;
  readonly y: number;
}

/** About the width of one letter and the height of a line, in px, in the plan's small type. */
const LETTER_PX = 7.6;
const LINE_PX = 16;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const around = (x: number, y: number, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
});

/**
 * Which names can be written without lying over each other or over a sign. Names that find no room are left out:
 * a name that cannot be read helps nobody, and a larger plan has room for it.
 *
 * @param signs middles of stands, camera and the like, px; names keep off them
 */
export function placeLabels(
  labels: readonly Label[],
  signs: readonly Spot[],
  size: { readonly widthPx: number; readonly heightPx: number },
): PlacedLabel[] {
  const taken: Box[] = signs.map((sign) => around(sign.x, sign.y, 30, 30));
  const placed: PlacedLabel[] = [];
  for (const label of [...labels].sort((a, b) => b.weight - a.weight || (a.id < b.id ? -1 : 1))) {
    const { at } = label;
    if (at.x < 0 || at.y < 0 || at.x > size.widthPx || at.y > size.heightPx) continue;
    const width = label.text.length * LETTER_PX + 4;
    const x = Math.min(Math.max(at.x, width / 2 + 2), size.widthPx - width / 2 - 2);
    const y = Math.min(Math.max(at.y, LINE_PX / 2 + 2), size.heightPx - LINE_PX / 2 - 2);
    const tries = [y, y - LINE_PX, y + LINE_PX];
    const free = tries.find((here) => !taken.some((box) => overlap(box, around(x, here, width, LINE_PX))));
    if (free === undefined) continue;
    taken.push(around(x, free, width, LINE_PX));
    placed.push({ ...label, x, y: free });
  }
  return placed;
}
