import type { Spot } from '../geometry/spot.ts';
import type { Mark } from '../placing/mark.ts';
import { byWorstFirst, type Caution, notChecked } from './caution.ts';
import { type Exit, exitCaution } from './exit-clear.ts';
import { HEADROOM_M, rimCaution, rimLow } from './rim-height.ts';
import type { StandBuild } from './tipping.ts';
import { tippingCaution } from './tipping-caution.ts';
import { type Obstacle, obstacleUnder, widthLeft } from './walkway.ts';
import { walkwayCaution } from './walkway-caution.ts';

/** What the cautions of one mark are drawn from; null stands for "not known". */
export type MarkCautionsInput = {
  readonly mark: Pick<Mark, 'spot' | 'heightM' | 'tiltDeg'>;
  readonly umbrella: { readonly diameterM: number } | null;
  readonly build: StandBuild | null;
  readonly obstacles: readonly Obstacle[];
  readonly exits: readonly Exit[];
  readonly room: readonly Spot[];
};

/** A side narrower than this nobody passes [m]: about half of a person's shoulders. */
const PASSABLE_M = 0.3;

/** Floor and head room that a stand takes around its column [m]; null without a known build. */
function footprintM({ mark, umbrella, build }: MarkCautionsInput): number | null {
  if (!build) return null;
  const low = umbrella !== null && rimLow(mark.heightM, umbrella.diameterM, mark.tiltDeg) < HEADROOM_M;
  return Math.max(build.legRadiusM, low ? umbrella.diameterM / 2 : 0);
}

function onObstacle(input: MarkCautionsInput): Caution | null {
  const under = obstacleUnder(input.mark.spot, input.obstacles);
  if (!under) return null;
  return {
    id: 'on-feature',
    level: 'caution',
    title: 'On something',
    detail: `The mark lies on ${under.name}; a stand belongs on the floor.`,
    value: 0,
    limit: 0,
    unit: 'm',
    source: 'The plan',
  };
}

/**
 * Every caution for one mark, worst first. An empty list would mean only that no check raised any.
 *
 * @returns cautions on tipping, walkway, rim height, exits and what the mark lies on
 * @source statics-tipping
 * @source ada-clear-width
 */
export function markCautions(input: MarkCautionsInput): Caution[] {
  const { mark, umbrella, build, obstacles, exits, room } = input;
  const stand = mark.spot;
  const footprintRadiusM = footprintM(input);
  const width = widthLeft({ stand, footprintRadiusM: footprintRadiusM ?? 0, obstacles, room });
  const passable = width === null ? null : width.leftM >= PASSABLE_M;
  const cautions = [
    onObstacle(input),
    tippingCaution(build, mark.heightM, umbrella),
    footprintRadiusM === null
      ? notChecked('walkway', 'Walkway width', "the stand's leg radius is not known", 'The gear list')
      : walkwayCaution({ stand, room, width }),
    exitCaution({ stand, footprintRadiusM: build?.legRadiusM ?? 0, exits }),
    rimCaution({ heightM: mark.heightM, tiltDeg: mark.tiltDeg, umbrella, nearWalkway: passable }),
  ];
  return cautions.filter((caution) => caution !== null).sort(byWorstFirst);
}
