import { describe, expect, it } from 'vitest';
import { distance, type Spot } from '../../core/geometry/spot.ts';
import { bearingDeg } from '../../core/guidance/bearing.ts';
import { lightSheet } from '../../core/light/light-sheet.ts';
import { adviseOnPowers } from '../../core/light/powers/advice.ts';
import type { PowerProblem } from '../../core/light/powers/power-targets.ts';
import { solvePowers } from '../../core/light/powers/solve-powers.ts';
import {
  BODY_RADIUS_M,
  clearFaceChance,
  HEAD_HEIGHT_M,
  RAISED_HANDS_M,
} from '../../core/light/subject/clear-face.ts';
import { depthOfField } from '../../core/light/subject/depth-of-field.ts';
import { evenness, groupSpots } from '../../core/light/subject/evenness.ts';
import { penumbraM } from '../../core/light/subject/penumbra.ts';
import { shadowLanding } from '../../core/light/subject/shadow-landing.ts';
import { softness } from '../../core/light/subject/softness.ts';
import { type SubjectLight, subjectLevels } from '../../core/light/subject/subject-levels.ts';
import { luxSecondsAt } from '../../core/light/umbrella.ts';
import { expectClose } from './expect-close.ts';
import adding from './fixtures/adding-light.json' with { type: 'json' };
import subject from './fixtures/subject.json' with { type: 'json' };

const FULL_FRAME = { sensorWidthMm: 36, sensorHeightMm: 24 };
const HEAD = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
const BARE = { head: HEAD, umbrella: null };
const UMBRELLA = { head: HEAD, umbrella: { diameterM: 1, forwardFraction: 0.5 } };
const SETTINGS = { iso: 1600, fNumber: 2, shutterS: 1 / 160 };

const DARK: Omit<SubjectLight, 'id' | 'job'> = {
  powerStops: 0,
  facingLuxSeconds: 0,
  keySideLuxSeconds: 0,
  shadowSideLuxSeconds: 0,
  returnedKeySideLuxSeconds: 0,
  returnedShadowSideLuxSeconds: 0,
};

/** A key on the key side alone, and a fill from the camera that reaches both sides alike. */
function levelsOf(key: number, fill: number) {
  const lights: SubjectLight[] = [
    { ...DARK, id: 'K', job: 'key', facingLuxSeconds: key, keySideLuxSeconds: key },
    { ...DARK, id: 'C', job: 'camera', keySideLuxSeconds: fill, shadowSideLuxSeconds: fill },
  ];
  return subjectLevels({ lights, ambientLux: 0, exposure: SETTINGS });
}

describe('lighting ratio, (key + fill) : fill after the ASC', () => {
  it.each(subject.ratios)('key $key and fill $fill are $ratio : 1', ({ key, fill, ratio, tolerance }) => {
    expectClose(levelsOf(key, fill).keySideToShadowSide, ratio, tolerance, 'ratio');
  });

  it.each(adding.ratios)('fill $fillUnderKeyStops stops under the key is $ratio : 1', (row) => {
    const levels = levelsOf(10, 10 * 2 ** -row.fillUnderKeyStops);
    expectClose(levels.keySideToShadowSide, row.ratio, row.tolerance, 'ratio');
  });

  it.each(subject.keyToFill)('key : fill at $differenceStops stops is $ratio : 1', (row) => {
    expectClose(
      levelsOf(10, 10 * 2 ** -row.differenceStops).keyToFill,
      row.ratio,
      row.tolerance,
      'key : fill',
    );
  });

  it.each(adding.sums)('ambient $ambient and key $flash make $total', (row) => {
    // Correct at N 1, ISO 100: 2.5 lx·s (C = 250).
    const exposure = { iso: 100, fNumber: 1, shutterS: 0.5 };
    const key = 2.5 * 2 ** row.flash;
    const levels = subjectLevels({
      lights: [{ ...DARK, id: 'K', job: 'key', facingLuxSeconds: key, keySideLuxSeconds: key }],
      ambientLux: 5 * 2 ** row.ambient,
      exposure,
    });
    expectClose(levels.totalStops, row.total, row.tolerance, 'total');
    expectClose(levels.fillStops, row.ambient, 'exact', 'fill');
  });
});

describe('depth of field', () => {
  const sharp = (focalMm: number, fNumber: number, focusMm: number) =>
    depthOfField({ ...FULL_FRAME, focalMm, fNumber, focusM: focusMm / 1000 });

  it.each(subject.hyperfocal)('hyperfocal of $focalMm mm at f/$fNumber', (row) => {
    const found = sharp(row.focalMm, row.fNumber, 3000);
    expectClose((found?.hyperfocalM ?? Number.NaN) * 1000, row.mm, row.tolerance, 'hyperfocal');
  });

  it.each(subject.limits)('focused at $focusMm mm', (row) => {
    const found = sharp(50, 8, row.focusMm);
    expectClose((found?.nearM ?? Number.NaN) * 1000, row.nearMm, row.tolerance, 'near');
    if (row.farMm !== null) expectClose((found?.farM ?? Number.NaN) * 1000, row.farMm, row.tolerance, 'far');
  });

  it('focused past the hyperfocal distance everything behind is sharp, and the simple form is near', () => {
    expect(sharp(50, 8, 10467)?.farM).toBeNull();
    const { focusMm, nearMm, farMm, withinPart } = subject.simpleForm;
    const found = sharp(50, 8, focusMm);
    expect(Math.abs(((found?.nearM ?? 0) * 1000) / nearMm - 1)).toBeLessThan(withinPart);
    expect(Math.abs(((found?.farM ?? 0) * 1000) / farMm - 1)).toBeLessThan(withinPart);
  });
});

/** A row of people in line with a bare head: the first of them nearM away, the last widthM farther. */
function spreadAlong(nearM: number, widthM: number): number | undefined {
  const middle: Spot = { x: nearM + widthM / 2, y: 0 };
  const spots = groupSpots({ camera: { x: middle.x, y: 5 }, subject: middle, widthM, count: 7 }) ?? [];
  const light = { x: 0, y: 0 };
  return evenness(
    spots.map((spot) =>
      luxSecondsAt(BARE, { distanceM: distance(light, spot), offAxisDeg: 0, powerStops: 0 }),
    ),
  )?.spreadStops;
}

describe('falloff across a group, point source', () => {
  it('a lamp 2 m from the near edge of a 2 m wide object: 4 to 1', () => {
    const { nearM, widthM, stops, tolerance } = subject.wideObject;
    expectClose(spreadAlong(nearM, widthM) ?? null, stops, tolerance, 'spread');
  });

  it.each(subject.falloff)('from $nearM m over $widthM m: $stops stops', (row) => {
    expectClose(spreadAlong(row.nearM, row.widthM) ?? null, row.stops, row.tolerance, 'spread');
  });
});

describe('soft edges by similar triangles', () => {
  it.each(subject.penumbra)('$what: $mm mm', (row) => {
    const widthM = penumbraM(row.diameterM, row.lightToEdgeM, row.edgeToSurfaceM) ?? Number.NaN;
    expectClose(widthM * 1000, row.mm, row.tolerance, 'penumbra');
    const seen = softness({ diameterM: row.diameterM, distanceM: row.lightToEdgeM, emissionDeg: 0 });
    expectClose(seen?.nosePenumbraMm ?? null, row.mm, row.tolerance, 'nose');
  });

  it('the sun, 32 minutes of arc, over a metre', () => {
    const { angularMinutes, edgeToSurfaceM, mm, tolerance } = subject.sun;
    const farM = 1e6;
    const diameterM = 2 * farM * Math.tan((angularMinutes / 60 / 2) * (Math.PI / 180));
    expectClose((penumbraM(diameterM, farM, edgeToSurfaceM) ?? 0) * 1000, mm, tolerance, 'penumbra');
    const seen = softness({ diameterM, distanceM: farM, emissionDeg: 0 });
    expectClose(seen?.angularDiameterDeg ?? null, angularMinutes / 60, 'exact', 'angular diameter');
  });
});

/** Key through an umbrella and a bare back light, as rows relative to correct at SETTINGS. */
function eveningProblem(keyM: number, backM: number, iso: number): PowerProblem {
  const correct = (250 * SETTINGS.fNumber ** 2) / iso;
  const key = luxSecondsAt(UMBRELLA, { distanceM: keyM, offAxisDeg: 0, powerStops: 0 }) / correct;
  const back = luxSecondsAt(BARE, { distanceM: backM, offAxisDeg: 0, powerStops: 0 }) / correct;
  const single = (name: string, wantedStops: number, perLight: number[]) =>
    ({ name, wantedStops, weight: 1, measure: 'single', rows: [{ perLight, base: 0 }] }) as const;
  return {
    lights: [
      { id: 'K', leastPowerStops: -7, isOff: false },
      { id: 'B', leastPowerStops: -7, isOff: false },
    ],
    targets: [single('subject', 0, [key, 0]), single('rim', 0, [0, back])],
  };
}

const eveningLights = (keyM: number, backM: number, setStops: number) => [
  { id: 'K', job: 'key', setStops, distanceM: keyM, falloff: null } as const,
  { id: 'B', job: 'back', setStops, distanceM: backM, falloff: null } as const,
];

describe('common practice (no published source)', () => {
  it('P3: too bright, the first thing is less power, and ISO is not touched', () => {
    const advice = adviseOnPowers({
      problem: eveningProblem(2.5, 6, 1600),
      exposure: SETTINGS,
      lights: eveningLights(2.5, 6, -3),
      highestIso: 25600,
    });
    expect(advice[0]).toMatchObject({ kind: 'set-power', lightId: 'K', fromStops: -3 });
    expect(advice.every(({ kind }) => kind === 'set-power')).toBe(true);
  });

  it('P4: a key that needs more than 1/16 asks for ISO, and gives the powers that follow', () => {
    const advice = adviseOnPowers({
      problem: eveningProblem(2.5, 6, 200),
      exposure: { iso: 200, fNumber: 2 },
      lights: eveningLights(2.5, 6, -6),
      highestIso: 25600,
    });
    const raise = advice.find((one) => one.kind === 'raise-iso');
    expect(raise).toMatchObject({ because: 'key-above-sixteenth', lightId: 'K' });
    const powers = raise?.after.lights.map(({ powerStops }) => powerStops ?? Number.NaN) ?? [];
    expect(powers).toHaveLength(2);
    expect(powers[0]).toBeLessThanOrEqual(-4 + 1e-9);
    // The next ISO, not more: a third less would still leave the key above 1/16.
    expect(powers[0]).toBeGreaterThan(-4 - 1 / 3);
  });

  /** Head centre of a standing subject, 4 m before a wall; the key stands 45° to the side of the camera axis. */
  const headAt = { x: 10, y: 4, z: 1.65 };
  const landingFrom = (awayM: number, heightM: number) =>
    shadowLanding({
      light: { x: headAt.x + awayM * Math.SQRT1_2, y: headAt.y + awayM * Math.SQRT1_2, z: heightM },
      diameterM: 1,
      head: headAt,
      room: {
        outline: [
          { x: 0, y: 0 },
          { x: 20, y: 0 },
          { x: 20, y: 20 },
          { x: 0, y: 20 },
        ],
        ceilingM: 4,
        blockers: [],
      },
    });

  it.each([
    [2, 2.4],
    [2.5, 2.4],
    [2, 2.6],
    [2.5, 2.6],
    [3, 2.6],
  ])('P8: a key %d m away and %d m high throws the shadow on the floor before the wall', (awayM, heightM) => {
    expect(landingFrom(awayM, heightM)).toMatchObject({ kind: 'lands', surface: { kind: 'floor' } });
  });

  // Plane geometry does not bear the rule out down to 2.2 m: there the shadow reaches the foot of the wall.
  it.each([
    [2, 2.2],
    [2.5, 2.2],
    [3, 2.2],
    [3, 2.4],
  ])('P8: a key %d m away and %d m high throws it on the wall, below the waist', (awayM, heightM) => {
    const landing = landingFrom(awayM, heightM);
    expect(landing).toMatchObject({ kind: 'lands', surface: { kind: 'wall', wall: 0 } });
    if (landing.kind === 'lands') expect(landing.heightM).toBeLessThan(0.7);
  });

  it.each([6, 7, 8])(
    'P10: back light at 1/64 and %d m: a rim over correct, at most 1½ stops over the key',
    (backM) => {
      const keyAt = { distanceM: 2.5, offAxisDeg: 0, powerStops: 0 };
      const key = luxSecondsAt(UMBRELLA, keyAt);
      const { lights } = solvePowers(eveningProblem(2.5, backM, 1600));
      const levels = subjectLevels({
        lights: [
          {
            ...DARK,
            id: 'K',
            job: 'key',
            powerStops: lights[0]?.powerStops ?? null,
            facingLuxSeconds: key,
            keySideLuxSeconds: key,
          },
          {
            ...DARK,
            id: 'B',
            job: 'back',
            powerStops: -6,
            facingLuxSeconds: luxSecondsAt(BARE, { ...keyAt, distanceM: backM }),
          },
        ],
        ambientLux: 0,
        exposure: SETTINGS,
      });
      expect(levels.rimStops).toBeGreaterThan(0);
      expect((levels.rimStops ?? Number.NaN) - (levels.keyStops ?? Number.NaN)).toBeLessThanOrEqual(1.5);
    },
  );

  it('P12: the lead may walk and a stand keeps its exposure; a light on the camera loses 2 stops per doubling', () => {
    const face = { x: 5, y: 4 };
    const fromCamera = (awayM: number, sourceAt: Spot) => {
      const sheet = lightSheet({
        source: BARE,
        mark: {
          spot: sourceAt,
          heightM: 1.6,
          facingDeg: bearingDeg(sourceAt, face) ?? 0,
          tiltDeg: 0,
          powerStops: 0,
        },
        subject: { spot: face, eyeM: 1.6 },
        camera: { spot: { x: 5, y: 4 + awayM }, heightM: 1.6 },
        frame: { focalMm: 50, ...FULL_FRAME, upright: false },
        exposure: SETTINGS,
        ambientEv100: null,
        targetStops: 0,
        returnedLuxSeconds: 0,
        othersLuxSeconds: 0,
      });
      return sheet.kind === 'sheet' ? sheet.keyStops : Number.NaN;
    };
    const stand = { x: 7, y: 6 };
    expect(fromCamera(2, stand) - fromCamera(4, stand)).toBe(0);
    const lost = fromCamera(2, { x: 5, y: 6 }) - fromCamera(4, { x: 5, y: 8 });
    expectClose(lost, 2, 'exact', 'stops lost');
  });

  it('P13: on a full floor a side key is blocked more often than not, and a higher light less often', () => {
    const face = { x: 0, y: 0, z: 1.6 };
    const chance = (z: number, topM: number) =>
      clearFaceChance({ x: 4, y: 0, z }, face, { personsPerM2: 1, topM, bodyRadiusM: BODY_RADIUS_M });
    expect(chance(2, HEAD_HEIGHT_M)).toBeLessThan(0.5);
    expect(chance(2, RAISED_HANDS_M)).toBeLessThan(chance(2, HEAD_HEIGHT_M));
    expect(chance(2.5, HEAD_HEIGHT_M)).toBeGreaterThan(chance(2, HEAD_HEIGHT_M));
    expect(chance(3, HEAD_HEIGHT_M)).toBeGreaterThan(chance(2.5, HEAD_HEIGHT_M));
  });
});
