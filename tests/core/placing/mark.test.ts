import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radFromDeg } from '../../../core/geometry/angle.ts';
import { contains, nearestOnOutline } from '../../../core/geometry/polygon.ts';
import { add, distance, type Spot, scale } from '../../../core/geometry/spot.ts';
import { aimAt, clampToRoom } from '../../../core/placing/mark.ts';

const ROOM: Spot[] = [
  { x: 0, y: 0 },
  { x: 18, y: 0 },
  { x: 18, y: 8 },
  { x: 12, y: 8 },
  { x: 12, y: 12 },
  { x: 0, y: 12 },
];
const coordinate = fc.double({ min: -30, max: 40, noNaN: true });
const spot = fc.record({ x: coordinate, y: coordinate });
const height = fc.double({ min: 0, max: 4, noNaN: true });

describe('aiming', () => {
  it('facing and tilt lead from the light to the eyes', () => {
    fc.assert(
      fc.property(spot, height, spot, height, (from, heightM, subject, eyeM) => {
        fc.pre(distance(from, subject) > 0.1);
        const { facingDeg, tiltDeg } = aimAt(from, heightM, subject, eyeM);
        const planM = distance(from, subject);
        const facing = radFromDeg(facingDeg);
        const end = add(from, scale({ x: Math.sin(facing), y: -Math.cos(facing) }, planM));
        expect(distance(end, subject)).toBeLessThan(1e-6);
        expect(heightM - planM * Math.tan(radFromDeg(tiltDeg))).toBeCloseTo(eyeM, 6);
      }),
    );
  });

  it('straight above, it points straight down', () => {
    expect(aimAt({ x: 1, y: 1 }, 3, { x: 1, y: 1 }, 1.6)).toEqual({ facingDeg: 0, tiltDeg: 90 });
  });
});

describe('keeping a mark in the room', () => {
  it('ends inside, 0.3 m from every wall, and leaves good spots alone', () => {
    fc.assert(
      fc.property(spot, (wanted) => {
        const at = clampToRoom(wanted, ROOM);
        const wall = nearestOnOutline(ROOM, at);
        expect(contains(ROOM, at)).toBe(true);
        expect(wall && distance(wall, at)).toBeGreaterThanOrEqual(0.3 - 1e-6);
        expect(distance(clampToRoom(at, ROOM), at)).toBeLessThan(1e-6);
      }),
      { numRuns: 500 },
    );
  });

  it('does not move farther than it must from outside a straight wall', () => {
    expect(clampToRoom({ x: 5, y: -3 }, ROOM)).toEqual({ x: 5, y: 0.3 });
    expect(clampToRoom({ x: 5, y: 0.1 }, ROOM)).toEqual({ x: 5, y: 0.3 });
    expect(clampToRoom({ x: 5, y: 5 }, ROOM)).toEqual({ x: 5, y: 5 });
  });

  it('without a room leaves the spot as it is', () => {
    expect(clampToRoom({ x: 5, y: -3 }, ROOM.slice(0, 2))).toEqual({ x: 5, y: -3 });
  });
});
