import { contains } from '../../core/geometry/polygon.ts';
import type { Spot } from '../../core/geometry/spot.ts';
import { clampToRoom } from '../../core/placing/mark.ts';
import { spotSchema } from './fields.ts';
import { key } from './keys.ts';
import type { Night } from './snapshot.ts';
import type { Hand, Pen } from './transact.ts';

/** Where a spot outside an outline comes to lie inside it; null for a spot that is inside, or that has no such place. */
function spotInside(outline: readonly Spot[], spot: Spot): Spot | null {
  if (contains(outline, spot)) return null;
  const checked = spotSchema.safeParse(clampToRoom(spot, outline));
  return checked.success ? checked.data : null;
}

/** Brings the stands that stand outside a new outline inside, within the transaction of `pen`. */
export function bringStandsInside(pen: Pen, hand: Hand, night: Night, outline: readonly Spot[]): void {
  for (const { id, place } of night.stands) {
    const spot = spotInside(outline, place.mark.spot);
    if (spot === null) continue;
    // It no longer stands where a carry set it, so an undo of that carry has nothing to put back.
    const moved = { mark: { ...place.mark, spot }, at: hand.now(), by: hand.person, carry: null };
    pen.write('stands', key.standAt(id), moved);
  }
}

/**
 * Brings subjects and cameras of all moments inside a room that is another than before. A wall that is moved does not do
 * this: a camera may look in through a door, and whoever moves a wall has not said otherwise.
 */
export function bringPeopleInside(pen: Pen, night: Night, outline: readonly Spot[]): void {
  // One that was taken out of the running order may come back.
  for (const { id, view } of [...night.moments, ...night.removedMoments]) {
    const subject = spotInside(outline, view.subject.spot);
    const camera = spotInside(outline, view.camera.spot);
    if (subject === null && camera === null) continue;
    pen.write('moments', key.momentView(id), {
      ...view,
      subject: { ...view.subject, spot: subject ?? view.subject.spot },
      camera: { ...view.camera, spot: camera ?? view.camera.spot },
    });
  }
}
