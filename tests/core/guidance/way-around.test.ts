import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, rotate, type Spot } from '../../../core/geometry/spot.ts';
import { createCheapestFirst } from '../../../core/guidance/cheapest-first.ts';
import { createWays, firstLeg, type NoWay, type Way } from '../../../core/guidance/way-around.ts';
import { spot as anySpot, number, spots } from '../finite-inputs.ts';
import { clearanceM, gridWayM, leastAlongM, type Plan } from './way-grid.ts';
import { box, furnished, inRoom, round } from './way-plans.ts';

const BODY_M = 0.3;
const SLOW_MS = 60_000;

const HALL = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 8 },
  { x: 0, y: 8 },
];

function asWay(found: Way | NoWay): Way {
  if (found.kind !== 'way') throw new Error(found.reason);
  return found;
}

function asNone(found: Way | NoWay): NoWay {
  if (found.kind !== 'none') throw new Error('there is a way');
  return found;
}

function legsOf({ legs }: Way): [Spot, Spot][] {
  return legs.slice(1).map((to, index) => [legs[index] ?? to, to]);
}

const isFree = (plan: Plan, spot: Spot) => clearanceM(plan, spot) >= BODY_M + 0.001;

describe('ways in random rooms', () => {
  it(
    'keep clear of everything, and are no longer than a search on a grid finds',
    () => {
      fc.assert(
        fc.property(furnished, inRoom, inRoom, (plan, from, to) => {
          fc.pre(isFree(plan, from) && isFree(plan, to));
          const found = createWays(plan).find(from, to);
          const onGridM = gridWayM(plan, from, to, BODY_M, 0.2);
          if (found.kind === 'none') {
            expect(onGridM).toBeNull();
            return;
          }
          expect([found.legs[0], found.legs.at(-1)]).toEqual([from, to]);
          expect(found.bends.map(({ at }) => at)).toEqual(found.legs.slice(1, -1));
          for (const [a, b] of legsOf(found)) expect(leastAlongM(plan, a, b)).toBeGreaterThan(BODY_M - 0.02);
          const sumM = legsOf(found).reduce((sum, [a, b]) => sum + distance(a, b), 0);
          expect(found.lengthM).toBeCloseTo(sumM, 9);
          expect(found.lengthM).toBeGreaterThanOrEqual(distance(from, to) - 1e-9);
          if (onGridM !== null) expect(found.lengthM).toBeLessThanOrEqual(onGridM * 1.02);
        }),
        { numRuns: 120, endOnFailure: true },
      );
    },
    SLOW_MS,
  );

  it(
    'from right beside a thing they go through nothing, and keep clear once they are out',
    () => {
      fc.assert(
        fc.property(furnished, inRoom, inRoom, (plan, from, to) => {
          const [fromGapM, toGapM] = [clearanceM(plan, from), clearanceM(plan, to)];
          fc.pre(fromGapM > 0.01 && toGapM > 0.01);
          const found = createWays(plan).find(from, to);
          if (found.kind === 'none') return;
          const leastM = Math.min(BODY_M - 0.02, fromGapM, toGapM) - 0.001;
          const legs = legsOf(found);
          for (const [a, b] of legs) expect(leastAlongM(plan, a, b)).toBeGreaterThan(leastM);
          for (const [a, b] of legs.slice(1, -1))
            expect(leastAlongM(plan, a, b)).toBeGreaterThan(BODY_M - 0.02);
        }),
        { numRuns: 300, endOnFailure: true },
      );
    },
    SLOW_MS,
  );

  it(
    'are as long in the room turned, moved, seen in a mirror or walked backward',
    () => {
      const turned = (spot: Spot) => {
        const { x, y } = rotate(spot, 37);
        return { x: x + 100, y: y - 40 };
      };
      const mirrored = ({ x, y }: Spot) => ({ x: -x, y });
      fc.assert(
        fc.property(furnished, inRoom, inRoom, fc.constantFrom(turned, mirrored), (plan, from, to, put) => {
          fc.pre(isFree(plan, from) && isFree(plan, to));
          const found = createWays(plan).find(from, to);
          const elsewhere = createWays({
            outline: plan.outline.map(put),
            obstacles: plan.obstacles.map((thing) => ({ ...thing, outline: thing.outline.map(put) })),
          });
          const other = elsewhere.find(put(from), put(to));
          const back = createWays(plan).find(to, from);
          expect([other.kind, back.kind]).toEqual([found.kind, found.kind]);
          if (found.kind === 'none') return;
          expect(Math.abs(asWay(other).lengthM - found.lengthM)).toBeLessThan(0.01);
          expect(asWay(back).lengthM).toBeCloseTo(found.lengthM, 6);
        }),
        { numRuns: 200, endOnFailure: true },
      );
    },
    SLOW_MS,
  );

  it(
    'where there is none, a reason is given, and the nearest spot can be walked to',
    () => {
      fc.assert(
        fc.property(furnished, inRoom, inRoom, (plan, from, to) => {
          fc.pre(isFree(plan, from));
          const ways = createWays(plan);
          const found = ways.find(from, to);
          if (found.kind === 'way') return;
          expect(found.reason).toMatch(/outside the room|is on |is shut in by |no room to walk /);
          if (!found.nearest) throw new Error('no nearest spot');
          expect(clearanceM(plan, found.nearest)).toBeGreaterThan(BODY_M - 0.02);
          expect(ways.find(from, found.nearest).kind).toBe('way');
          expect(distance(found.nearest, to)).toBeLessThanOrEqual(distance(from, to) + 1e-9);
        }),
        { numRuns: 300, endOnFailure: true },
      );
    },
    SLOW_MS,
  );

  it('finite numbers, however absurd, give finite ways or a reason', () => {
    const thing = fc.record({ id: fc.constant('a'), name: fc.constant('Bar'), outline: spots });
    const outline = fc.oneof(spots, fc.constant(HALL));
    fc.assert(
      fc.property(
        outline,
        fc.array(thing, { maxLength: 4 }),
        number,
        anySpot,
        anySpot,
        (walls, obstacles, bodyM, a, b) => {
          const found = createWays({ outline: walls, obstacles, bodyM }).find(a, b);
          const numbers =
            found.kind === 'way' ? [found.lengthM, ...found.legs.flatMap(({ x, y }) => [x, y])] : [];
          if (found.kind === 'none' && found.nearest) numbers.push(found.nearest.x, found.nearest.y);
          expect(numbers.every(Number.isFinite)).toBe(true);
          expect(found.kind === 'way' || found.reason.length > 0).toBe(true);
        },
      ),
      { numRuns: 1000, endOnFailure: true },
    );
  });
});

describe('ways one can work out by hand', () => {
  it('a free floor is crossed straight', () => {
    const way = asWay(createWays({ outline: HALL, obstacles: [] }).find({ x: 1, y: 1 }, { x: 4, y: 5 }));
    expect(way).toEqual({
      kind: 'way',
      legs: [
        { x: 1, y: 1 },
        { x: 4, y: 5 },
      ],
      bends: [],
      wordsFrom: { x: 1, y: 1 },
      lengthM: 5,
    });
    expect(firstLeg(way)).toMatchObject({ lengthM: 5 });
    // Research table 2.4, convention atan2(dx, −dy): right by 3, down by 4.
    expect(firstLeg(way).bearingDeg).toBeCloseTo(143.1301, 4);
  });

  it('round a disc: two tangents and the arc between them (Euclid’s geometry)', () => {
    const [radiusM, awayM] = [1, 3];
    const disc = round('cake', 'Cake table', { x: 5, y: 4 }, radiusM);
    const ways = createWays({ outline: HALL, obstacles: [disc] });
    const way = asWay(ways.find({ x: 5 - awayM, y: 4 }, { x: 5 + awayM, y: 4 }));
    const reachM = radiusM + BODY_M;
    const exactM = 2 * Math.sqrt(awayM ** 2 - reachM ** 2) + 2 * reachM * Math.asin(reachM / awayM);
    expect(way.lengthM / exactM).toBeGreaterThan(0.985);
    expect(way.lengthM / exactM).toBeLessThan(1.01);
    expect(new Set(way.bends.map(({ round: thing }) => thing?.name))).toEqual(new Set(['Cake table']));
    expect(firstLeg(way).bearingDeg).not.toBeCloseTo(90, 0);
  });

  it('round the end of a screen: out, past its two corners and back (Pythagoras)', () => {
    const screen = box('s', 'Screen', { x: 5, y: 3 }, 0.2, 6);
    const way = asWay(
      createWays({ outline: HALL, obstacles: [screen] }).find({ x: 2, y: 3 }, { x: 8, y: 3 }),
    );
    const pointM = 2 * Math.hypot(2.9 - BODY_M, 3) + 0.2;
    expect(way.lengthM).toBeGreaterThan(pointM);
    expect(way.lengthM).toBeLessThan(2 * Math.hypot(2.9 - BODY_M, 3 + BODY_M) + 0.2 + 2 * BODY_M);
  });

  it('round a corner of the walls, which has a name', () => {
    const outline = [...HALL.slice(0, 2), { x: 10, y: 3 }, { x: 4, y: 3 }, { x: 4, y: 8 }, { x: 0, y: 8 }];
    const way = asWay(createWays({ outline, obstacles: [] }).find({ x: 9, y: 1.5 }, { x: 1, y: 7 }));
    expect(way.bends.length).toBeGreaterThan(0);
    expect(way.bends.every(({ round: thing }) => thing?.name === 'Corner of the wall')).toBe(true);
  });

  it('a gap lets through who fits', () => {
    const through = (gapM: number) => {
      const ends = [
        box('a', 'Screen', { x: 5, y: 4 - gapM / 2 - 3 }, 0.2, 6),
        box('b', 'Bar', { x: 5, y: 4 + gapM / 2 + 3 }, 0.2, 6),
      ];
      return createWays({ outline: HALL, obstacles: ends }).find({ x: 2, y: 2 }, { x: 8, y: 2 }).kind;
    };
    expect([through(0.55), through(0.605), through(1)]).toEqual(['none', 'way', 'way']);
  });
});

describe('where there is no way', () => {
  const bar = box('bar', 'Bar', { x: 5, y: 4 }, 2, 1);
  const find = (obstacles: Plan['obstacles'], from: Spot, to: Spot) =>
    asNone(createWays({ outline: HALL, obstacles }).find(from, to));

  it('says that an end is outside, or on a thing, and leads beside it', () => {
    const outside = find([bar], { x: 1, y: 1 }, { x: 1, y: 9 });
    expect(outside.reason).toBe('the mark is outside the room');
    expect(outside.nearest?.y).toBeCloseTo(7.71, 6);
    expect(find([bar], { x: -1, y: 1 }, { x: 1, y: 1 })).toMatchObject({
      reason: 'the start is outside the room',
    });
    const on = find([bar], { x: 1, y: 1 }, { x: 5, y: 3.7 });
    expect(on.reason).toBe('the mark is on the bar');
    expect(on.nearest?.y).toBeCloseTo(3.21, 6);
    expect(find([bar], { x: 5, y: 4 }, { x: 1, y: 1 })).toMatchObject({
      reason: 'the start is on the bar',
      nearest: null,
    });
  });

  it('names what shuts an end in', () => {
    const screen = box('screen', 'Screen', { x: 6, y: 5 }, 0.2, 6);
    const long = box('bar', 'Bar', { x: 8, y: 2.2 }, 4, 0.4);
    const mark = find([screen, long], { x: 1, y: 1 }, { x: 8, y: 5 });
    expect(mark.reason).toMatch(/^the mark is shut in by .*the wall/);
    expect(mark.reason).toContain('the screen');
    expect(mark.reason).toContain('the bar');
    expect(mark.nearest?.x).toBeCloseTo(5.61, 2);
    expect(find([screen, long], { x: 8, y: 5 }, { x: 1, y: 1 }).reason).toMatch(/^the start is shut in by /);
  });

  it('names between what nobody gets in', () => {
    const tables = [box('a', 'Table 1', { x: 4.8, y: 4 }, 3, 3), box('b', 'Table 2', { x: 8.1, y: 4 }, 3, 3)];
    const none = find(
      [
        ...tables,
        box('c', 'Band', { x: 6.45, y: 2.1 }, 6, 0.9),
        box('d', 'Bar', { x: 6.45, y: 5.9 }, 6, 0.9),
      ],
      { x: 1, y: 1 },
      { x: 6.45, y: 4 },
    );
    expect(none.reason).toBe('there is no room to walk at the mark, beside table 1 and table 2');
  });

  it('a mark right beside a table is reached, stepping out from it first', () => {
    const way = asWay(
      createWays({ outline: HALL, obstacles: [bar] }).find({ x: 5, y: 3.4 }, { x: 5, y: 4.6 }),
    );
    expect(way.legs.length).toBeGreaterThan(3);
    expect(new Set(way.bends.flatMap(({ round: thing }) => (thing ? [thing.id] : [])))).toEqual(
      new Set(['bar']),
    );
  });
});

describe('the queue of the search', () => {
  it('gives the cheapest first', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 50 })), (costs) => {
        const queue = createCheapestFirst();
        for (const [entry, cost] of costs.entries()) queue.put(entry, cost);
        const taken: number[] = [];
        for (let next = queue.take(); next; next = queue.take()) {
          expect(costs[next.entry]).toBe(next.costM);
          taken.push(next.costM);
        }
        expect(taken).toEqual([...costs].sort((a, b) => a - b));
      }),
    );
  });
});
