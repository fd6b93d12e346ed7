import type { Spot } from '../../core/geometry/spot.ts';
import { aimAt, clampToRoom } from '../../core/placing/mark.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { Mark } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { type Added, sheetAt } from './reading.ts';

/**
 * A mark at a spot as a lead would want it: inside the room, turned to the subject, at the height the stand has,
 * and for the key with the power that brings the subject to zero there.
 */
export function aimedMark(night: Night, stand: Stand, spot: Spot, last: Mark, added: Added): Mark {
  const inside = night.room ? clampToRoom(spot, night.room.outline) : spot;
  const subject = night.moment?.view.subject;
  const aim = subject ? aimAt(inside, last.heightM, subject.spot, subject.eyeM) : last;
  const mark: Mark = { ...last, spot: inside, facingDeg: aim.facingDeg, tiltDeg: aim.tiltDeg };
  if (stand.kit.job !== 'key') return mark;
  const sheet = sheetAt(night, stand, mark, added);
  const solved = sheet.kind === 'sheet' && sheet.powerForZero.kind === 'power' ? sheet.powerForZero : null;
  return solved ? { ...mark, powerStops: solved.powerStops } : mark;
}
