import { degFromRad } from '../geometry/angle.ts';
import type { Spot } from '../geometry/spot.ts';
import { createView, type InView } from '../geometry/view.ts';
import { isPositive } from '../units/finite.ts';

/** Lens and format: focal length and sensor [mm]; upright = camera held on its side (portrait). */
export type Frame = {
  readonly focalMm: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
  readonly upright: boolean;
};

export type FieldOfView = {
  readonly horizontalDeg: number;
  readonly verticalDeg: number;
  readonly diagonalDeg: number;
};

/** The part of a stand that is worst to have in the picture, and how far it is outside (−: inside). */
export type InFrame = {
  readonly part: 'none' | 'leg' | 'head' | 'umbrella';
  readonly marginDeg: number;
};

/** A stand as the camera sees it: a vertical line with a head on it, and perhaps an umbrella. */
export type StandView = {
  readonly camera: Spot;
  readonly cameraHeightM: number;
  readonly aim: Spot;
  readonly aimHeightM: number;
  readonly frame: Frame;
  readonly stand: Spot;
  /** Height of the top of the stand, where the head sits [m] */
  readonly topM: number;
  readonly umbrella: { readonly diameterM: number; readonly heightM: number } | null;
};

/** ASSUMPTION: a head with its bracket fits in a ball of this radius [m]. */
const HEAD_RADIUS_M = 0.1;
/** Things nearer to the lens plane than this are behind the camera or touching it [m]. */
const NEAREST_M = 1e-3;

type HalfTangents = { readonly across: number; readonly up: number };

function fullAngleDeg(sizeMm: number, focalMm: number): number {
  if (!isPositive(sizeMm)) return 0;
  // atan2 gives 180° for a focal length of 0 instead of a division by zero.
  return degFromRad(2 * Math.atan2(sizeMm / 2, Math.max(0, focalMm)));
}

function sizeAsHeld(frame: Frame): { readonly widthMm: number; readonly heightMm: number } {
  return frame.upright
    ? { widthMm: frame.sensorHeightMm, heightMm: frame.sensorWidthMm }
    : { widthMm: frame.sensorWidthMm, heightMm: frame.sensorHeightMm };
}

/**
 * Angles of view, rectilinear lens focused at infinity: 2·atan(size/2f).
 *
 * @param frame focal length and sensor [mm]; upright swaps horizontal and vertical
 * @returns angles [°]; 180 for a focal length that is not above zero, 0 for a sensor without size
 * @source angle-of-view
 */
export function fieldOfView(frame: Frame): FieldOfView {
  const { widthMm, heightMm } = sizeAsHeld(frame);
  return {
    horizontalDeg: fullAngleDeg(widthMm, frame.focalMm),
    verticalDeg: fullAngleDeg(heightMm, frame.focalMm),
    diagonalDeg: fullAngleDeg(Math.min(Math.hypot(widthMm, heightMm), Number.MAX_VALUE), frame.focalMm),
  };
}

/** Does a ball reach into the pyramid of the frame? A little generous near the corners of the picture. */
function ballInFrame(centre: InView, radiusM: number, half: HalfTangents): boolean {
  if (centre.deepM + radiusM < NEAREST_M) return false;
  const outsideM = (offset: number, tangent: number) =>
    (Math.abs(offset) - tangent * centre.deepM) / Math.hypot(1, tangent);
  return outsideM(centre.asideM, half.across) < radiusM && outsideM(centre.upM, half.up) < radiusM;
}

/** Does a straight line cross the pyramid of the frame? Clipped against its five planes in turn. */
function lineInFrame(from: InView, to: InView, half: HalfTangents): boolean {
  // Each plane as a function that is ≥ 0 inside; it is linear along the line.
  const insideBy: ((p: InView) => number)[] = [
    (p) => p.deepM - NEAREST_M,
    (p) => half.across * p.deepM - p.asideM,
    (p) => half.across * p.deepM + p.asideM,
    (p) => half.up * p.deepM - p.upM,
    (p) => half.up * p.deepM + p.upM,
  ];
  let start = 0;
  let end = 1;
  for (const inside of insideBy) {
    const a = inside(from);
    const b = inside(to);
    if (a < 0 && b < 0) return false;
    if (a < 0) start = Math.max(start, a / (a - b));
    else if (b < 0) end = Math.min(end, a / (a - b));
  }
  return start <= end;
}

/** Horizontal angle from the edge of the picture to the nearest bit of the stand [°]; inside negative. */
function marginDeg(centre: InView, radiusM: number, half: HalfTangents): number {
  const awayM = Math.hypot(centre.asideM, centre.deepM);
  const offDeg = degFromRad(Math.atan2(Math.abs(centre.asideM), centre.deepM));
  const widthDeg = awayM > radiusM ? degFromRad(Math.asin(radiusM / awayM)) : 90;
  return offDeg - widthDeg - degFromRad(Math.atan(half.across));
}

/**
 * Is a stand in the picture, and with what? The stand is a vertical line from the floor to its top, the
 * head a ball of 0.1 m at the top, the umbrella a ball of its diameter (it may be turned any way). The
 * line may cross the frame though both its ends are outside.
 *
 * @returns the worst part in the frame (umbrella, then head, then leg) and the horizontal angle between
 *   the frame's side and the nearest bit of the stand at head height [°]: + outside, − inside. Behind the
 *   camera, with a lens without length, or with the camera on its aim: part 'none', margin as computed or
 *   180
 * @source angle-of-view
 */
export function standInFrame(view: StandView): InFrame {
  const { frame, umbrella } = view;
  const see = createView(
    { spot: view.camera, heightM: view.cameraHeightM },
    { spot: view.aim, heightM: view.aimHeightM },
  );
  const { widthMm, heightMm } = sizeAsHeld(frame);
  const half = { across: widthMm / (2 * frame.focalMm), up: heightMm / (2 * frame.focalMm) };
  if (!see || !isPositive(half.across) || !isPositive(half.up)) return { part: 'none', marginDeg: 180 };
  const foot = see({ spot: view.stand, heightM: 0 });
  const top = see({ spot: view.stand, heightM: view.topM });
  const sail = umbrella ? see({ spot: view.stand, heightM: umbrella.heightM }) : top;
  const sailRadiusM = umbrella ? umbrella.diameterM / 2 : HEAD_RADIUS_M;
  const margin = marginDeg(sail, sailRadiusM, half);
  const result = (part: InFrame['part']): InFrame => ({
    part,
    marginDeg: Number.isFinite(margin) ? margin : 180,
  });
  if (umbrella && ballInFrame(sail, sailRadiusM, half)) return result('umbrella');
  if (ballInFrame(top, HEAD_RADIUS_M, half)) return result('head');
  return result(lineInFrame(foot, top, half) ? 'leg' : 'none');
}
