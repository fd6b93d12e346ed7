import { areaOf, centroidOf, contains, isSimple } from '../../core/geometry/polygon.ts';
import { distance, type Spot, scale, subtract } from '../../core/geometry/spot.ts';
import { foundWords, type LeftOut, sizeWords } from './found-words.ts';
import { joinLines } from './join-lines.ts';
import { type FileTrouble, type PlanShape, trouble } from './plan-file.ts';
import { type PlacedShape, shapeFromRing } from './shape-from-ring.ts';
import { tidyRing } from './tidy-ring.ts';

/** Own rule: ends of walls this near to each other are one corner, m. */
const JOIN_M = 0.02;
/** Own rule: bends smaller than this are drawing, not wall, m. */
const BEND_M = 0.01;
/** Own rule: what is smaller than this on its longer side is a sign, not a thing in the room, m. */
const TINY_M = 0.3;
/** Own rule: what fills more of the room than this is a wall drawn with its thickness, or a carpet. */
const MOST_OF_ROOM = 0.8;
/** Own rule: two rings of one size and place, so near, are one thing drawn twice (once filled, once lined), m. */
const TWICE_M = 0.05;
/** More things than this nobody goes through on a phone. */
const MOST_FEATURES = 200;
/** Own rule: a room smaller or larger than this was read in the wrong unit, m. */
const ROOM_M = { least: 2, most: 200 };

/** A thing in the room that the drawing shows, to be named and kept or dropped by a person. */
export interface FoundFeature extends PlacedShape {
  /** What the drawing calls it; may be empty. */
  readonly name: string;
}

/** A room as the drawing shows it; its box begins at (0, 0). */
export interface FoundRoom {
  readonly kind: 'room';
  /** Corners in order, 3 to 200 [m]. */
  readonly outline: readonly Spot[];
  readonly widthM: number;
  readonly depthM: number;
  /** Largest first. */
  readonly features: readonly FoundFeature[];
  readonly leftOut: LeftOut;
  /** Size, things and what was left out, in plain words without a full stop. */
  readonly words: string;
  /** How many rings could be the room: `rank` may be 0 to one less. */
  readonly choices: number;
}

interface Ring {
  readonly corners: readonly Spot[];
  readonly areaM2: number;
  readonly name: string;
}

/** Joins lines of one layer with each other first, then what is left of all. */
function ringsOf(shapes: readonly PlanShape[]): {
  rings: { corners: readonly Spot[]; name: string }[];
  open: number;
} {
  const rings = shapes
    .filter(({ closed }) => closed)
    .map(({ outline, name }) => ({ corners: outline, name }));
  const layers = new Map<string, (readonly Spot[])[]>();
  for (const { closed, outline, name } of shapes) {
    const layer = layers.get(name);
    if (closed) continue;
    if (layer) layer.push(outline);
    else layers.set(name, [outline]);
  }
  const rest: (readonly Spot[])[] = [];
  for (const [name, lines] of layers) {
    const joined = joinLines(lines, JOIN_M);
    rings.push(...joined.rings.map((corners) => ({ corners, name })));
    rest.push(...joined.open);
  }
  const last = joinLines(rest, JOIN_M);
  rings.push(...last.rings.map((corners) => ({ corners, name: '' })));
  return { rings, open: last.open.length };
}

function boxOf(corners: readonly Spot[]) {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of corners) {
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
  }
  return { corner: { x: left, y: top }, widthM: right - left, depthM: bottom - top };
}

const inMetres = (shapes: readonly PlanShape[], metresPerUnit: number): PlanShape[] =>
  shapes.map((shape) => ({ ...shape, outline: shape.outline.map((spot) => scale(spot, metresPerUnit)) }));

/** Sorts the rings beside the room's own into things and what is left out. */
function sortOut(room: Ring, others: readonly Ring[]) {
  const counts = { outside: 0, likeRoom: 0, tiny: 0, twice: 0, beyondMost: 0 };
  const kept: (Ring & { readonly middle: Spot })[] = [];
  for (const ring of others) {
    const middle = centroidOf(ring.corners);
    const { widthM, depthM } = boxOf(ring.corners);
    const inside = ring.corners.filter((corner) => contains(room.corners, corner)).length;
    const isTwice = ({ middle: there, areaM2 }: (typeof kept)[number]) =>
      distance(there, middle) < TWICE_M && Math.abs(areaM2 - ring.areaM2) < 0.05 * areaM2;
    if (ring.areaM2 > room.areaM2) counts.outside++;
    else if (ring.areaM2 > MOST_OF_ROOM * room.areaM2) counts.likeRoom++;
    // Things that stand at a wall may have corners on it or a little beyond.
    else if (!contains(room.corners, middle) || inside < ring.corners.length / 4) counts.outside++;
    else if (Math.max(widthM, depthM) < TINY_M) counts.tiny++;
    else if (kept.some(isTwice)) counts.twice++;
    else if (kept.length >= MOST_FEATURES) counts.beyondMost++;
    else kept.push({ ...ring, middle });
  }
  return { kept, counts };
}

/** Why a ring cannot be the room; null when it can. */
function sizeTrouble({ widthM, depthM }: { widthM: number; depthM: number }): FileTrouble | null {
  const [shortM, longM] = [Math.min(widthM, depthM), Math.max(widthM, depthM)];
  if (shortM >= ROOM_M.least && longM <= ROOM_M.most) return null;
  return trouble(
    `The room would be ${sizeWords(widthM, depthM)}. The unit may be another, or the drawing smaller than the room: say how long one wall is.`,
  );
}

/**
 * Builds a room from the shapes of a drawing: the largest ring is the outline, the rings inside it are things. A
 * person looks over both: a drawing's largest ring may be the frame of its sheet, and `rank` then takes the next.
 *
 * ASSUMPTION: things are drawn as closed outlines, walls too (whole, or line by line).
 *
 * @param shapes from `readPlanFile`, native units
 * @param metresPerUnit metres that one unit stands for
 * @param rank 0 takes the largest ring as the room, 1 the next, and so on
 * @returns the room [m] with the counts of what was left out, or why there is none
 */
export function roomFromShapes(
  shapes: readonly PlanShape[],
  metresPerUnit: number,
  rank = 0,
): FoundRoom | FileTrouble {
  if (!(metresPerUnit > 0) || !Number.isFinite(metresPerUnit))
    return trouble('How long one unit of the drawing is must be a number above nothing.');
  const { rings, open } = ringsOf(inMetres(shapes, metresPerUnit));
  const simple: Ring[] = [];
  let tangled = 0;
  for (const { corners, name } of rings) {
    const tidy = tidyRing(corners, BEND_M);
    if (isSimple(tidy)) simple.push({ corners: tidy, name, areaM2: areaOf(tidy) });
    else tangled++;
  }
  simple.sort((a, b) => b.areaM2 - a.areaM2);
  const room = simple[rank];
  if (!room) return trouble('No closed outline of a room was found. Trace a picture of the plan instead.');
  const { corner, widthM, depthM } = boxOf(room.corners);
  const wrongSize = sizeTrouble({ widthM, depthM });
  if (wrongSize) return wrongSize;
  const outline = room.corners.map((spot) => subtract(spot, corner));
  // What was a hair apart far from the origin may have become one.
  if (!isSimple(outline))
    return trouble('The outline of the room touches itself. Draw it anew, or trace a picture of it.');
  const { kept, counts } = sortOut(room, simple.toSpliced(rank, 1));
  const leftOut = { open, tangled, ...counts };
  return {
    kind: 'room',
    outline,
    widthM,
    depthM,
    features: kept.map(({ corners, name }) => ({
      ...shapeFromRing(corners.map((spot) => subtract(spot, corner))),
      name,
    })),
    leftOut,
    words: foundWords({ widthM, depthM, things: kept.length, leftOut }),
    choices: simple.length,
  };
}
