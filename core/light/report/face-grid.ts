import { contains } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import type { Vec3 } from '../../geometry/vec3.ts';

/** Height of faces for the light map [m]: eyes of people who stand. */
const FACE_M = 1.6;
/** Points no nearer than this: light at face height does not change faster, away from the lights [m]. */
const FINEST_M = 0.5;
/** So many points keep a map within a phone's frame. */
const MOST_POINTS = 900;
/** No plan lies farther from its own origin [m]. */
const FARTHEST_M = 1e6;
/** Nothing larger is a room [m²]. */
const LARGEST_BOX_M2 = 1e8;
/** And so many in one row or column, in the narrowest of rooms. */
const MOST_ALONG = 200;

/** Points at face height on a square grid over a room; row by row from the upper left. */
export type FaceGrid = {
  readonly columns: number;
  readonly rows: number;
  /** Upper left point [m] */
  readonly left: number;
  readonly top: number;
  readonly stepM: number;
  /** The points that lie inside the outline, and their places in the grid */
  readonly points: readonly Vec3[];
  readonly places: Int32Array;
};

/**
 * A grid over a room for its light map, one step beyond the walls on each side.
 *
 * @param outline of the room [m]
 * @returns the grid; without points for an outline without area, or larger than any room
 * @source own-rule
 */
export function faceGrid(outline: readonly Spot[]): FaceGrid {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const box = Math.max(0, right - left) * Math.max(0, bottom - top);
  const farthest = Math.max(...[left, right, top, bottom].map(Math.abs));
  if (!(box > 0) || !(box < LARGEST_BOX_M2) || !(farthest < FARTHEST_M)) {
    return { columns: 0, rows: 0, left: 0, top: 0, stepM: FINEST_M, points: [], places: new Int32Array(0) };
  }
  // A room as narrow as a line would else be cut into more points than anything can hold.
  const longest = Math.max(right - left, bottom - top);
  const stepM = Math.max(FINEST_M, Math.sqrt(box / MOST_POINTS), longest / MOST_ALONG);
  const columns = Math.ceil((right - left) / stepM) + 2;
  const rows = Math.ceil((bottom - top) / stepM) + 2;
  const points: Vec3[] = [];
  const places: number[] = [];
  for (let place = 0; place < columns * rows; place += 1) {
    // Points lie half a step off the bounding box, so that none falls on a straight wall.
    const x = left + ((place % columns) - 0.5) * stepM;
    const y = top + (Math.floor(place / columns) - 0.5) * stepM;
    if (!contains(outline, { x, y })) continue;
    points.push({ x, y, z: FACE_M });
    places.push(place);
  }
  return {
    columns,
    rows,
    left: left - stepM / 2,
    top: top - stepM / 2,
    stepM,
    points,
    places: Int32Array.from(places),
  };
}
