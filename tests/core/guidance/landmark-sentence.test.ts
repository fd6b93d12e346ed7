import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrap180 } from '../../../core/geometry/angle.ts';
import { outlineOf, type Shape } from '../../../core/geometry/shape.ts';
import { distance, type Spot } from '../../../core/geometry/spot.ts';
import { bearingDeg, turnWords } from '../../../core/guidance/bearing.ts';
import { type Direction, followDirection } from '../../../core/guidance/direction.ts';
import { type Landmark, middleOf } from '../../../core/guidance/landmark.ts';
import { directionTo, sentenceOf } from '../../../core/guidance/landmark-sentence.ts';

const NAMES = [
  'Bar',
  'Cake table',
  'Band',
  'Table 1',
  'Table 2',
  'Pillar',
  'Window',
  'Stairs',
  'Piano',
  'Table 3',
];

const shape: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({
    kind: fc.constant('box' as const),
    widthM: fc.double({ min: 0.4, max: 5, noNaN: true }),
    depthM: fc.double({ min: 0.4, max: 2, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('round' as const), radiusM: fc.double({ min: 0.3, max: 1, noNaN: true }) }),
);
const spot = fc.record({
  x: fc.double({ min: 0, max: 20, noNaN: true }),
  y: fc.double({ min: 0, max: 12, noNaN: true }),
});
const plan: fc.Arbitrary<Landmark[]> = fc
  .array(
    fc.record({ at: spot, turnDeg: fc.double({ min: 0, max: 360, noNaN: true }), shape, tall: fc.boolean() }),
    {
      maxLength: NAMES.length,
    },
  )
  .map((things) =>
    things.map((thing, index) => ({
      id: `l${index}`,
      name: NAMES[index] ?? 'Pillar',
      outline: outlineOf(thing),
      heightM: thing.tall ? 2.5 : 0.75,
      tall: thing.tall,
    })),
  );
const units = fc.constantFrom('metric' as const, 'imperial' as const);
const heading = fc.option(fc.double({ min: 0, max: 360, noNaN: true }));

function byId(landmarks: readonly Landmark[], id: string): Landmark {
  const found = landmarks.find((landmark) => landmark.id === id);
  if (!found) throw new Error(`no landmark ${id}`);
  return found;
}

function thing(id: string, name: string, at: Spot, one: Shape, tall = false): Landmark {
  return { id, name, outline: outlineOf({ at, turnDeg: 0, shape: one }), heightM: 1, tall };
}

const BAR = thing('bar', 'Bar', { x: 17, y: 5 }, { kind: 'box', widthM: 1, depthM: 5 }, true);
const CAKE = thing('cake', 'Cake table', { x: 11, y: 5.5 }, { kind: 'round', radiusM: 0.5 });
const BAND = thing('band', 'Band', { x: 10, y: 0.5 }, { kind: 'box', widthM: 4, depthM: 1 }, true);

describe('directions', () => {
  it('who follows the rounded words lands within half a metre, whatever the form', () => {
    fc.assert(
      fc.property(spot, spot, plan, heading, units, (from, to, landmarks, headingDeg, unit) => {
        const direction = directionTo({ from, to, landmarks, headingDeg, stepM: 0.65, units: unit });
        const end = followDirection(direction, from, landmarks, headingDeg);
        if (!end) throw new Error('the words lead nowhere');
        expect(distance(end, to)).toBeLessThanOrEqual(0.5);
      }),
      { numRuns: 2000 },
    );
  });

  it('arrow and words agree: what one walks toward lies within 20° of the arrow', () => {
    fc.assert(
      fc.property(spot, spot, plan, units, (from, to, landmarks, unit) => {
        const direction = directionTo({ from, to, landmarks, headingDeg: 0, stepM: 0.65, units: unit });
        const arrow = bearingDeg(from, to);
        if (arrow === null) return;
        if (direction.form === 'toward-stop-short' || direction.form === 'toward-distance') {
          const toward = bearingDeg(from, middleOf(byId(landmarks, direction.toward.id))) ?? Number.NaN;
          expect(Math.abs(wrap180(toward - arrow))).toBeLessThanOrEqual(20 + 1e-6);
        }
        if (direction.form === 'turn-distance') {
          expect(direction.turnDeg).toBeCloseTo(wrap180(arrow), 9);
          expect(sentenceOf(direction, unit, 0.65).text.toLowerCase()).toContain(
            turnWords(arrow).split('-')[0] ?? '',
          );
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('a stop landmark is near the mark, and the way to it does not lead through the one walked toward', () => {
    fc.assert(
      fc.property(spot, spot, plan, units, (from, to, landmarks, unit) => {
        const direction = directionTo({ from, to, landmarks, headingDeg: null, stepM: 0.65, units: unit });
        if (direction.form !== 'toward-stop-short') return;
        expect(direction.shortM).toBeLessThanOrEqual(2.75);
        const toward = middleOf(byId(landmarks, direction.toward.id));
        expect(distance(from, toward)).toBeGreaterThanOrEqual(distance(from, to) - 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it('a whole venue, spot by spot: every form is used', () => {
    const tables = [4, 8, 12].flatMap((x, row) =>
      [9, 5.5].map((y, column) =>
        thing(`t${row}${column}`, `Table ${row * 2 + column + 1}`, { x, y }, { kind: 'round', radiusM: 0.9 }),
      ),
    );
    const walls = [
      thing('garden', 'Garden door', { x: 5, y: 12 }, { kind: 'box', widthM: 2, depthM: 0.1 }, true),
      thing('kitchen', 'Kitchen door', { x: 19.5, y: 11 }, { kind: 'box', widthM: 0.1, depthM: 1.2 }, true),
      thing('window', 'Big window', { x: 0, y: 7 }, { kind: 'box', widthM: 0.1, depthM: 3 }, true),
    ];
    const landmarks = [BAR, CAKE, BAND, ...walls, ...tables];
    const forms = new Set<Direction['form']>();
    const spots = Array.from({ length: 60 }, (_, index) => ({
      x: 0.7 + 1.9 * (index % 10),
      y: 0.6 + 2.1 * Math.floor(index / 10),
    }));
    for (const from of spots) {
      for (const to of spots) {
        const { form } = directionTo({ from, to, landmarks, headingDeg: null, stepM: 0.65, units: 'metric' });
        forms.add(form);
      }
    }
    const all = ['from-toward', 'here', 'toward-distance', 'toward-stop-short', 'turn-distance'];
    expect([...forms].sort()).toEqual(all);
  });

  const base = { from: { x: 3, y: 5 }, headingDeg: 0, stepM: 0.65, units: 'metric' as const };

  it('prefers one to walk toward and one to stop at', () => {
    const direction = directionTo({ ...base, to: { x: 9.5, y: 5 }, landmarks: [CAKE, BAR, BAND] });
    expect(direction).toMatchObject({
      form: 'toward-stop-short',
      toward: { id: 'bar' },
      stopAt: { id: 'cake' },
      shortM: 1,
    });
    expect(sentenceOf(direction, 'metric', 0.65)).toEqual({
      lead: 'Toward the bar',
      text: 'Toward the bar, stop 1 m short of the cake table',
    });
    expect(sentenceOf(direction, 'imperial', 0.65).text).toBe(
      'Toward the bar, stop 3.5 ft short of the cake table',
    );
  });

  it('speaks whole feet to people who think in feet', () => {
    const direction = directionTo({
      ...base,
      units: 'imperial',
      to: { x: 9.5, y: 5 },
      landmarks: [CAKE, BAR],
    });
    expect(sentenceOf(direction, 'imperial', 0.65).text).toMatch(/stop \d+ ft short of the cake table$/);
  });

  it('else from one toward another, else so far toward one, else turn and distance', () => {
    const beside = directionTo({ ...base, to: { x: 10.8, y: 3.6 }, landmarks: [CAKE, BAND] });
    expect(beside).toMatchObject({
      form: 'from-toward',
      from: { id: 'cake' },
      toward: { id: 'band' },
      distanceM: 1.5,
    });
    expect(sentenceOf(beside, 'metric', 0.65).text).toBe('From the cake table, 1.5 m toward the band');
    const along = directionTo({ ...base, to: { x: 9.5, y: 5 }, landmarks: [BAR] });
    expect(sentenceOf(along, 'metric', 0.65).text).toBe('Toward the bar, 6.5 m (≈ 10 steps)');
    const alone = directionTo({ ...base, to: { x: 6, y: 1 }, landmarks: [] });
    expect(sentenceOf(alone, 'metric', 0.65)).toEqual({
      lead: 'Ahead to your right',
      text: 'Ahead to your right, 5 m (≈ 8 steps)',
    });
    const lost = directionTo({ ...base, headingDeg: null, to: { x: 6, y: 1 }, landmarks: [] });
    expect(sentenceOf(lost, 'metric', 0.65).text).toBe('Follow the arrow, 5 m (≈ 8 steps)');
    expect(directionTo({ ...base, to: { x: 3.1, y: 5 }, landmarks: [BAR] })).toEqual({ form: 'here' });
  });

  it('steers by what lies within 20° of the way, not by what lies beyond', () => {
    const formAt = (offDeg: number) => {
      const turn = (offDeg * Math.PI) / 180;
      const far = { x: base.from.x + 9 * Math.cos(turn), y: base.from.y + 9 * Math.sin(turn) };
      const pillar = thing('p', 'Pillar', far, { kind: 'round', radiusM: 0.3 }, true);
      return directionTo({ ...base, to: { x: base.from.x + 1.2, y: base.from.y }, landmarks: [pillar] }).form;
    };
    expect([formAt(19.5), formAt(20.5)]).toEqual(['toward-distance', 'turn-distance']);
  });

  it('does not steer by a low thing across the room', () => {
    const farCake = { ...CAKE, outline: CAKE.outline.map(({ x, y }) => ({ x: x + 6, y })) };
    const direction = directionTo({ ...base, to: { x: 9.5, y: 5.2 }, landmarks: [farCake] });
    expect(direction.form).toBe('turn-distance');
    const tall = directionTo({ ...base, to: { x: 9.5, y: 5.2 }, landmarks: [{ ...farCake, tall: true }] });
    expect(tall.form).toBe('toward-distance');
  });

  it('words that name something unknown lead nowhere', () => {
    const direction: Direction = {
      form: 'toward-distance',
      toward: { id: 'gone', name: 'Gone' },
      distanceM: 3,
    };
    expect(followDirection(direction, base.from, [BAR], null)).toBeNull();
    const stop: Direction = {
      form: 'toward-stop-short',
      toward: BAR,
      stopAt: { id: 'gone', name: 'Gone' },
      shortM: 1,
    };
    expect(followDirection(stop, base.from, [BAR], null)).toBeNull();
  });

  it('at a landmark, and beside it, is said without a nought', () => {
    const at: Direction = { form: 'toward-stop-short', toward: BAR, stopAt: BAR, shortM: 0 };
    expect(sentenceOf(at, 'metric', 0.65).text).toBe('Toward the bar, stop at it');
    const beside: Direction = { form: 'from-toward', from: CAKE, toward: BAR, distanceM: 0 };
    expect(sentenceOf(beside, 'metric', 0.65).text).toBe('At the cake table, on the side toward the bar');
  });
});
