import { distance } from '../../geometry/spot.ts';
import { keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';
import type { FrameRays } from './cast-frame.ts';
import { frameBasis } from './frame-basis.ts';
import type { Background } from './scene.ts';
import { HIT_KINDS } from './shell.ts';

/** A feature in the picture; the shares are of all rays of the frame. */
export type FeatureInFrame = {
  readonly id: string;
  readonly name: string;
  readonly background: Background;
  /** Anywhere in the picture [1] */
  readonly frameFraction: number;
  /** Farther than the subject and beside or over it [1] */
  readonly behindFraction: number;
  /** Median of what is seen of it [stops from mid-grey] */
  readonly levelStops: number;
};

/** Numbers of a frame. Levels in stops from mid-grey, shares of all rays of the frame [1]. */
export type FrameStats = {
  /** Median over the background; null when there is none */
  readonly backgroundStops: number | null;
  readonly backgroundFraction: number;
  /** Median over the subject; null when no ray meets it */
  readonly subjectStops: number | null;
  /** Level of the mean light of the frame, as a meter that averages reads it */
  readonly meanStops: number;
  /** Under −4 stops: black in the picture */
  readonly darkFraction: number;
  /** Over +2½ stops: burnt out */
  readonly brightFraction: number;
  readonly features: readonly FeatureInFrame[];
};

/** Own rule: darker than this reads as black, brighter than that as burnt out [stops from mid-grey]. */
export const DARK_STOPS = -4;
const BRIGHT_STOPS = 2.5;
/** Own rule: what lies within this of the subject's middle, aside in the picture, is behind it [m]. */
const BESIDE_M = 0.75;

function medianOf(levels: readonly number[]): number | null {
  if (levels.length === 0) return null;
  const sorted = Float64Array.from(levels).sort();
  const upper = sorted[sorted.length >> 1] ?? 0;
  const lower = sorted[(sorted.length - 1) >> 1] ?? 0;
  return lower + (upper - lower) / 2;
}

/** Half of the picture's width within which things are behind the subject, in columns. */
function besideColumns({ scene, columns }: FrameRays): number {
  const basis = frameBasis(scene);
  const awayM = distance(scene.camera.spot, scene.subject.spot);
  return basis ? (BESIDE_M / (awayM * basis.halfAcross)) * (columns / 2) : columns;
}

type Sorted = {
  readonly background: number[];
  readonly subject: number[];
  /** Levels per solid, and how many of them are behind the subject */
  readonly solids: Map<number, { readonly levels: number[]; behind: number }>;
};

function sortRays(rays: FrameRays, levels: Float64Array): Sorted {
  const { scene, kinds, indices, positions, count, columns } = rays;
  const subjectM = distance(scene.camera.spot, scene.subject.spot);
  const beside = besideColumns(rays);
  const sorted: Sorted = { background: [], subject: [], solids: new Map() };
  for (let ray = 0; ray < count; ray += 1) {
    const level = levels[ray] ?? 0;
    const kind = kinds[ray];
    if (kind === HIT_KINDS.head || kind === HIT_KINDS.body) {
      sorted.subject.push(level);
      continue;
    }
    const x = (positions[3 * ray] ?? 0) - scene.camera.spot.x;
    const y = (positions[3 * ray + 1] ?? 0) - scene.camera.spot.y;
    const farther = x * x + y * y > subjectM * subjectM;
    if (farther) sorted.background.push(level);
    if (kind !== HIT_KINDS.solid) continue;
    const index = indices[ray] ?? 0;
    const solid = sorted.solids.get(index) ?? { levels: [], behind: 0 };
    solid.levels.push(level);
    if (farther && Math.abs((ray % columns) + 0.5 - columns / 2) <= beside) solid.behind += 1;
    sorted.solids.set(index, solid);
  }
  return sorted;
}

/**
 * The numbers of a frame. Background is every ray that does not meet the subject and goes farther (on the
 * plan) than the subject stands: foreground floor and tables in front are none of it. A feature is behind
 * the subject where it is farther and within 0.75 m of the subject's middle, aside in the picture.
 *
 * @param levels stops from mid-grey, one per ray, as `combineShades` gives them
 * @returns see the type; features with the largest share first
 * @source own-rule
 */
export function frameStats(rays: FrameRays, levels: Float64Array): FrameStats {
  const { background, subject, solids } = sortRays(rays, levels);
  const count = Math.max(1, rays.count);
  let dark = 0;
  let bright = 0;
  let light = 0;
  for (let ray = 0; ray < rays.count; ray += 1) {
    const level = levels[ray] ?? 0;
    if (level < DARK_STOPS) dark += 1;
    if (level > BRIGHT_STOPS) bright += 1;
    light += ratioFromStops(level) / count;
  }
  const features = [...solids].flatMap(([index, { levels: seen, behind }]) => {
    const solid = rays.solids[index];
    if (!solid) return [];
    const { id, name, background: wanted } = solid;
    const levelStops = medianOf(seen) ?? 0;
    const [frameFraction, behindFraction] = [seen.length / count, behind / count];
    return [{ id, name, background: wanted, frameFraction, behindFraction, levelStops }];
  });
  return {
    backgroundStops: medianOf(background),
    backgroundFraction: background.length / count,
    subjectStops: medianOf(subject),
    meanStops: keepFinite(Math.log2(light)),
    darkFraction: dark / count,
    brightFraction: bright / count,
    features: features.sort((a, b) => b.frameFraction - a.frameFraction),
  };
}
