import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dot3, length3, pointing, unit3, type Vec3 } from '../../../core/geometry/vec3.ts';
import { edgeAngleDeg, intensityToward } from '../../../core/light/flash-head.ts';
import { bareLamp } from '../../../core/light/lamps/bare-lamp.ts';
import { cardLamp } from '../../../core/light/lamps/card-lamp.ts';
import { discLamp } from '../../../core/light/lamps/disc-lamp.ts';
import { lambertLobe, lobeOf } from '../../../core/light/lamps/lobe.ts';
import { sumLamp } from '../../../core/light/lamps/sum-lamp.ts';
import { umbrellaLamp } from '../../../core/light/lamps/umbrella-lamp.ts';
import { forwardFlux, luxSecondsAt } from '../../../core/light/umbrella.ts';
import { along, card, direction, facingDeg, head, onAt, place, tiltDeg, umbrella } from './lamp-inputs.ts';

const HEAD = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
const UMBRELLA = { diameterM: 1, forwardFraction: 0.5 };
const ORIGIN = { x: 0, y: 0, z: 0 };

function cross(a: Vec3, b: Vec3): Vec3 {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

function angleDeg(a: Vec3, b: Vec3): number {
  return (Math.atan2(length3(cross(a, b)), dot3(a, b)) * 180) / Math.PI;
}

describe('lamp and light sheet', () => {
  it('give the same light at any place, near, far, in front and behind', () => {
    const cloth = fc.option(umbrella);
    const distance = fc.double({ min: 0.02, max: 40, noNaN: true });
    fc.assert(
      fc.property(head, cloth, place, facingDeg, tiltDeg, direction, distance, (...given) => {
        const [one, over, at, facing, tilt, way, distanceM] = given;
        const lamp = over ? umbrellaLamp(one, over, at, facing, tilt) : bareLamp(one, at, facing, tilt);
        const spot = along(at, way, distanceM);
        const offAxisDeg = angleDeg(pointing(facing, tilt), way);
        // At 90° one of the two is on either side of the horizon by rounding.
        fc.pre(Math.abs(offAxisDeg - 90) > 1e-6);
        const sheet = luxSecondsAt({ head: one, umbrella: over }, { distanceM, offAxisDeg, powerStops: 0 });
        const away = Math.abs(lamp.toward(spot.x, spot.y, spot.z) - sheet);
        expect(away).toBeLessThanOrEqual(1e-6 * sheet + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('every lamp', () => {
  const lamps = fc.oneof(
    fc.tuple(head, place, facingDeg, tiltDeg).map((given) => bareLamp(...given)),
    fc.tuple(head, umbrella, place, facingDeg, tiltDeg).map((given) => umbrellaLamp(...given)),
    fc.tuple(head, card, place, facingDeg, tiltDeg).map((given) => cardLamp(...given)),
  );

  it('falls with the inverse square far away', () => {
    fc.assert(
      fc.property(lamps, direction, (lamp, way) => {
        const level = (byM: number) => {
          const spot = along(lamp, way, byM);
          return lamp.toward(spot.x, spot.y, spot.z);
        };
        expect(Math.abs(level(2000) * 4 - level(1000))).toBeLessThanOrEqual(1e-5 * level(1000) + 1e-12);
      }),
    );
  });

  it('on an element that faces it far away it does what it does toward it, on one that looks away nothing', () => {
    fc.assert(
      fc.property(lamps, direction, (lamp, way) => {
        const spot = along(lamp, way, 50);
        const faces = { x: -way.x, y: -way.y, z: -way.z };
        const toward = lamp.toward(spot.x, spot.y, spot.z);
        expect(Math.abs(onAt(lamp, spot, faces) - toward)).toBeLessThanOrEqual(1e-9 * toward + 1e-12);
        expect(onAt(lamp, spot, way)).toBe(0);
      }),
    );
  });

  it('gives a number that is not below zero anywhere, its own centre and the horizon included', () => {
    const anywhere = fc.record({
      x: fc.double({ noNaN: true, noDefaultInfinity: true }),
      y: fc.double({ noNaN: true, noDefaultInfinity: true }),
      z: fc.double({ noNaN: true, noDefaultInfinity: true }),
    });
    fc.assert(
      fc.property(lamps, fc.oneof(place, anywhere, fc.constant(null)), direction, (lamp, spot, normal) => {
        const at = spot ?? { x: lamp.x, y: lamp.y, z: lamp.z };
        for (const light of [lamp.toward(at.x, at.y, at.z), onAt(lamp, at, normal)]) {
          expect(Number.isFinite(light)).toBe(true);
          expect(light).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
});

describe('bare lamp', () => {
  it('is the same all round its axis, and dark behind', () => {
    fc.assert(
      fc.property(
        head,
        facingDeg,
        tiltDeg,
        fc.double({ min: 0, max: 89, noNaN: true }),
        (one, facing, tilt, off) => {
          const lamp = bareLamp(one, ORIGIN, facing, tilt);
          // Up and sideways from the axis: four ways that are equally far off it.
          const aside = pointing(facing + 90, 0);
          const axis = pointing(facing, tilt);
          const over = pointing(facing, tilt - 90);
          const [cosine, sine] = [Math.cos((off * Math.PI) / 180), Math.sin((off * Math.PI) / 180)];
          const expected = intensityToward(one, off) / 16;
          for (const [other, sign] of [
            [aside, 1],
            [aside, -1],
            [over, 1],
            [over, -1],
          ] as const) {
            const way = {
              x: axis.x * cosine + sign * other.x * sine,
              y: axis.y * cosine + sign * other.y * sine,
              z: axis.z * cosine + sign * other.z * sine,
            };
            const spot = along(ORIGIN, way, 4);
            expect(Math.abs(lamp.toward(spot.x, spot.y, spot.z) - expected)).toBeLessThanOrEqual(1e-6);
            expect(lamp.toward(-spot.x, -spot.y, -spot.z)).toBe(0);
          }
        },
      ),
    );
  });

  it('throws the corner of its coverage one stop down, and a slanted wall by the cosine', () => {
    const lamp = bareLamp(HEAD, ORIGIN, 0, 0);
    const edge = (edgeAngleDeg(35) * Math.PI) / 180;
    const level = lamp.toward(0, -3, 0);
    expect(level).toBeCloseTo(360, 9);
    expect(lamp.toward(3 * Math.sin(edge), -3 * Math.cos(edge), 0)).toBeCloseTo(180, 6);
    expect(lamp.on(0, -3, 0, 0, 0.5, Math.sqrt(0.75))).toBeCloseTo(180, 6);
  });
});

describe('disc lamp', () => {
  const upTo = (max: number) => fc.integer({ min: 0, max });

  /** The direction that lies so far off an axis, on the side that a turn about it says. */
  function around(axis: Vec3, offDeg: number, turnedDeg: number): Vec3 {
    const helper = Math.abs(axis.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
    const side = unit3(cross(axis, helper)) ?? ORIGIN;
    const over = cross(side, axis);
    const [off, turn] = [(offDeg * Math.PI) / 180, (turnedDeg * Math.PI) / 180];
    const aside = along(along(ORIGIN, side, Math.cos(turn)), over, Math.sin(turn));
    return along(along(ORIGIN, axis, Math.cos(off)), aside, Math.sin(off));
  }

  /** Light on an element from a disc about the origin that shines down the plan: the plain sum over its area. */
  function pieceByPiece(radiusM: number, at: Vec3, normal: Vec3): number {
    const rings = 120;
    let sum = 0;
    for (let i = 0; i < rings; i += 1) {
      for (let j = 0; j < rings; j += 1) {
        const r = (radiusM * (i + 0.5)) / rings;
        const turn = (2 * Math.PI * (j + 0.5)) / rings;
        const way = { x: r * Math.cos(turn) - at.x, y: -at.y, z: r * Math.sin(turn) - at.z };
        const square = way.x ** 2 + way.y ** 2 + way.z ** 2;
        const lands = normal.x * way.x + normal.y * way.y + normal.z * way.z;
        const leaves = at.y;
        sum += (Math.max(0, lands) * Math.max(0, leaves) * r) / (square * square);
      }
    }
    // Of an intensity of 1 cd·s each piece has its share of the area πR².
    return (sum * (radiusM / rings) * ((2 * Math.PI) / rings)) / (Math.PI * radiusM * radiusM);
  }

  it('agrees with adding up its pieces, whichever way the element looks', () => {
    const lobe = lambertLobe(Math.PI);
    fc.assert(
      // Whole degrees and tenths: even over the range, where doubles crowd at its ends.
      fc.property(
        upTo(70),
        upTo(359),
        upTo(35),
        upTo(359),
        upTo(12),
        (off, turn, slant, slantTurn, tenths) => {
          const radiusM = 0.5;
          const at = along(ORIGIN, around({ x: 0, y: 1, z: 0 }, off, turn), 0.8 + tenths / 10);
          const back = unit3({ x: -at.x, y: -at.y, z: -at.z }) ?? ORIGIN;
          const normal = around(back, slant, slantTurn);
          // The form is exact where the element sees the whole disc: it stands before its plane, rim and all.
          const middle = -(normal.x * at.x + normal.y * at.y + normal.z * at.z);
          fc.pre(middle > radiusM * Math.sqrt(1 - normal.y ** 2) + 0.01);
          const lamp = discLamp({ at: ORIGIN, axis: { x: 0, y: 1, z: 0 }, radiusM, front: lobe });
          expect(onAt(lamp, at, normal) / pieceByPiece(radiusM, at, normal)).toBeCloseTo(1, 2);
        },
      ),
    );
  });

  it('is dark behind, and as bright on either side as its lobes', () => {
    const front = lobeOf(100, 1e4);
    const one = { at: ORIGIN, axis: { x: 0, y: 1, z: 0 }, radiusM: 0.4, front };
    expect(discLamp(one).toward(0.3, -2, 0)).toBe(0);
    const both = discLamp({ ...one, back: lobeOf(25, 1e4) });
    expect(both.toward(0.3, 2, 0) / both.toward(0.3, -2, 0)).toBeCloseTo(4, 9);
    expect(both.toward(0.3, 0, 0)).toBe(0);
  });
});

describe('lobes', () => {
  it('hold the light that they say: the plain sum over a hemisphere', () => {
    const intensity = fc.double({ min: 1, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(intensity, intensity, (axis, most) => {
        const { exponent, flux } = lobeOf(axis, most);
        let sum = 0;
        const rings = 4000;
        for (let i = 0; i < rings; i += 1) {
          // By cos φ, so that narrow lobes and wide ones are summed alike.
          const from = (i / rings) ** (1 / (exponent + 1));
          const to = ((i + 1) / rings) ** (1 / (exponent + 1));
          sum += ((from + to) / 2) ** exponent * (to - from);
        }
        expect((2 * Math.PI * axis * sum) / flux).toBeCloseTo(1, 3);
        expect(flux).toBeLessThanOrEqual(most * (1 + 1e-12));
        if (Math.PI * axis < most) expect([exponent, flux]).toEqual([1, Math.PI * axis]);
        else expect(flux).toBe(most);
      }),
      { numRuns: 50 },
    );
    expect(lobeOf(0, 10).flux + lobeOf(10, 0).intensity + lambertLobe(-1).flux).toBe(0);
  });
});

describe('umbrella lamp', () => {
  const axisLevel = (lossStops: number | undefined, distanceM: number) =>
    umbrellaLamp(HEAD, { ...UMBRELLA, lossStops }, ORIGIN, 180, 0).toward(0, distanceM, 0);

  it('on its axis keeps the near-field law, with a measured loss too', () => {
    for (const lossStops of [undefined, 1, 2, 5]) {
      const point = axisLevel(lossStops, 1e4) * 1e8;
      expect((axisLevel(lossStops, 1) * (1 + 0.25)) / point).toBeCloseTo(1, 6);
    }
    expect(axisLevel(1, 1e4) * 1e8).toBeCloseTo(3240 / 2, 3);
  });

  it('brighter on the axis than a Lambertian disc can be, it is dimmer aside', () => {
    const at = (lossStops: number | undefined, offDeg: number) => {
      const off = (offDeg * Math.PI) / 180;
      return umbrellaLamp(HEAD, { ...UMBRELLA, lossStops }, ORIGIN, 180, 0).toward(
        3 * Math.sin(off),
        3 * Math.cos(off),
        0,
      );
    };
    expect(at(2, 0)).toBeGreaterThan(at(undefined, 0));
    expect(at(2, 70)).toBeLessThan(at(undefined, 70));
    const dim = { ...UMBRELLA, lossStops: 5 };
    expect(forwardFlux({ head: HEAD, umbrella: dim })).toBeCloseTo((Math.PI * 3240) / 32, 6);
    expect(at(5, 60) / at(5, 0)).toBeCloseTo(at(undefined, 60) / at(undefined, 0), 9);
  });

  it('without size is the head bare', () => {
    const lamp = umbrellaLamp(HEAD, { ...UMBRELLA, diameterM: 0 }, ORIGIN, 0, 0);
    expect(lamp.radiusM).toBe(0);
    expect(lamp.toward(0, -6, 0)).toBeCloseTo(90, 9);
  });
});

describe('two lamps as one', () => {
  it('add their light', () => {
    const [near, other] = [
      bareLamp(HEAD, ORIGIN, 0, 0),
      umbrellaLamp(HEAD, UMBRELLA, { x: 1, y: 0, z: 0 }, 0, 0),
    ];
    const both = sumLamp(near, other);
    expect(both.toward(0, -4, 0)).toBeCloseTo(near.toward(0, -4, 0) + other.toward(0, -4, 0), 9);
    expect(both).toMatchObject({ x: 0, y: 0, z: 0, radiusM: 0.5, flux: near.flux + other.flux });
  });
});
