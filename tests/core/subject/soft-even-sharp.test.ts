import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthOfField } from '../../../core/light/subject/depth-of-field.ts';
import { evenness, groupSpots } from '../../../core/light/subject/evenness.ts';
import { penumbraM } from '../../../core/light/subject/penumbra.ts';
import { softness } from '../../../core/light/subject/softness.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('softness', () => {
  it('grows with size, shrinks with distance and when the light turns aside; either way of turning is the same', () => {
    fc.assert(
      fc.property(between(0.1, 2), between(1, 10), between(1, 80), (diameterM, distanceM, emissionDeg) => {
        const of = (change: object) =>
          softness({ diameterM, distanceM, emissionDeg, ...change })?.angularDiameterDeg ?? Number.NaN;
        expect(of({ diameterM: diameterM * 1.1 })).toBeGreaterThan(of({}));
        expect(of({ distanceM: distanceM * 1.1 })).toBeLessThan(of({}));
        expect(of({ emissionDeg: 0 })).toBeGreaterThan(of({}));
        expect(of({ emissionDeg: -emissionDeg })).toBeCloseTo(of({}), 12);
      }),
    );
  });

  it('turned aside, the disc keeps the solid angle of its ellipse', () => {
    // The ellipse has the half axes R and R·cos φ; far away its solid angle is π·R²·cos φ/d².
    const seen = softness({ diameterM: 1, distanceM: 100, emissionDeg: 60 });
    const half = ((seen?.angularDiameterDeg ?? 0) * Math.PI) / 360;
    expect((Math.PI * half * half) / ((Math.PI * 0.25 * 0.5) / 1e4)).toBeCloseTo(1, 4);
  });

  it('a point has hard edges, and there is none from behind or at no distance', () => {
    expect(softness({ diameterM: 0, distanceM: 2, emissionDeg: 0 })).toEqual({
      angularDiameterDeg: 0,
      nosePenumbraMm: 0,
    });
    expect(softness({ diameterM: 1, distanceM: 2, emissionDeg: 91 })).toBeNull();
    expect(softness({ diameterM: 1, distanceM: 0, emissionDeg: 0 })).toBeNull();
    expect(penumbraM(1, 0, 1)).toBeNull();
  });
});

describe('evenness', () => {
  it('places stand evenly square to the camera axis, camera-left first', () => {
    expect(groupSpots({ camera: { x: 0, y: 5 }, subject: { x: 0, y: 0 }, widthM: 4, count: 3 })).toEqual([
      { x: -2, y: 0 },
      { x: 0, y: 0 },
      { x: 2, y: 0 },
    ]);
    const subject = { x: 1, y: 1 };
    expect(groupSpots({ camera: subject, subject, widthM: 4, count: 3 })).toBeNull();
    expect(groupSpots({ camera: { x: 0, y: 5 }, subject, widthM: 0, count: 3 })).toEqual([subject]);
  });

  it('finds the brightest and darkest, does not change with power, and refuses darkness', () => {
    fc.assert(
      fc.property(
        fc.array(between(0.01, 1000), { minLength: 1, maxLength: 9 }),
        between(-6, 6),
        (list, stops) => {
          const found = evenness(list);
          if (!found) throw new Error('none');
          for (const light of list) {
            expect(light).toBeLessThanOrEqual(list[found.brightestAt] ?? 0);
            expect(light).toBeGreaterThanOrEqual(list[found.darkestAt] ?? Number.POSITIVE_INFINITY);
          }
          const brighter = evenness(list.map((light) => light * 2 ** stops));
          expect(brighter?.spreadStops).toBeCloseTo(found.spreadStops, 9);
        },
      ),
    );
    expect(evenness([1, 8, 2])).toEqual({ spreadStops: 3, brightestAt: 1, darkestAt: 0 });
    expect(evenness([])).toBeNull();
    expect(evenness([1, 0])).toBeNull();
  });
});

describe('depth of field', () => {
  const settings = fc.record({
    focalMm: between(14, 200),
    fNumber: between(1.2, 22),
    sensorWidthMm: between(13, 54),
    sensorHeightMm: between(9, 40),
    focusM: between(0.5, 30),
  });

  /** Diameter on the sensor of the blur of a point, by the thin lens equation alone [mm]. */
  function blurMm(focalMm: number, fNumber: number, focusMm: number, pointMm: number): number {
    const imageOf = (mm: number) => (focalMm * mm) / (mm - focalMm);
    const opening = focalMm / fNumber;
    return (opening * Math.abs(imageOf(pointMm) - imageOf(focusMm))) / imageOf(pointMm);
  }

  it('a point at either limit is blurred by exactly the circle', () => {
    fc.assert(
      fc.property(settings, (given) => {
        const found = depthOfField(given);
        if (!found) throw new Error('none');
        const blur = (metres: number) =>
          blurMm(given.focalMm, given.fNumber, given.focusM * 1000, metres * 1000) / found.circleMm;
        expect(blur(found.nearM)).toBeCloseTo(1, 6);
        if (found.farM !== null) expect(blur(found.farM)).toBeCloseTo(1, 5);
        else expect(given.focusM).toBeGreaterThanOrEqual(found.hyperfocalM * (1 - 1e-9));
      }),
    );
  });

  it('the circle goes with the diagonal; nonsense gives none', () => {
    const given = { focalMm: 50, fNumber: 2, sensorWidthMm: 18, sensorHeightMm: 12, focusM: 3 };
    expect(depthOfField(given)?.circleMm).toBeCloseTo(0.015, 12);
    expect(depthOfField({ ...given, focusM: 0.05 })).toBeNull();
    expect(depthOfField({ ...given, fNumber: 0 })).toBeNull();
  });
});
