import { contains } from '../../geometry/polygon.ts';
import type { Spot } from '../../geometry/spot.ts';
import { plainOutline } from './outline.ts';
import { createRoof } from './roof.ts';
import type { RoomModel } from './room-model.ts';

/** What of a room's surfaces lies under or against something, and so is no surface of the room. */
export interface Cover {
  /** Does a level surface at this place [m] exist? `own` is the blocker whose top it is, −1 for floor and roof. */
  open(spot: Spot, heightM: number, own: number): boolean;
  /** Greatest height [m] of the blockers other than `own` that hold the spot; 0 for none */
  heightOver(spot: Spot, own: number): number;
  /** Might a blocker other than `own` reach within so far [m] of the spot? */
  near(spot: Spot, withinM: number, own: number): boolean;
}

/**
 * Makes the test of what blockers leave of floor, roof, walls and each other.
 *
 * @source textbook-geometry
 */
export function createCover(room: RoomModel): Cover {
  const roofAt = createRoof(room);
  const things = room.blockers.map(({ outline, heightM }) => {
    const corners = plainOutline(outline);
    const xs = corners.map(({ x }) => x);
    const ys = corners.map(({ y }) => y);
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const near = ({ x, y }: Spot, withinM: number) =>
      x >= left - withinM && x <= right + withinM && y >= top - withinM && y <= bottom + withinM;
    return { heightM, near, holds: (spot: Spot) => near(spot, 0) && contains(corners, spot) };
  });
  return {
    open(spot, heightM, own) {
      if (own >= 0 && !(contains(room.outline, spot) && heightM < roofAt(spot) - 1e-6)) return false;
      return !things.some((thing, index) => {
        if (index === own || !thing.holds(spot)) return false;
        // Of two tops at one height, the first keeps the place where they overlap.
        return (
          thing.heightM > heightM + 1e-9 || (thing.heightM >= heightM - 1e-9 && (own < 0 || index < own))
        );
      });
    },
    heightOver(spot, own) {
      return things.reduce(
        (most, { heightM, holds }, index) =>
          index !== own && heightM > most && holds(spot) ? heightM : most,
        0,
      );
    },
    near(spot, withinM, own) {
      return things.some(({ near }, index) => index !== own && near(spot, withinM));
    },
  };
}
