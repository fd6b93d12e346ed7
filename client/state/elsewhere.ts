import { cameraFrame } from '../../core/geometry/camera-frame.ts';
import { add, distance, dot, rotate, type Spot, scale, subtract, unit } from '../../core/geometry/spot.ts';
import type { Carry } from '../../shared/document/carry.ts';
import type { Mark } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** Nearer to its mark than this a stand is on it. */
const ON_MARK_M = 0.05;

/** How far off its mark, in the sense of who stands there: ahead and to the right, m. */
export interface OwnOffset {
  readonly aheadM: number;
  readonly rightM: number;
}

/** A spot so far off another one, for somebody who faces `headingDeg`, clockwise from plan-up. */
export const offBy = (spot: Spot, { aheadM, rightM }: OwnOffset, headingDeg: number): Spot =>
  add(spot, rotate({ x: rightM, y: -aheadM }, headingDeg));

/** How far a spot lies off another one, for somebody who faces `headingDeg`; undoes `offBy`. */
export function offsetOf(from: Spot, to: Spot, headingDeg: number): OwnOffset {
  const { x, y } = rotate(subtract(to, from), -headingDeg);
  return { aheadM: 0 - y, rightM: x };
}

/** A stand that was set, but not where it was called to. */
export interface Elsewhere {
  readonly called: Mark;
  readonly real: Mark;
  readonly note: string | null;
  readonly offM: number;
  /** Seen along its way `short` or `beyond`; else as the camera sees it; `off` where it sees nothing. */
  readonly side: 'short' | 'beyond' | 'camera-left' | 'camera-right' | 'nearer' | 'farther' | 'off';
}

/** Within this of the line it came along a stand is short of its mark, or beyond it: cos 25°. */
const ALONG = 0.9;

function sideOf(night: Night, before: Spot, called: Spot, real: Spot): Elsewhere['side'] {
  const off = unit(subtract(real, called));
  const way = unit(subtract(called, before));
  if (!off) return 'off';
  const along = way ? dot(off, way) : 0;
  if (Math.abs(along) >= ALONG) return along < 0 ? 'short' : 'beyond';
  const view = night.moment?.view;
  const frame = view && cameraFrame(view.camera.spot, view.subject.spot);
  if (!frame) return 'off';
  const [right, far] = [dot(off, frame.right), dot(off, frame.farther)];
  if (Math.abs(right) >= Math.abs(far)) return right > 0 ? 'camera-right' : 'camera-left';
  return far > 0 ? 'farther' : 'nearer';
}

/** Whether a carry's stand was set, but not where it was called to. */
export function isSetElsewhere(carry: Carry): boolean {
  const echo = carry.state === 'set' ? carry.current.stamps.set?.echo : null;
  return echo ? distance(carry.current.mark.spot, echo.spot) > ON_MARK_M : false;
}

/** Where a carry's stand was really set, if that is not where it was called to. */
export function elsewhereOf(night: Night, carry: Carry): Elsewhere | null {
  const { set } = carry.current.stamps;
  if (!set?.echo || !isSetElsewhere(carry)) return null;
  const [called, real] = [carry.current.mark, set.echo];
  const offM = distance(called.spot, real.spot);
  const before = set.before?.spot ?? carry.from.spot;
  return { called, real, note: set.reason, offM, side: sideOf(night, before, called.spot, real.spot) };
}

/** A spot moved by one press: so far in one of the four ways of who faces `headingDeg`. */
export type Press = 'ahead' | 'back' | 'left' | 'right';
export const PRESSES: Record<Press, OwnOffset> = {
  ahead: { aheadM: 1, rightM: 0 },
  back: { aheadM: -1, rightM: 0 },
  left: { aheadM: 0, rightM: -1 },
  right: { aheadM: 0, rightM: 1 },
};

/** A press so long. */
export const pressed = (press: Press, byM: number): OwnOffset => {
  const { x, y } = scale({ x: PRESSES[press].rightM, y: PRESSES[press].aheadM }, byM);
  return { aheadM: y, rightM: x };
};
