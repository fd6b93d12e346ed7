import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrap180 } from '../../../core/geometry/angle.ts';
import { add, distance, rotate, type Spot } from '../../../core/geometry/spot.ts';
import { bearingDeg } from '../../../core/guidance/bearing.ts';
import { followDirection } from '../../../core/guidance/direction.ts';
import {
  type DirectionAlong,
  directionAlong,
  sentenceAlong,
} from '../../../core/guidance/direction-along.ts';
import { directionTo, sentenceOf } from '../../../core/guidance/landmark-sentence.ts';
import { createWays, firstLeg, type Way } from '../../../core/guidance/way-around.ts';
import { box, furnished, inRoom, round } from './way-plans.ts';

const HALL = [
  { x: 0, y: 0 },
  { x: 20, y: 0 },
  { x: 20, y: 12 },
  { x: 0, y: 12 },
];
const base = { headingDeg: null, stepM: 0.65, units: 'metric' as const };

/** Walks as the phone leads: each leg by its arrow (bearing and length), the last by the words. */
function walked(
  way: Way,
  told: DirectionAlong,
  landmarks: Parameters<typeof followDirection>[2],
): Spot | null {
  let at = way.legs[0] ?? told.from;
  for (let rest = way.legs; rest[0] !== told.from; rest = rest.slice(1)) {
    const arrow = firstLeg({ ...way, legs: rest });
    at = add(at, rotate({ x: 0, y: -arrow.lengthM }, arrow.bearingDeg ?? 0));
  }
  return followDirection(told.direction, at, landmarks, told.headingDeg);
}

describe('directions along a way', () => {
  it('who follows the arrow leg by leg, and from the last bend the words, lands within half a metre', () => {
    fc.assert(
      fc.property(
        furnished,
        inRoom,
        inRoom,
        fc.constantFrom('metric' as const, 'imperial' as const),
        fc.option(fc.double({ min: 0, max: 360, noNaN: true })),
        (plan, from, to, units, headingDeg) => {
          const way = createWays(plan).find(from, to);
          if (way.kind === 'none') return;
          const input = { ...base, from, to, landmarks: plan.landmarks, units, headingDeg };
          const told = directionAlong(way, input);
          const end = walked(way, told, plan.landmarks);
          if (!end) throw new Error('the words lead nowhere');
          expect(distance(end, to)).toBeLessThanOrEqual(0.5);
          if (way.legs.length === 2) expect(told.direction).toEqual(directionTo(input));
        },
      ),
      { numRuns: 600, endOnFailure: true },
    );
  }, 60_000);

  it('names what the way goes round, each once in a row, and never leads back toward the last', () => {
    fc.assert(
      fc.property(furnished, inRoom, inRoom, (plan, from, to) => {
        const way = createWays(plan).find(from, to);
        if (way.kind === 'none') return;
        const told = directionAlong(way, { ...base, from, to, landmarks: plan.landmarks });
        const { round: things, direction } = told;
        if ('toward' in direction) expect(direction.toward.id).not.toBe(things.at(-1)?.id);
        const bent = way.bends.flatMap((bend) => (bend.round ? [bend.round.id] : []));
        expect(new Set(things.map(({ id }) => id))).toEqual(new Set(bent));
        for (const [index, { id }] of things.entries()) expect(id).not.toBe(things[index + 1]?.id);
      }),
      { numRuns: 200, endOnFailure: true },
    );
  }, 60_000);

  const bar = box('bar', 'Bar', { x: 19, y: 6 }, 1, 4, true);

  it('leads round the cake table, and then as from there', () => {
    const landmarks = [round('cake', 'Cake table', { x: 12, y: 6 }, 1), bar];
    const [from, to] = [
      { x: 9, y: 6 },
      { x: 17.5, y: 6 },
    ];
    const way = createWays({ outline: HALL, obstacles: landmarks }).find(from, to);
    if (way.kind === 'none') throw new Error(way.reason);
    const told = directionAlong(way, { ...base, from, to, landmarks });
    expect(sentenceAlong(told, 'metric', 0.65)).toEqual({
      lead: 'Round the cake table',
      text: 'Round the cake table, then toward the bar, stop 1 m short of it',
    });
    expect(sentenceAlong(told, 'imperial', 0.65).text).toMatch(
      /^Round the cake table, then toward the bar, stop \d/,
    );
  });

  it('a straight way is told as ever', () => {
    const [from, to] = [
      { x: 9, y: 6 },
      { x: 17.5, y: 6 },
    ];
    const way = createWays({ outline: HALL, obstacles: [bar] }).find(from, to);
    if (way.kind === 'none') throw new Error(way.reason);
    const told = directionAlong(way, { ...base, from, to, landmarks: [bar] });
    expect(told).toMatchObject({ round: [], from });
    expect(sentenceAlong(told, 'metric', 0.65)).toEqual(sentenceOf(told.direction, 'metric', 0.65));
  });

  it('turns from the leg that led to the last bend where there is no landmark', () => {
    const screen = box('s', 'Screen', { x: 10, y: 4 }, 0.2, 8);
    const [from, to] = [
      { x: 8, y: 2 },
      { x: 12, y: 2 },
    ];
    const way = createWays({ outline: HALL, obstacles: [screen] }).find(from, to);
    if (way.kind === 'none') throw new Error(way.reason);
    const told = directionAlong(way, { ...base, from, to, landmarks: [] });
    const [before, bend] = way.legs.slice(-3);
    if (!before || !bend || told.direction.form !== 'turn-distance')
      throw new Error('expected a bend and a turn');
    const facing = bearingDeg(before, bend) ?? Number.NaN;
    expect(told.headingDeg).toBeCloseTo(facing, 9);
    expect(wrap180(facing + told.direction.turnDeg - (bearingDeg(bend, to) ?? Number.NaN))).toBeCloseTo(0, 6);
    expect(sentenceAlong(told, 'metric', 0.65).text).toMatch(/^Round the screen, then .*left, .* m/);
  });

  it('from right beside a thing, the arrow leads out first; a mark right beside one is told as seen', () => {
    const long = box('long', 'Long table', { x: 10, y: 6 }, 10, 1);
    const ways = createWays({ outline: HALL, obstacles: [long, bar] });
    const told = (from: Spot, to: Spot) => {
      const way = ways.find(from, to);
      if (way.kind === 'none') throw new Error(way.reason);
      return { way, words: directionAlong(way, { ...base, from, to, landmarks: [long, bar] }) };
    };
    const out = told({ x: 7, y: 5.45 }, { x: 12, y: 5.1 });
    expect(out.words.isStraight).toBe(false);
    expect(firstLeg(out.way).bearingDeg).toBeCloseTo(0, 6);
    expect(sentenceAlong(out.words, 'metric', 0.65).text).toMatch(/^Follow the arrow first, then /);
    const beside = told({ x: 7, y: 5.1 }, { x: 12, y: 5.4 });
    expect(beside.way.legs.length).toBe(3);
    expect(beside.words).toMatchObject({ isStraight: true, from: { x: 7, y: 5.1 } });
    expect(told({ x: 7, y: 4 }, { x: 12, y: 8 }).words.round.map(({ id }) => id)).toEqual(['long']);
  });

  it('of many things the last two are named; right at the last bend it is there', () => {
    const told: DirectionAlong = {
      round: ['Bar', 'Table 3', 'Piano'].map((name) => ({ id: name, name })),
      from: { x: 0, y: 0 },
      headingDeg: 0,
      direction: { form: 'here' },
      beside: { id: 'p', name: 'Pillar' },
      isStraight: false,
    };
    expect(sentenceAlong(told, 'metric', 0.65).text).toBe(
      'Round table 3 and the piano, and it is there, beside the pillar',
    );
  });
});
