import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cameraFrame } from '../../../core/geometry/camera-frame.ts';
import { add, distance, rotate, scale } from '../../../core/geometry/spot.ts';
import { fieldOfView, type StandView, standInFrame } from '../../../core/light/field-of-view.ts';
import { keyAngle } from '../../../core/light/key-angle.ts';
import { patternName } from '../../../core/light/pattern.ts';

const coordinate = fc.double({ min: -10, max: 10, noNaN: true });
const spot = fc.record({ x: coordinate, y: coordinate });

describe('key angle', () => {
  const SUBJECT = { x: 9, y: 6 };
  const CAMERA = { x: 9, y: 12 };

  it('45° camera-left at 2 m, with the height that makes 45°', () => {
    const light = add(SUBJECT, { x: -Math.SQRT2, y: Math.SQRT2 });
    const angle = keyAngle({ camera: CAMERA, subject: SUBJECT, subjectEyeM: 1.6, light, lightHeightM: 3.6 });
    expect(angle?.azimuthDeg).toBeCloseTo(-45, 9);
    expect(angle?.side).toBe('camera-left');
    expect(angle?.elevationDeg).toBeCloseTo(45, 9);
    expect(angle?.distanceM).toBeCloseTo(Math.hypot(2, 2), 9);
  });

  it('turning the whole room changes nothing', () => {
    fc.assert(
      fc.property(
        spot,
        spot,
        spot,
        fc.double({ min: 0, max: 360, noNaN: true }),
        (camera, subject, light, turnDeg) => {
          fc.pre(distance(camera, subject) > 0.1 && distance(light, subject) > 0.1);
          const turned = {
            camera: rotate(camera, turnDeg),
            subject: rotate(subject, turnDeg),
            light: rotate(light, turnDeg),
          };
          const heights = { subjectEyeM: 1.6, lightHeightM: 2.4 };
          const one = keyAngle({ camera, subject, light, ...heights });
          const other = keyAngle({ ...turned, ...heights });
          const gap = Math.abs((one?.azimuthDeg ?? 0) - (other?.azimuthDeg ?? 999));
          expect(Math.min(gap, 360 - gap)).toBeLessThan(1e-6);
          expect(other?.distanceM).toBeCloseTo(one?.distanceM ?? Number.NaN, 6);
        },
      ),
    );
  });

  it('a light moved camera-right of the subject is at +90°, behind the camera at 0°, behind the subject at 180°', () => {
    fc.assert(
      fc.property(spot, spot, (camera, subject) => {
        fc.pre(distance(camera, subject) > 0.1);
        const frame = cameraFrame(camera, subject);
        if (!frame) throw new Error('no frame');
        const at = (way: typeof frame.right) =>
          keyAngle({
            camera,
            subject,
            subjectEyeM: 1.6,
            light: add(subject, scale(way, 2)),
            lightHeightM: 1.6,
          });
        expect(at(frame.right)).toMatchObject({ side: 'camera-right' });
        expect(at(frame.right)?.azimuthDeg).toBeCloseTo(90, 6);
        expect(at(frame.left)?.azimuthDeg).toBeCloseTo(-90, 6);
        expect(at(frame.nearer)).toMatchObject({ side: 'on-axis' });
        expect(Math.abs(at(frame.farther)?.azimuthDeg ?? 0)).toBeCloseTo(180, 6);
        expect(at(frame.farther)).toMatchObject({ side: 'on-axis' });
      }),
    );
  });

  it('within one degree of the axis there is no side', () => {
    const sideAt = (azimuthDeg: number) =>
      keyAngle({
        camera: CAMERA,
        subject: SUBJECT,
        subjectEyeM: 1.6,
        light: add(SUBJECT, rotate({ x: 0, y: 2 }, azimuthDeg)),
        lightHeightM: 1.6,
      })?.side;
    const turns = [0.98, 1.02, -1.02, 179.02, 178.98];
    expect(turns.map(sideAt)).toEqual(['on-axis', 'camera-left', 'camera-right', 'on-axis', 'camera-left']);
  });

  it('needs a camera away from the subject, and a light away from its eyes', () => {
    const base = { camera: CAMERA, subject: SUBJECT, subjectEyeM: 1.6, light: SUBJECT, lightHeightM: 1.6 };
    expect(keyAngle({ ...base, camera: SUBJECT, light: CAMERA })).toBeNull();
    expect(keyAngle(base)).toBeNull();
    expect(keyAngle({ ...base, lightHeightM: 3 })).toMatchObject({ elevationDeg: 90, side: 'on-axis' });
  });
});

describe('pattern names', () => {
  it('run from flat to rim as the light goes round, each once', () => {
    const names = Array.from({ length: 181 }, (_, azimuthDeg) => patternName(azimuthDeg, 10));
    expect([...new Set(names)]).toEqual(['flat', 'loop', 'rembrandt', 'split', 'rim']);
    const changes = names.filter((name, index) => index > 0 && names[index - 1] !== name);
    expect(changes).toHaveLength(4);
  });

  it('turn at the documented angles', () => {
    const turns = [
      [19.9, 'flat'],
      [20, 'loop'],
      [37.4, 'loop'],
      [37.6, 'rembrandt'],
      [67.4, 'rembrandt'],
      [67.6, 'split'],
      [100, 'split'],
      [100.1, 'rim'],
    ] as const;
    for (const [azimuthDeg, name] of turns) expect(patternName(azimuthDeg, 0)).toBe(name);
    expect([patternName(0, 24.9), patternName(0, 25)]).toEqual(['flat', 'butterfly']);
  });

  it('do not care for the side', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 180, noNaN: true }),
        fc.double({ min: -20, max: 80, noNaN: true }),
        (azimuthDeg, elevationDeg) => {
          expect(patternName(-azimuthDeg, elevationDeg)).toBe(patternName(azimuthDeg, elevationDeg));
        },
      ),
    );
  });
});

describe('stand in the frame', () => {
  /** Camera at the origin, looking up the plan, level, 50 mm: 39.6° wide, 27° high. */
  const VIEW: StandView = {
    camera: { x: 0, y: 0 },
    cameraHeightM: 1.5,
    aim: { x: 0, y: -5 },
    aimHeightM: 1.5,
    frame: { focalMm: 50, sensorWidthMm: 36, sensorHeightMm: 24, upright: false },
    stand: { x: 0, y: -5 },
    topM: 2.2,
    umbrella: null,
  };
  const tan = 18 / 50;

  it('names the worst part', () => {
    // At 5 m the frame is 2.4 m high: from 0.3 to 2.7 m.
    expect(standInFrame(VIEW)).toMatchObject({ part: 'head' });
    expect(standInFrame({ ...VIEW, topM: 3.5 })).toMatchObject({ part: 'leg' });
    expect(standInFrame({ ...VIEW, topM: 0.15 })).toMatchObject({ part: 'none' });
    expect(standInFrame({ ...VIEW, topM: 3, umbrella: { diameterM: 1, heightM: 3 } })).toMatchObject({
      part: 'umbrella',
    });
  });

  it('a stand whose foot and head are both outside may still cross the picture', () => {
    const crossing = { ...VIEW, stand: { x: 0, y: -2 }, topM: 3 };
    expect(standInFrame(crossing)).toMatchObject({ part: 'leg' });
  });

  it('the side of the frame lies where the lens says', () => {
    const edge = 5 * tan;
    const head = 0.1 * Math.hypot(1, tan);
    expect(standInFrame({ ...VIEW, stand: { x: edge + head + 0.003, y: -5 } })).toMatchObject({
      part: 'none',
    });
    expect(standInFrame({ ...VIEW, stand: { x: edge + head - 0.003, y: -5 } })).toMatchObject({
      part: 'head',
    });
    const upright = { ...VIEW, frame: { ...VIEW.frame, upright: true } };
    const narrow = (5 * 12) / 50 + head + 0.02;
    expect(standInFrame({ ...upright, stand: { x: narrow, y: -5 } })).toMatchObject({ part: 'none' });
    expect(standInFrame({ ...VIEW, stand: { x: narrow, y: -5 } })).toMatchObject({ part: 'head' });
  });

  it('the foot of the frame lies where the lens says', () => {
    const foot = 1.5 - (5 * 12) / 50 - 0.1 * Math.hypot(1, 12 / 50);
    expect(standInFrame({ ...VIEW, topM: foot + 0.01 })).toMatchObject({ part: 'head' });
    expect(standInFrame({ ...VIEW, topM: foot - 0.01 })).toMatchObject({ part: 'none' });
  });

  it('an umbrella reaches into the frame by its radius', () => {
    const touch = 5 * tan + 0.5 * Math.hypot(1, tan);
    const partAt = (x: number) =>
      standInFrame({ ...VIEW, stand: { x, y: -5 }, umbrella: { diameterM: 1, heightM: 2.2 } }).part;
    expect([partAt(touch - 0.01), partAt(touch + 0.01)]).toEqual(['umbrella', 'none']);
  });

  it('without a lens or without an aim nothing is in the picture', () => {
    const none = { part: 'none', marginDeg: 180 };
    expect(standInFrame({ ...VIEW, frame: { ...VIEW.frame, sensorWidthMm: 0 } })).toEqual(none);
    expect(standInFrame({ ...VIEW, aim: VIEW.camera })).toEqual(none);
    const field = fieldOfView({ ...VIEW.frame, sensorWidthMm: 0, focalMm: 0 });
    expect([field.horizontalDeg, field.verticalDeg]).toEqual([0, 180]);
  });

  it('an umbrella over the camera fills a quarter turn to either side', () => {
    const over = { ...VIEW, stand: { x: 0, y: -0.5 }, umbrella: { diameterM: 2, heightM: 1.5 } };
    expect(standInFrame(over)).toMatchObject({ part: 'umbrella' });
    expect(standInFrame(over).marginDeg).toBeCloseTo(-90 - 39.6 / 2, 1);
  });

  it('behind the camera there is nothing in the picture', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 10, noNaN: true }), coordinate, (behindM, x) => {
        const result = standInFrame({ ...VIEW, stand: { x, y: behindM } });
        expect(result.part).toBe('none');
        expect(result.marginDeg).toBeGreaterThan(0);
      }),
    );
  });

  it('with a level camera, margin and part agree: outside is none, and mirrored is the same', () => {
    fc.assert(
      fc.property(
        coordinate,
        fc.double({ min: -10, max: -0.8, noNaN: true }),
        fc.option(fc.double({ min: 0.5, max: 1.5, noNaN: true })),
        (x, y, diameterM) => {
          const umbrella = diameterM === null ? null : { diameterM, heightM: 2.2 };
          const result = standInFrame({ ...VIEW, stand: { x, y }, umbrella });
          const mirrored = standInFrame({ ...VIEW, stand: { x: -x, y }, umbrella });
          if (result.marginDeg > 1e-6) expect(result.part).toBe('none');
          if (result.marginDeg < -1e-6 && y < -1.6) expect(result.part).not.toBe('none');
          expect(mirrored.part).toBe(result.part);
          expect(mirrored.marginDeg).toBeCloseTo(result.marginDeg, 9);
        },
      ),
    );
  });

  it('agrees with looking at many points of the stand one by one', () => {
    const point = fc.record({ x: coordinate, y: coordinate });
    fc.assert(
      fc.property(
        point,
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (stand, topM, aimHeightM) => {
          const view = { ...VIEW, stand, topM, aimHeightM };
          if (standInFrame(view).part === 'none') expect(anyPointSeen(view)).toBe(false);
        },
      ),
      { numRuns: 2000 },
    );
  });

  /** Slow twin: projects points of the line with explicit rotation angles. */
  function anyPointSeen(view: StandView): boolean {
    const pitch = Math.atan2(view.aimHeightM - view.cameraHeightM, 5);
    return Array.from({ length: 101 }, (_, index) => (view.topM * index) / 100).some((heightM) => {
      const [ahead, above] = [-view.stand.y, heightM - view.cameraHeightM];
      const deep = ahead * Math.cos(pitch) + above * Math.sin(pitch);
      const up = above * Math.cos(pitch) - ahead * Math.sin(pitch);
      return deep > 0.01 && Math.abs(view.stand.x) < tan * deep && Math.abs(up) < (12 / 50) * deep;
    });
  }
});
