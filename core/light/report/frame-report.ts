import type { Belief } from '../fit/belief.ts';
import { predict } from '../fit/predict.ts';
import { darkBehind } from '../frame/dark-behind.ts';
import { frameStats } from '../frame/frame-stats.ts';
import { type LightInFrame, lightsInFrame, type StandLamp } from '../frame/lights-in-frame.ts';
import { litSides } from '../frame/lit-sides.ts';
import { framePicture } from '../frame/picture.ts';
import { combineShades } from '../frame/shade-frame.ts';
import { silhouette } from '../frame/silhouette.ts';
import type { Sight } from '../room/sight.ts';
import type { LightInput } from './light-input.ts';
import type { FrameReport, Spread } from './light-report.ts';
import { ambientFactor, litBy, outputFactor, roomFactor } from './room-fit.ts';
import type { RoomLight } from './unit-light.ts';
import type { ViewLight } from './view-light.ts';
import { backgroundRays, type LitUnit, rayParts } from './wanted-powers.ts';

type Seen = {
  readonly frame: FrameReport;
  readonly lights: readonly LightInFrame[];
};

/** Level of the background with its spread, taken at the ray in the middle of it. */
function backgroundSpread(
  view: ViewLight,
  lit: readonly LitUnit[],
  belief: Belief,
  levels: Float64Array,
  middleStops: number | null,
  input: LightInput,
): Spread | null {
  if (middleStops === null) return null;
  let best = -1;
  let away = Number.POSITIVE_INFINITY;
  for (const ray of backgroundRays(view)) {
    const off = Math.abs((levels[ray] ?? 0) - middleStops);
    if (off < away) [best, away] = [ray, off];
  }
  if (best < 0) return null;
  const near = predict(belief, litBy(rayParts(lit, best), view.ambientShade[best] ?? 0, input.exposure));
  return near && { stops: middleStops, sdStops: near.sdStops };
}

/**
 * The frame check: levels over the picture, what is in it, and the small picture itself.
 *
 * @returns null when a setting of the camera is not above zero
 * @source iso2720
 */
export function frameReport({
  input,
  view,
  sight,
  lit,
  rooms,
  belief,
}: {
  readonly input: LightInput;
  readonly view: ViewLight;
  readonly sight: Sight;
  readonly lit: readonly LitUnit[];
  readonly rooms: readonly RoomLight[];
  readonly belief: Belief;
}): Seen | null {
  const { exposure, units } = input;
  const { rays } = view.links;
  const room = roomFactor(belief);
  const shades = lit.map(({ unit, seen }) => {
    const out = outputFactor(belief, unit);
    const shade = seen.shadeStraight.map(
      (straight, ray) => (straight + (seen.shadeReturned[ray] ?? 0) * room) * out,
    );
    return { shade, powerStops: unit.mark.powerStops };
  });
  const ambient = view.ambientShade.map((lux) => lux * ambientFactor(belief));
  const levels = combineShades(shades, ambient, exposure, rays.count);
  if (!levels) return null;
  const stats = frameStats(rays, levels);
  const stands = units.filter(({ job }) => job !== 'camera');
  const scene = {
    ...view.scene,
    stands: stands.map(({ id, letter, mark, recipe }) => ({
      id,
      letter,
      spot: mark.spot,
      heightM: mark.heightM,
      umbrellaRadiusM: recipe.kind === 'umbrella' ? recipe.umbrella.diameterM / 2 : null,
    })),
  };
  const lamps = units.flatMap(({ id, mark }, index): StandLamp[] => {
    const lamp = rooms[index]?.lamp;
    return lamp ? [{ standId: id, lamp, powerStops: mark.powerStops }] : [];
  });
  const back = units.find(({ job }) => job === 'back');
  const drawn = silhouette(scene);
  return {
    lights: lightsInFrame(scene, lamps, exposure),
    frame: {
      columns: rays.columns,
      rows: rays.rows,
      grey: framePicture(levels, rays.columns, rays.rows),
      background: backgroundSpread(view, lit, belief, levels, stats.backgroundStops, input),
      darkFraction: stats.darkFraction,
      brightFraction: stats.brightFraction,
      features: stats.features,
      darkBehindFraction: back ? darkBehind(rays, levels, back.mark.spot).darkFraction : null,
      silhouette: drawn.kind === 'silhouette' ? drawn : null,
      lit: litSides(scene, lamps, sight, exposure),
    },
  };
}
