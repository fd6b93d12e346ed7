import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../../core/geometry/spot.ts';
import { dot3, length3 } from '../../../core/geometry/vec3.ts';
import { sumStops } from '../../../core/light/exposure.ts';
import { keyAngle } from '../../../core/light/key-angle.ts';
import { faceNormals } from '../../../core/light/subject/face-normals.ts';
import { type SubjectLight, subjectLevels } from '../../../core/light/subject/subject-levels.ts';

const EXPOSURE = { iso: 1600, fNumber: 2, shutterS: 1 / 160 };
const place = fc.record({
  x: fc.double({ min: -20, max: 20, noNaN: true }),
  y: fc.double({ min: -20, max: 20, noNaN: true }),
});
const light = fc.double({ min: 0.001, max: 5000, noNaN: true });
const lights: fc.Arbitrary<SubjectLight[]> = fc.array(
  fc.record({
    id: fc.uuid(),
    job: fc.constantFrom('key', 'back', 'camera'),
    powerStops: fc.option(fc.integer({ min: -21, max: 0 }).map((thirds) => thirds / 3)),
    facingLuxSeconds: light,
    keySideLuxSeconds: light,
    shadowSideLuxSeconds: light,
    returnedKeySideLuxSeconds: light,
    returnedShadowSideLuxSeconds: light,
  }),
  { minLength: 1, maxLength: 4 },
);
const OUT: SubjectLight = {
  id: 'B',
  job: 'back',
  powerStops: -6,
  facingLuxSeconds: 40,
  keySideLuxSeconds: 0,
  shadowSideLuxSeconds: 0,
  returnedKeySideLuxSeconds: 0,
  returnedShadowSideLuxSeconds: 0,
};

describe('the two sides of a face', () => {
  it('are unit, level, 45° off the camera axis, at right angles, the key side toward the key', () => {
    fc.assert(
      fc.property(place, place, place, (camera, subject, key) => {
        const heights = { subjectEyeM: 1.6, lightHeightM: 1.6 };
        const angle = keyAngle({ camera, subject, light: key, ...heights });
        fc.pre(angle !== null && angle.side !== 'on-axis' && distance(camera, subject) > 0.01);
        const normals = faceNormals({ camera, subject, light: key });
        if (!normals || !angle) throw new Error('no face');
        const { keySide, shadowSide } = normals;
        for (const side of [keySide, shadowSide]) {
          expect(length3(side)).toBeCloseTo(1, 12);
          expect(side.z).toBe(0);
          const toCamera = { x: camera.x - subject.x, y: camera.y - subject.y, z: 0 };
          expect(dot3(side, toCamera) / length3(toCamera)).toBeCloseTo(Math.SQRT1_2, 9);
        }
        expect(dot3(keySide, shadowSide)).toBeCloseTo(0, 12);
        const toKey = { x: key.x - subject.x, y: key.y - subject.y, z: 0 };
        expect(dot3(keySide, toKey)).toBeGreaterThan(dot3(shadowSide, toKey));
      }),
    );
  });

  it('a key on the axis counts as camera-right; no face without a camera axis', () => {
    const at = { x: 0, y: 0 };
    const normals = faceNormals({ camera: { x: 0, y: 5 }, subject: at, light: { x: 0, y: 3 } });
    expect(normals?.keySide.x).toBeCloseTo(Math.SQRT1_2, 12);
    expect(faceNormals({ camera: at, subject: at, light: { x: 0, y: 3 } })).toBeNull();
  });
});

describe('levels at the subject', () => {
  it('each is the sum, as light, of what reaches it', () => {
    fc.assert(
      fc.property(lights, fc.double({ min: 0, max: 500, noNaN: true }), (all, ambientLux) => {
        const levels = subjectLevels({ lights: all, ambientLux, exposure: EXPOSURE });
        const correct = (250 * 4) / 1600;
        // The plain twin: every share turned into stops by itself and added by sumStops.
        const ambient = ambientLux > 0 ? Math.log2(ambientLux / 160 / correct) : null;
        const share = (one: SubjectLight, lux: number) =>
          one.powerStops === null ? null : Math.log2(lux / correct) + one.powerStops;
        const shadowSide = sumStops([
          ambient,
          ...all.map((one) => share(one, one.shadowSideLuxSeconds)),
          ...all.map((one) => share(one, one.returnedShadowSideLuxSeconds)),
        ]);
        const keyDirect = sumStops(
          all.filter(({ job }) => job === 'key').map((one) => share(one, one.facingLuxSeconds)),
        );
        const near = (found: number | null, wanted: number | null) =>
          wanted === null ? expect(found).toBeNull() : expect(found).toBeCloseTo(wanted, 9);
        near(levels.shadowSideStops, shadowSide);
        near(levels.keyStops, keyDirect);
        if (levels.keySideToShadowSide !== null) {
          near(
            Math.log2(levels.keySideToShadowSide),
            (levels.keySideStops ?? 0) - (levels.shadowSideStops ?? 0),
          );
        }
        if (levels.keyToFill !== null) {
          near(Math.log2(levels.keyToFill), (levels.keyStops ?? 0) - (levels.fillStops ?? 0));
        }
        if (levels.fillStops !== null) {
          expect(levels.shadowSideStops ?? Number.NaN).toBeGreaterThanOrEqual(levels.fillStops - 1e-9);
        }
      }),
    );
  });

  it('a stop more power on everything is a stop more everywhere, the ratio unchanged', () => {
    fc.assert(
      fc.property(lights, (all) => {
        const lit = all.map((one) => ({ ...one, powerStops: one.powerStops ?? -1 }));
        const at = (byStops: number) =>
          subjectLevels({
            lights: lit.map((one) => ({ ...one, powerStops: one.powerStops + byStops })),
            ambientLux: 0,
            exposure: EXPOSURE,
          });
        const [low, high] = [at(0), at(1)];
        for (const name of [
          'keyStops',
          'keySideStops',
          'shadowSideStops',
          'fillStops',
          'rimStops',
          'totalStops',
        ] as const) {
          if (low[name] !== null) expect((high[name] ?? Number.NaN) - low[name]).toBeCloseTo(1, 9);
        }
        if (low.keySideToShadowSide !== null) {
          expect((high.keySideToShadowSide ?? Number.NaN) / low.keySideToShadowSide).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  it('a light that does not fire and an absent light are the same', () => {
    fc.assert(
      fc.property(lights, (all) => {
        const off: SubjectLight[] = [...all, { ...OUT, powerStops: null, returnedKeySideLuxSeconds: 900 }];
        const given = { ambientLux: 3, exposure: EXPOSURE };
        expect(subjectLevels({ lights: off, ...given })).toEqual(subjectLevels({ lights: all, ...given }));
      }),
    );
  });

  it('rim: direct light on hair, returned light as the mean of both sides, and ambient', () => {
    const rim = subjectLevels({
      lights: [{ ...OUT, powerStops: 0, returnedKeySideLuxSeconds: 6, returnedShadowSideLuxSeconds: 2 }],
      ambientLux: 160,
      exposure: EXPOSURE,
    });
    expect(rim.rimStops).toBeCloseTo(Math.log2((40 + 4 + 1) / 0.625), 9);
    // No key: the meter looks to the camera, which does not fire, so returned light and ambient are all.
    expect(rim.totalStops).toBeCloseTo(Math.log2(7 / 0.625), 9);
    expect(rim.keyStops).toBeNull();
    expect(rim.keyToFill).toBeNull();
  });

  it('without a key the camera flash is the main light', () => {
    const { totalStops } = subjectLevels({
      lights: [{ ...OUT, job: 'camera', powerStops: 0, keySideLuxSeconds: 10, shadowSideLuxSeconds: 10 }],
      ambientLux: 0,
      exposure: EXPOSURE,
    });
    expect(totalStops).toBeCloseTo(Math.log2(40 / 0.625), 9);
  });
});
