import { degFromRad, wrap360 } from '../../../core/geometry/angle.ts';
import { edgesOf, nearestOnSegment } from '../../../core/geometry/polygon.ts';
import { distance, type Spot } from '../../../core/geometry/spot.ts';

/** So near to a wall, something stands in it, m: less than half a door's depth. */
const IN_WALL_M = 0.04;

/**
 * How something that stands in a wall is turned so that its width runs along that wall.
 *
 * @param outline the room's [m]
 * @returns clockwise turn [°], 0 up to 180; null where the spot is in no wall
 */
export function turnAlongWall(outline: readonly Spot[], spot: Spot): number | null {
  const near = edgesOf(outline)
    .map(([a, b]) => ({ a, b, awayM: distance(nearestOnSegment(a, b, spot), spot) }))
    .filter(({ a, b, awayM }) => awayM <= IN_WALL_M && distance(a, b) > 0);
  const [wall] = near.sort((one, other) => one.awayM - other.awayM);
  if (!wall) return null;
  return wrap360(degFromRad(Math.atan2(wall.b.y - wall.a.y, wall.b.x - wall.a.x))) % 180;
}
