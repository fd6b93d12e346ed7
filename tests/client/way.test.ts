import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Way, wayOf } from '../../client/screens/assistant/way.ts';
import { wayBetween } from '../../client/state/ways.ts';
import { outlineOf } from '../../core/geometry/shape.ts';
import type { Spot } from '../../core/geometry/spot.ts';
import { calledTo } from './asked-night.ts';

const spots = fc.record({
  x: fc.double({ min: 0.4, max: 17.6, noNaN: true }),
  y: fc.double({ min: 0.4, max: 11.6, noNaN: true }),
});
const facingIds = fc.constantFrom('couple', 'bar', 'band', 'foyer', 'garden');
const turns = fc.integer({ min: -180, max: 180 });

const couple = { facingId: 'couple', stepM: 0.65 };
const apart = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y);

/** Where one comes to who follows the arrow from a spot: worked out here, not by the app. */
function afterArrow(way: Way, from: Spot): Spot {
  const bearing = ((way.headingDeg + (way.turnDeg ?? 0)) * Math.PI) / 180;
  return { x: from.x + Math.sin(bearing) * way.firstM, y: from.y - Math.cos(bearing) * way.firstM };
}

/** Is a spot inside an outline? Counted by crossings of a ray to the right. */
function isInside(outline: readonly Spot[], { x, y }: Spot): boolean {
  let inside = false;
  for (const [index, a] of outline.entries()) {
    const b = outline[(index + 1) % outline.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

describe('the way on the carry card', () => {
  it('[ASSIST1][ASSIST5] the arrow leads to the end of the first leg, the drawn legs to the mark, and their sum is the distance', () => {
    let bent = 0;
    fc.assert(
      fc.property(spots, facingIds, turns, (spot, facingId, turnedDeg) => {
        const { night, asked, from } = calledTo({ spot });
        const way = wayOf(night, asked, { facingId, stepM: 0.65, turnedDeg });
        fc.pre(way.kind !== 'stay');
        const [, next] = way.legs;
        expect(way.legs[0]).toEqual(from);
        expect(way.legs.at(-1)).toEqual(spot);
        expect(apart(afterArrow(way, from), next ?? from)).toBeLessThan(1e-6);
        const sumM = way.legs
          .slice(1)
          .reduce((sum, leg, index) => sum + apart(leg, way.legs[index] ?? leg), 0);
        expect(way.distanceM).toBeCloseTo(sumM, 9);
        if (way.legs.length > 2) bent += 1;
      }),
      { numRuns: 150 },
    );
    expect(bent).toBeGreaterThan(10);
  });

  it('[ASSIST5] no drawn leg goes through what blocks walking; where there is no way it says why', () => {
    fc.assert(
      fc.property(spots, (spot) => {
        const { night, asked } = calledTo({ spot });
        const way = wayOf(night, asked, couple);
        const solid = night.features.filter((feature) => feature.blocksWalking).map(outlineOf);
        if (way.kind === 'none') {
          expect(way.lines[0]).toMatch(/^No way there: the mark is /);
          expect(way.legs).toHaveLength(2);
          return;
        }
        for (const [index, to] of way.legs.entries()) {
          const from = way.legs[index - 1] ?? to;
          for (let part = 0; part <= 40; part += 1) {
            const at = {
              x: from.x + ((to.x - from.x) * part) / 40,
              y: from.y + ((to.y - from.y) * part) / 40,
            };
            expect(solid.some((outline) => isInside(outline, at))).toBe(false);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it('[ASSIST1] the number beside the arrow is the first leg, to its rounding', () => {
    fc.assert(
      fc.property(spots, (spot) => {
        const { night, asked } = calledTo({ spot });
        const way = wayOf(night, asked, couple);
        const metres = /^([\d.]+) m$/.exec(way.distance.main)?.[1];
        fc.pre(metres !== undefined);
        // Half a metre is the rounding of a long way; a spoken distance may be another quarter off.
        expect(Math.abs(Number(metres) - way.firstM)).toBeLessThanOrEqual(0.51);
      }),
      { numRuns: 80 },
    );
  });

  it('[ASSIST5] round a table: its name first, the leg to the bend by the arrow, the whole length said', () => {
    // The thyme table (11.4, 10.4; radius 0.9) stands on the line from (12.9, 9.1) to (9.6, 11.2).
    const { night, asked } = calledTo({ spot: { x: 9.6, y: 11.2 } });
    const way = wayOf(night, asked, couple);
    expect(way.kind).toBe('way');
    expect(way.legs.length).toBeGreaterThan(2);
    expect(way.lines[0]).toMatch(/^Round the thyme table, (then|and) /);
    const wholeM = Number(/^([\d.]+) m, ≈ \d+ steps in all$/.exec(way.whole ?? '')?.[1]);
    expect(Math.abs(wholeM - way.distanceM)).toBeLessThanOrEqual(0.25);
  });

  it('[ASSIST5] over the dance floor the way is straight, whoever dances', () => {
    const { night, asked } = calledTo({ spot: { x: 6.4, y: 4.5 } });
    const way = wayOf(night, asked, couple);
    expect(way.legs).toHaveLength(2);
    expect(way.whole).toBeNull();
  });

  it('[ASSIST5] on a table there is no way: said with the table, and how near one gets', () => {
    const { night, asked } = calledTo({ spot: { x: 14.6, y: 2.2 } });
    const way = wayOf(night, asked, couple);
    expect(way.kind).toBe('none');
    expect(way.lines).toEqual(['No way there: the mark is on the olive table']);
    // The table's edge is 0.9 m from its middle, and somebody with a stand fills 0.3 m more (an estimate).
    expect(way.nearest && apart(way.nearest, { x: 14.6, y: 2.2 })).toBeCloseTo(1.2, 1);
    expect(way.whole).toBe('You get within 1.2 m');
  });

  it('[ASSIST5] half a step out from a wall is not what the arrow shows', () => {
    const near = calledTo({ spot: { x: 17.9, y: 11 } });
    // Into the corner and out again: a stand 0.1 m from the wall, called far away in the open.
    const stand = {
      ...near.asked.stand,
      place: { ...near.asked.stand.place, mark: near.asked.carry.current.mark },
    };
    const back = calledTo({ spot: { x: 12.9, y: 8 } });
    const way = wayOf(back.night, { stand, carry: back.asked.carry }, couple);
    expect(way.firstM).toBeGreaterThan(1);
  });

  it('[ASSIST1] a mark where the stand is asks nobody to walk', () => {
    const { night, asked } = calledTo({});
    const way = wayOf(night, asked, couple);
    expect(way.turnDeg).toBeNull();
    expect(way.lines).toEqual(['K stays where it is']);
  });

  it('[ASSIST5] the ways of a room are made once, and anew when a thing moves', () => {
    const { night } = calledTo({});
    let looks = 0;
    /** Features that count how often somebody goes through them for what blocks walking. */
    const counted = () => {
      const features = [...night.features];
      const filter = features.filter.bind(features);
      return Object.assign(features, {
        filter: (...wanted: Parameters<typeof filter>) => {
          looks += 1;
          return filter(...wanted);
        },
      });
    };
    const first = { ...night, features: counted() };
    const [from, to] = [
      { x: 12.9, y: 9.1 },
      { x: 3, y: 4 },
    ];
    const way = wayBetween(first, from, to);
    expect(wayBetween({ ...first }, from, to)).toEqual(way);
    expect(looks).toBe(1);
    wayBetween({ ...first, features: counted() }, from, to);
    expect(looks).toBe(2);
  });
});
