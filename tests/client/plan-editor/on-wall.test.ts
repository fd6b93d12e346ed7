import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnAlongWall } from '../../../client/screens/plan-editor/on-wall.ts';
import { nearestOnOutline } from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { add, distance, rotate, type Spot, scale, subtract } from '../../../core/geometry/spot.ts';

const ROOM: readonly Spot[] = [
  { x: 0, y: 0 },
  { x: 18, y: 0 },
  { x: 18, y: 12 },
  { x: 0, y: 12 },
];

describe('a door put into a wall', () => {
  test('lies along it, however the room is turned: both its ends are in the same wall', () => {
    const somewhere = fc.record({
      turnDeg: fc.double({ min: 0, max: 360, noNaN: true }),
      wall: fc.nat({ max: 3 }),
      along: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    });
    fc.assert(
      fc.property(somewhere, ({ turnDeg, wall, along }) => {
        const room = ROOM.map((corner) => rotate(corner, turnDeg));
        const [a, b] = [room[wall], room[(wall + 1) % 4]] as [Spot, Spot];
        const at = add(a, scale(subtract(b, a), along));
        const turn = turnAlongWall(room, at);
        expect(turn).not.toBeNull();
        const door = outlineOf({ at, turnDeg: turn ?? 0, shape: { kind: 'box', widthM: 1.8, depthM: 0.1 } });
        for (const corner of door) {
          const nearest = nearestOnOutline(room, corner);
          expect(nearest && distance(nearest, corner)).toBeCloseTo(0.05, 6);
        }
      }),
    );
  });

  test('of the four walls of a plan is turned by 0° or 90°', () => {
    expect([
      turnAlongWall(ROOM, { x: 9, y: 0 }),
      turnAlongWall(ROOM, { x: 18, y: 5 }),
      turnAlongWall(ROOM, { x: 9, y: 12 }),
      turnAlongWall(ROOM, { x: 0, y: 5 }),
    ]).toEqual([0, 90, 0, 90]);
  });

  test('away from every wall, or in a room without walls, has no turn of its own', () => {
    expect(turnAlongWall(ROOM, { x: 9, y: 0.5 })).toBeNull();
    expect(turnAlongWall([], { x: 0, y: 0 })).toBeNull();
  });
});
