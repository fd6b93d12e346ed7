import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrap180 } from '../../../core/geometry/angle.ts';
import { cameraFrame } from '../../../core/geometry/camera-frame.ts';
import { add, distance, dot, rotate, scale, subtract } from '../../../core/geometry/spot.ts';
import { bearingDeg, clockHour, turnDeg, turnWords } from '../../../core/guidance/bearing.ts';
import { inOwnSense, nudgeSpot } from '../../../core/guidance/camera-sense.ts';
import { spokenName } from '../../../core/guidance/landmark.ts';
import { COUPLE_ID, facings } from '../../../core/guidance/stance.ts';
import { DEFAULT_STEP_M, distanceWords, stepFromHeight, stepsFor } from '../../../core/guidance/steps.ts';

const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
const spot = fc.record({ x: coordinate, y: coordinate });
const angle = fc.double({ min: -720, max: 720, noNaN: true });

describe('bearings', () => {
  it('walking a bearing leads to the spot', () => {
    fc.assert(
      fc.property(spot, spot, (from, to) => {
        fc.pre(distance(from, to) > 1e-3);
        const bearing = bearingDeg(from, to) ?? Number.NaN;
        const end = add(from, rotate({ x: 0, y: -distance(from, to) }, bearing));
        expect(distance(end, to)).toBeLessThan(1e-6);
      }),
    );
    expect(bearingDeg({ x: 1, y: 1 }, { x: 1, y: 1 })).toBeNull();
  });

  it('turning by the turn ends at the bearing, never by more than half way round', () => {
    fc.assert(
      fc.property(angle, angle, (headingDeg, towardDeg) => {
        const turn = turnDeg(headingDeg, towardDeg);
        expect(turn > -180 && turn <= 180).toBe(true);
        expect(Math.abs(wrap180(headingDeg + turn - towardDeg))).toBeLessThan(1e-6);
      }),
    );
  });

  it('hours and words lie within half their sector of the turn', () => {
    const words = [
      'ahead',
      'ahead-right',
      'right',
      'behind-right',
      'behind',
      'behind-left',
      'left',
      'ahead-left',
    ];
    fc.assert(
      fc.property(angle, (turn) => {
        expect(Math.abs(wrap180(clockHour(turn) * 30 - turn))).toBeLessThanOrEqual(15 + 1e-6);
        expect(Math.abs(wrap180(words.indexOf(turnWords(turn)) * 45 - turn))).toBeLessThanOrEqual(
          22.5 + 1e-6,
        );
      }),
    );
  });

  it('half-way goes clockwise', () => {
    expect([turnWords(22.5), turnWords(-22.5)]).toEqual(['ahead-right', 'ahead']);
    expect([clockHour(15), clockHour(-15)]).toEqual([1, 12]);
  });

  it('an hour is kept until the turn is three degrees past its edge', () => {
    expect([
      clockHour(17, 12),
      clockHour(18.1, 12),
      clockHour(-17.9, 12),
      clockHour(13, 1),
      clockHour(11.9, 1),
    ]).toEqual([12, 1, 12, 1, 12]);
  });
});

describe('steps and distances', () => {
  it('counts whole steps, at least one, and none for no way', () => {
    expect([stepsFor(0, 0.65), stepsFor(0.1, 0.65), stepsFor(5, 0), stepsFor(5, Number.NaN)]).toEqual([
      0, 1, 8, 8,
    ]);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0.4, max: 1, noNaN: true }),
        (distanceM, stepM) => {
          expect(Math.abs(stepsFor(distanceM, stepM) * stepM - distanceM)).toBeLessThanOrEqual(
            stepM / 2 + 1e-9,
          );
        },
      ),
    );
  });

  it.each([
    [0.3, 'metric', "arm's length", null],
    [0.9, 'metric', 'one step', null],
    [0.71, 'metric', 'one step', null],
    [0.69, 'metric', "arm's length", null],
    [1.01, 'metric', '1 m', null],
    [1.5, 'metric', '1.5 m', null],
    [1.99, 'metric', '2 m', null],
    [2.01, 'metric', '2 m', '≈ 3 steps'],
    [5, 'metric', '5 m', '≈ 8 steps'],
    [5, 'imperial', '16 ft', '≈ 8 steps'],
  ] as const)('%d m (%s) reads %s, %s', (distanceM, units, main, steps) => {
    expect(distanceWords(distanceM, DEFAULT_STEP_M, units)).toEqual({ main, steps });
  });

  it('a body without a height has the default step', () => {
    expect(stepFromHeight(0)).toBe(DEFAULT_STEP_M);
    expect(stepFromHeight(1.7)).toBeCloseTo(0.414 * 1.7, 9);
  });
});

describe('nudges', () => {
  it('four ways cancel in pairs and follow the camera, not the plan', () => {
    fc.assert(
      fc.property(
        spot,
        spot,
        spot,
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (at, camera, subject, byM) => {
          fc.pre(distance(camera, subject) > 0.1);
          const go = (from: typeof at, way: 'camera-left' | 'camera-right' | 'nearer' | 'farther') =>
            nudgeSpot({ spot: from, camera, subject, way, byM }) ?? { x: Number.NaN, y: 0 };
          expect(distance(go(go(at, 'camera-left'), 'camera-right'), at)).toBeLessThan(1e-9);
          expect(distance(go(go(at, 'nearer'), 'farther'), at)).toBeLessThan(1e-9);
          const frame = cameraFrame(camera, subject);
          if (!frame) throw new Error('no frame');
          expect(dot(subtract(go(at, 'camera-left'), at), frame.right)).toBeCloseTo(-byM, 6);
          expect(dot(subtract(go(at, 'nearer'), at), frame.farther)).toBeCloseTo(-byM, 6);
        },
      ),
    );
    const one = { x: 1, y: 1 };
    expect(nudgeSpot({ spot: one, camera: one, subject: one, way: 'nearer', byM: 1 })).toBeNull();
  });

  it('camera-left is the right hand of a carrier who faces the camera', () => {
    fc.assert(
      fc.property(spot, spot, (camera, subject) => {
        fc.pre(distance(camera, subject) > 0.1);
        const toSpot = nudgeSpot({ spot: subject, camera, subject, way: 'camera-left', byM: 0.5 });
        const headingDeg = bearingDeg(subject, camera);
        if (!toSpot || headingDeg === null) throw new Error('no nudge');
        const felt = inOwnSense({ fromSpot: subject, toSpot, headingDeg });
        expect(felt).toMatchObject({ turn: 'right', words: 'to your right' });
        expect(felt?.distanceM).toBeCloseTo(0.5, 6);
        expect(inOwnSense({ fromSpot: subject, toSpot, headingDeg: headingDeg + 180 })).toMatchObject({
          turn: 'left',
        });
      }),
    );
    expect(inOwnSense({ fromSpot: { x: 1, y: 1 }, toSpot: { x: 1, y: 1 }, headingDeg: 0 })).toBeNull();
  });
});

describe('names and stance', () => {
  it.each([
    ['Bar', 'the bar'],
    ['Table 4', 'table 4'],
    ['DJ', 'the DJ'],
    ['the cake', 'the cake'],
    ['Pillar B', 'pillar B'],
    ['Cake table', 'the cake table'],
  ])('%s is spoken as %s', (name, spoken) => {
    expect(spokenName(name)).toBe(spoken);
  });

  const landmark = fc.record({
    id: fc.uuid(),
    name: fc.constant('Pillar'),
    outline: spot.map((at) => [at, add(at, { x: 1, y: 0 }), add(at, { x: 0, y: 1 })]),
    heightM: fc.constant(2),
    tall: fc.boolean(),
  });

  it('offers up to five things well apart, the couple first, each where it is', () => {
    fc.assert(
      fc.property(spot, spot, fc.array(landmark, { maxLength: 12 }), (at, subject, landmarks) => {
        fc.pre(distance(at, subject) > 0.1);
        const list = facings({ at, landmarks, subject });
        expect(list.length).toBeLessThanOrEqual(5);
        expect(list[0]).toMatchObject({ id: COUPLE_ID, bearingDeg: bearingDeg(at, subject) });
        for (const [i, one] of list.entries()) {
          for (const other of list.slice(i + 1)) {
            expect(Math.abs(wrap180(one.bearingDeg - other.bearingDeg))).toBeGreaterThanOrEqual(25);
          }
        }
        // Nothing that would still fit was left out.
        if (list.length < 5) {
          for (const { outline } of landmarks) {
            const [a, b, c] = outline;
            if (!a || !b || !c) throw new Error('a triangle has three corners');
            const bearing = bearingDeg(at, scale(add(add(a, b), c), 1 / 3)) ?? 0;
            const near = list.some((one) => Math.abs(wrap180(one.bearingDeg - bearing)) < 25 + 1e-6);
            expect(near || distance(at, a) < 1.5).toBe(true);
          }
        }
      }),
    );
  });

  it('two things 25° apart can be told apart, nearer ones not', () => {
    const pair = (apartDeg: number) =>
      facings({
        at: { x: 0, y: 0 },
        landmarks: [0, apartDeg].map((turn) => {
          const middle = rotate({ x: 0, y: -8 }, turn);
          const outline = [0, 120, 240].map((corner) => add(middle, rotate({ x: 0.3, y: 0 }, corner)));
          return { id: `${turn}`, name: 'Pillar', outline, heightM: 2, tall: true };
        }),
        subject: null,
      }).length;
    expect([pair(25.5), pair(24.5)]).toEqual([2, 1]);
  });

  it('stops at five, however many there are', () => {
    const ring = Array.from({ length: 12 }, (_, index) => {
      const at = rotate({ x: 0, y: -8 }, index * 30);
      const outline = [at, add(at, { x: 0.2, y: 0 }), add(at, { x: 0, y: 0.2 })];
      return { id: `r${index}`, name: 'Pillar', outline, heightM: 2, tall: true };
    });
    expect(facings({ at: { x: 0, y: 0 }, landmarks: ring, subject: null })).toHaveLength(5);
  });

  it('without a couple, tall things come first', () => {
    const thing = (id: string, x: number, tall: boolean) => ({
      id,
      name: id,
      outline: [
        { x, y: 1 },
        { x: x + 1, y: 1 },
        { x, y: 2 },
      ],
      heightM: 1,
      tall,
    });
    const list = facings({
      at: { x: 0, y: 0 },
      landmarks: [thing('low', 2, false), thing('tall', -9, true)],
      subject: null,
    });
    expect(list.map((one) => one.id)).toEqual(['tall', 'low']);
  });
});
