import { bearingDeg } from '../../core/guidance/bearing.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/**
 * The turn that brings the face of a light more to one side of the picture, degrees clockwise from above: a light that
 * faces away from the camera turns clockwise to camera-right, one that faces the camera the other way round. Null
 * where the camera stands on the subject and sees no sides.
 *
 * @param facingDeg where the light faces, clockwise from plan-up
 */
export function turnToward(
  night: Night,
  facingDeg: number,
  side: 'left' | 'right',
  byDeg: number,
): number | null {
  const view = night.moment?.view;
  const axisDeg = view ? bearingDeg(view.camera.spot, view.subject.spot) : null;
  if (axisDeg === null) return null;
  const isAway = Math.cos(((facingDeg - axisDeg) * Math.PI) / 180) >= 0;
  return isAway === (side === 'right') ? byDeg : -byDeg;
}
