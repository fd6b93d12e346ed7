import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circularMeanDeg, degFromRad, radFromDeg, wrap180, wrap360 } from '../../../core/geometry/angle.ts';
import { cameraFrame } from '../../../core/geometry/camera-frame.ts';
import { rayToOutline } from '../../../core/geometry/ray.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { add, distance, dot, midpoint, rotate, scale, subtract, unit } from '../../../core/geometry/spot.ts';

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const spot = fc.record({ x: coordinate, y: coordinate });
const angle = fc.double({ min: -2000, max: 2000, noNaN: true });

describe('angles', () => {
  it('wrap to the same direction, into their ranges', () => {
    fc.assert(
      fc.property(angle, (angleDeg) => {
        const [full, half] = [wrap360(angleDeg), wrap180(angleDeg)];
        expect(full >= 0 && full < 360).toBe(true);
        expect(half > -180 && half <= 180).toBe(true);
        for (const wrapped of [full, half]) {
          expect(Math.cos(radFromDeg(wrapped - angleDeg))).toBeCloseTo(1, 9);
        }
      }),
    );
    expect([wrap180(180), wrap180(-180), wrap360(360), wrap360(-1)]).toEqual([180, 180, 0, 359]);
  });

  it('degrees and radians lead back to each other', () => {
    expect(degFromRad(Math.PI)).toBe(180);
    fc.assert(
      fc.property(angle, (angleDeg) => {
        expect(degFromRad(radFromDeg(angleDeg))).toBeCloseTo(angleDeg, 9);
      }),
    );
  });

  it('there is no mean of nothing, nor of opposites', () => {
    expect(circularMeanDeg([])).toBeNull();
    expect(circularMeanDeg([0, 180])).toBeNull();
  });

  it('the mean turns with its directions', () => {
    const near = fc.array(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(near, angle, (listDeg, turnDeg) => {
        const mean = circularMeanDeg(listDeg) ?? Number.NaN;
        const turned = circularMeanDeg(listDeg.map((one) => one + turnDeg)) ?? Number.NaN;
        expect(wrap180(turned - mean - turnDeg)).toBeCloseTo(0, 6);
      }),
    );
  });
});

describe('spots', () => {
  it('turning keeps length and angle, and a quarter turn goes clockwise as drawn', () => {
    fc.assert(
      fc.property(spot, spot, angle, (a, b, turnDeg) => {
        expect(distance(rotate(a, turnDeg), rotate(b, turnDeg))).toBeCloseTo(distance(a, b), 6);
        expect(dot(rotate(a, turnDeg), rotate(b, turnDeg))).toBeCloseTo(dot(a, b), 5);
      }),
    );
    // Plan-up turned by 90° points to the right of the plan.
    const right = rotate({ x: 0, y: -1 }, 90);
    expect(right.x).toBeCloseTo(1, 12);
    expect(right.y).toBeCloseTo(0, 12);
  });

  it('adding, subtracting and halving agree', () => {
    fc.assert(
      fc.property(spot, spot, (a, b) => {
        expect(distance(add(subtract(a, b), b), a)).toBeLessThan(1e-9);
        expect(distance(midpoint(a, b), a)).toBeCloseTo(distance(midpoint(a, b), b), 9);
        expect(distance(scale(add(a, b), 0.5), midpoint(a, b))).toBeLessThan(1e-9);
      }),
    );
  });

  it('a unit vector has length 1, even of something tiny or huge', () => {
    const size = fc.constantFrom(1e-300, 1e-9, 1, 1e9, 1e300);
    fc.assert(
      fc.property(spot, size, (a, factor) => {
        fc.pre(Math.hypot(a.x, a.y) > 1e-3);
        const one = unit(scale(a, factor));
        expect(Math.hypot(one?.x ?? 0, one?.y ?? 0)).toBeCloseTo(1, 9);
      }),
    );
    expect(unit({ x: 0, y: 0 })).toBeNull();
  });
});

describe('camera frame', () => {
  it('is square, of length 1, with nearer toward the camera and right a quarter turn from farther', () => {
    fc.assert(
      fc.property(spot, spot, (camera, aim) => {
        fc.pre(distance(camera, aim) > 1e-3);
        const frame = cameraFrame(camera, aim);
        if (!frame) throw new Error('no frame');
        expect(distance(add(camera, scale(frame.farther, distance(camera, aim))), aim)).toBeLessThan(1e-6);
        expect(distance(rotate(frame.farther, 90), frame.right)).toBeLessThan(1e-9);
        expect(add(frame.left, frame.right)).toEqual({ x: 0, y: 0 });
        expect(add(frame.nearer, frame.farther)).toEqual({ x: 0, y: 0 });
      }),
    );
  });

  it('a camera at the foot of the plan, looking up it, has the plan’s left on its left', () => {
    const frame = cameraFrame({ x: 5, y: 10 }, { x: 5, y: 2 });
    expect(frame?.left).toEqual({ x: -1, y: 0 });
    expect(frame?.nearer).toEqual({ x: 0, y: 1 });
  });

  it('there is none for a camera on its aim', () => {
    expect(cameraFrame({ x: 1, y: 1 }, { x: 1, y: 1 })).toBeNull();
  });
});

describe('shapes', () => {
  it('a box turned by 90° swaps width and depth', () => {
    const corners = outlineOf({
      at: { x: 2, y: 3 },
      turnDeg: 90,
      shape: { kind: 'box', widthM: 4, depthM: 1 },
    });
    expect(Math.max(...corners.map((corner) => corner.x)) - 2).toBeCloseTo(0.5, 9);
    expect(Math.max(...corners.map((corner) => corner.y)) - 3).toBeCloseTo(2, 9);
  });

  it('an outline of its own is moved and turned about its place', () => {
    const shape = {
      kind: 'outline',
      points: [
        { x: 0, y: 0 },
        { x: 1, y: 0 },
        { x: 0, y: 2 },
      ],
    } as const;
    const corners = outlineOf({ at: { x: 10, y: 10 }, turnDeg: 180, shape });
    expect(corners[1]?.x).toBeCloseTo(9, 9);
    expect(corners[2]?.y).toBeCloseTo(8, 9);
  });
});

describe('rays', () => {
  const square = outlineOf({ at: { x: 5, y: 0 }, turnDeg: 0, shape: { kind: 'box', widthM: 2, depthM: 2 } });

  it('meet the near side, and a grown outline sooner by as much', () => {
    expect(rayToOutline({ x: 0, y: 0 }, { x: 1, y: 0 }, square, 0)?.distanceM).toBeCloseTo(4, 9);
    expect(rayToOutline({ x: 0, y: 0 }, { x: 1, y: 0 }, square, 0.5)?.distanceM).toBeCloseTo(3.5, 9);
    expect(rayToOutline({ x: 0, y: 0 }, { x: -1, y: 0 }, square, 0)).toBeNull();
  });

  it('the rim of a corner is round', () => {
    const beside = { x: 0, y: -1 - 0.4 };
    const hit = rayToOutline(beside, { x: 1, y: 0 }, square, 0.5);
    expect(hit?.distanceM).toBeCloseTo(4 - Math.sqrt(0.5 ** 2 - 0.4 ** 2), 9);
    expect(rayToOutline({ x: 0, y: -1.6 }, { x: 1, y: 0 }, square, 0.5)).toBeNull();
  });
});
