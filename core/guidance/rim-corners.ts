import { radFromDeg } from '../geometry/angle.ts';
import { edgesOf, nearestOnSegment } from '../geometry/polygon.ts';
import { distance, dot, type Spot, subtract, unit } from '../geometry/spot.ts';
import type { LandmarkName } from './landmark.ts';

/**
 * A corner that a walker may bend round. The rim (an outline grown by the walker's radius) is met here by
 * two of its straight sides; `before` and `after` are their unit normals, pointing away from the thing.
 *
 *        after ↑
 *   ───────────●  ← spot
 *     thing    │ → before
 */
export type RimCorner = {
  readonly spot: Spot;
  readonly before: Spot;
  readonly after: Spot;
  /** What one bends round */
  readonly round: LandmarkName;
};

/** A straight side of a rim: normal · point = offsetM. */
type Side = { readonly normal: Spot; readonly offsetM: number };
/** A side and how it goes on to the next: round a corner of the thing, or into a nook (null). */
type Link = { readonly side: Side; readonly corner: Spot | null };

/** One corner of a rim turns by this much at most [°]: it then stands out by 8 % of the rim. */
const MOST_TURN_DEG = 45;
/** Sides are left out, as of a round table, while the rim's corners stand out by no more than this [m]. */
const STAND_OUT_M = 0.045;
const COS_MOST_TURN = Math.cos(radFromDeg(MOST_TURN_DEG + 1));

/** Twice the signed area: its sign tells which way round the corners run. */
function windingOf(outline: readonly Spot[]): number {
  const twice = edgesOf(outline).reduce((sum, [a, b]) => sum + a.x * b.y - b.x * a.y, 0);
  return twice < 0 ? -1 : 1;
}

function sideThrough(spot: Spot, normal: Spot, marginM: number): Side {
  return { normal, offsetM: dot(spot, normal) + marginM };
}

/** Where two sides meet; null for parallel ones, or beyond all numbers. */
function meeting(a: Side, b: Side): Spot | null {
  const across = a.normal.x * b.normal.y - a.normal.y * b.normal.x;
  if (Math.abs(across) < 1e-9) return null;
  const x = (a.offsetM * b.normal.y - b.offsetM * a.normal.y) / across;
  const y = (b.offsetM * a.normal.x - a.offsetM * b.normal.x) / across;
  return Number.isFinite(x) && Number.isFinite(y) ? { x, y } : null;
}

/** Normals strictly between two, evenly spread over the turn from one to the other. */
function normalsBetween(from: Spot, turnRad: number, wayRound: number): Spot[] {
  const parts = Math.max(1, Math.ceil(turnRad / radFromDeg(MOST_TURN_DEG) - 1e-9));
  return Array.from({ length: parts - 1 }, (_, index) => {
    const turn = (wayRound * turnRad * (index + 1)) / parts;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return { x: from.x * cos - from.y * sin, y: from.x * sin + from.y * cos };
  });
}

/** All sides of the rim in the outline's order, those round sharp corners among them. */
function linksOf(outline: readonly Spot[], outward: 1 | -1, marginM: number): Link[] {
  const sense = windingOf(outline) * outward;
  const ways = edgesOf(outline).flatMap(([a, b]) => {
    const way = unit(subtract(b, a));
    return way ? [{ a, b, way }] : [];
  });
  return ways.flatMap(({ a, b, way }, index): Link[] => {
    const next = ways[(index + 1) % ways.length];
    if (!next) return [];
    const normal = { x: sense * way.y, y: -sense * way.x };
    const across = sense * (way.x * next.way.y - way.y * next.way.x);
    const onward = dot(way, next.way);
    const bends = across > 1e-9 || (across > -1e-9 && onward < 0);
    const side = sideThrough(a, normal, marginM);
    if (!bends) return [{ side, corner: null }];
    const turnRad = Math.atan2(Math.max(0, across), onward);
    const round = normalsBetween(normal, turnRad, sense).map((between) => sideThrough(b, between, marginM));
    return [side, ...round].map((each) => ({ side: each, corner: b }));
  });
}

type IsFree = (spot: Spot) => boolean;

/** Leaves out sides whose neighbours, made longer, meet close to the rim and on free floor. */
function thinned(links: readonly Link[], marginM: number, isFree: IsFree): readonly Link[] {
  const kept: Link[] = [];
  const isSpare = (link: Link, after: Link | undefined): boolean => {
    const before = kept.at(-1);
    if (!before?.corner || !link.corner || !after) return false;
    if (dot(before.side.normal, after.side.normal) < COS_MOST_TURN) return false;
    const met = meeting(before.side, after.side);
    if (!met) return false;
    // Where several sides went before, their chord stands in for them: it lies farther in, never out.
    const nearest = nearestOnSegment(before.corner, link.corner, met);
    return distance(met, nearest) - marginM <= STAND_OUT_M && isFree(met);
  };
  // The last side stays: the first one was met with it.
  for (const [index, link] of links.entries()) if (!isSpare(link, links[index + 1])) kept.push(link);
  return kept;
}

/**
 * Corners of the rim around a thing (or inside the walls), those that a walker can stand at.
 *
 * The rim is drawn a little outside its true round corners, by at most 8 % of marginM at a sharp corner and
 * 4.5 cm round a many-sided thing; where that would close a gap, the corner is cut finer.
 *
 * @param outline corners of the thing, or of the room [m]
 * @param outward 1 for a thing that one walks round, −1 for a room that one walks in
 * @param marginM how far the rim lies from the outline [m]
 * @param isFree tells whether a walker can stand at a spot
 * @param round what is named when somebody bends there
 * @returns corners in the outline's order; none for an outline without edges
 * @source visibility-graph
 */
export function rimCorners(
  outline: readonly Spot[],
  outward: 1 | -1,
  marginM: number,
  isFree: IsFree,
  round: LandmarkName,
): RimCorner[] {
  const links = thinned(linksOf(outline, outward, marginM), marginM, isFree);
  const cornerOf = (a: Side, b: Side): RimCorner[] => {
    const spot = meeting(a, b);
    return spot && isFree(spot) ? [{ spot, before: a.normal, after: b.normal, round }] : [];
  };
  return links.flatMap(({ side, corner }, index) => {
    const next = links[(index + 1) % links.length]?.side;
    if (!corner || !next) return [];
    const whole = cornerOf(side, next);
    if (whole.length > 0) return whole;
    const between = unit({ x: side.normal.x + next.normal.x, y: side.normal.y + next.normal.y });
    if (!between) return [];
    const middle = sideThrough(corner, between, marginM);
    return [...cornerOf(side, middle), ...cornerOf(middle, next)];
  });
}
