import { createView } from '../../geometry/view.ts';
import { frameBasis } from './frame-basis.ts';
import { frameProblem } from './frame-problem.ts';
import { personOf } from './person.ts';
import type { CannotFrame, FrameScene } from './scene.ts';

/** A point of the picture: aside from its left edge and down from its top, as shares of its sides [1]. */
export type PicturePoint = { readonly asideFraction: number; readonly downFraction: number };

/** The subject's outline in the picture: head and body, each a closed line; parts may lie outside 0–1. */
export type Silhouette = {
  readonly kind: 'silhouette';
  readonly head: readonly PicturePoint[];
  readonly body: readonly PicturePoint[];
};

/** Points round the head, and round each end of the body. */
const HEAD_POINTS = 24;
const END_POINTS = 12;
/** Nothing nearer to the lens plane than this is drawn [m]. */
const NEAREST_M = 0.05;

type Aside = readonly [asideM: number, heightM: number];

/** Points of a circle about a height, from an angle to another [rad], counted from straight right upward. */
function arc(heightM: number, radiusM: number, from: number, to: number, points: number): Aside[] {
  return Array.from({ length: points }, (_, index): Aside => {
    const turn = from + ((to - from) * index) / (points - 1);
    return [radiusM * Math.cos(turn), heightM + radiusM * Math.sin(turn)];
  });
}

/**
 * The subject's outline in the picture: that of a ball on a capsule, cut by the upright plane through its
 * middle that faces the camera (at arm's length and more, that is its outline within a hair).
 *
 * @returns points in shares of the picture, 0–1 inside it; or 'cannot' with a reason in plain words
 * @source angle-of-view
 * @source assumption-person
 */
export function silhouette(scene: FrameScene): Silhouette | CannotFrame {
  const problem = frameProblem(scene);
  if (problem !== null) return { kind: 'cannot', reason: problem };
  const { camera, subject } = scene;
  const basis = frameBasis(scene);
  const see = createView(camera, { spot: subject.spot, heightM: subject.eyeM });
  if (!basis || !see) return { kind: 'cannot', reason: 'The camera looks nowhere.' };
  const point = ([asideM, heightM]: Aside): PicturePoint => {
    const spot = {
      x: subject.spot.x + asideM * basis.right[0],
      y: subject.spot.y + asideM * basis.right[1],
    };
    const seen = see({ spot, heightM });
    const deepM = Math.max(NEAREST_M, seen.deepM);
    return {
      asideFraction: 0.5 + seen.asideM / deepM / basis.halfAcross / 2,
      downFraction: 0.5 - seen.upM / deepM / basis.halfUp / 2,
    };
  };
  const { eyeM, headRadiusM, bodyRadiusM, lowM, highM } = personOf(subject);
  const body = [
    ...arc(highM, bodyRadiusM, 0, Math.PI, END_POINTS),
    ...arc(lowM, bodyRadiusM, Math.PI, 2 * Math.PI, END_POINTS),
  ];
  return {
    kind: 'silhouette',
    head: arc(eyeM, headRadiusM, 0, (2 * Math.PI * (HEAD_POINTS - 1)) / HEAD_POINTS, HEAD_POINTS).map(point),
    body: body.map(point),
  };
}
