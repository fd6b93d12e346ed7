import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, distanceToOutline, nearestOnOutline } from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import { distance, type Spot } from '../../../core/geometry/spot.ts';
import { type SnapInput, type SnapTo, snapSpot } from '../../../core/plan/snap.ts';
import { snapWords } from '../../../core/plan/snap-words.ts';

const ROOM: Spot[] = [
  { x: 0, y: 0 },
  { x: 18, y: 0 },
  { x: 18, y: 8 },
  { x: 12, y: 8 },
  { x: 12, y: 12 },
  { x: 0, y: 12 },
];

function feature(
  id: string,
  kind: 'table' | 'bar' | 'dance-floor',
  at: Spot,
  widthM: number,
  depthM: number,
  turnDeg = 0,
) {
  return { id, kind, name: id, outline: outlineOf({ at, turnDeg, shape: { kind: 'box', widthM, depthM } }) };
}

const FEATURES = [
  feature('Table 4', 'table', { x: 5, y: 5 }, 1.8, 0.8, 30),
  feature('Bar', 'bar', { x: 16, y: 0.4 }, 3, 0.8),
  feature('Dance floor', 'dance-floor', { x: 9, y: 9 }, 4, 4),
];
const HERE: SnapInput = { outline: ROOM, features: FEATURES, gridM: 0.25, radiusM: 0.4 };

const spot = fc.record({
  x: fc.double({ min: -1, max: 19, noNaN: true }),
  y: fc.double({ min: -1, max: 13, noNaN: true }),
});
const radius = fc.double({ min: 0.01, max: 2, noNaN: true });
const grid = fc.constantFrom(0, 0.25, 0.5, 0.3048);

function wallM(at: Spot): number {
  const nearest = nearestOnOutline(ROOM, at);
  return nearest ? distance(nearest, at) : Number.NaN;
}

/** What the words claim, measured anew. */
function expectTrue(at: Spot, to: SnapTo): void {
  const named = FEATURES.find(({ name }) => name === to.name);
  switch (to.kind) {
    case 'table-edge':
    case 'feature': {
      if (!named) throw new Error(`no ${to.name}`);
      expect(to.kind === 'table-edge').toBe(named.kind === 'table');
      const nearest = nearestOnOutline(named.outline, at);
      expect(nearest && distance(nearest, at)).toBeCloseTo(to.distanceM, 6);
      return;
    }
    case 'corner':
      expect(ROOM).toContainEqual(at);
      return;
    case 'wall':
    case 'wall-parallel':
      expect(wallM(at)).toBeCloseTo(to.distanceM, 5);
      if (to.kind === 'wall-parallel') expect(contains(ROOM, at)).toBe(true);
      return;
    case 'grid':
      for (const along of [at.x, at.y]) {
        const squares = along / to.distanceM;
        expect(Math.abs(squares - Math.round(squares))).toBeLessThan(1e-9);
      }
  }
}

describe('snapping', () => {
  it('moves a spot no farther than the radius, and what it says is true', () => {
    fc.assert(
      fc.property(spot, radius, grid, (raw, radiusM, gridM) => {
        const snapped = snapSpot(raw, { ...HERE, radiusM, gridM });
        if (snapped.to === null) {
          expect(snapped.spot).toBe(raw);
          return;
        }
        expect(distance(raw, snapped.spot)).toBeLessThanOrEqual(radiusM + 1e-9);
        expectTrue(snapped.spot, snapped.to);
        if (contains(ROOM, raw)) expect(distanceToOutline(ROOM, snapped.spot)).toBeLessThan(1e-5);
      }),
      { numRuns: 2000 },
    );
  });

  it('a snapped spot stays where it is', () => {
    fc.assert(
      fc.property(spot, (raw) => {
        const once = snapSpot(raw, HERE);
        fc.pre(once.to !== null && once.to.kind !== 'grid');
        expect(distance(snapSpot(once.spot, HERE).spot, once.spot)).toBeLessThan(0.25 + 1e-9);
        const again = snapSpot(once.spot, { ...HERE, radiusM: 1e-5, gridM: 0 });
        expect(again.to).not.toBeNull();
        expect(distance(again.spot, once.spot)).toBeLessThan(1e-5);
      }),
    );
  });

  it('the order: feature, corner, wall, line along the wall, grid', () => {
    const kindAt = (x: number, y: number, change: Partial<SnapInput> = {}) =>
      snapSpot({ x, y }, { ...HERE, ...change }).to;
    // 0.95 m under the bar, 0.03 m from a grid line.
    expect(kindAt(16.02, 1.75)).toEqual({ kind: 'feature', name: 'Bar', distanceM: 1 });
    expect(kindAt(16.02, 0.85)).toEqual({ kind: 'feature', name: 'Bar', distanceM: 0 });
    expect(kindAt(0.1, 0.2)).toEqual({ kind: 'corner', name: null, distanceM: 0 });
    expect(kindAt(3.1, 0.2)).toEqual({ kind: 'wall', name: null, distanceM: 0 });
    expect(kindAt(3.1, 0.42)).toEqual({ kind: 'wall-parallel', name: null, distanceM: 0.5 });
    expect(kindAt(3.1, 1.42)).toEqual({ kind: 'grid', name: null, distanceM: 0.25 });
    expect(kindAt(3.1, 1.42, { gridM: 0 })).toBeNull();
    expect(kindAt(3.1, 1.42, { radiusM: 0 })).toBeNull();
    expect(kindAt(3.1, 1.42, { radiusM: 0.02 })).toBeNull();
  });

  it('the nearest of two features is taken, and never the one that is dragged', () => {
    const features = [
      feature('Table 1', 'table', { x: 4, y: 4 }, 1, 1),
      feature('Table 2', 'table', { x: 6.2, y: 4 }, 1, 1),
    ];
    const raw = { x: 5.18, y: 4 };
    expect(snapSpot(raw, { ...HERE, features }).to?.name).toBe('Table 2');
    expect(snapSpot(raw, { ...HERE, features, except: 'Table 2' }).to?.name).toBe('Table 1');
    expect(snapSpot({ x: 4, y: 4.45 }, { ...HERE, features, except: 'Table 1', gridM: 0 }).to).toBeNull();
  });

  it('the words', () => {
    const words = (to: Partial<SnapTo>, units: 'metric' | 'imperial' = 'metric') =>
      snapWords({ kind: 'grid', name: null, distanceM: 0.5, ...to }, units);
    expect(words({ kind: 'feature', name: 'Bar', distanceM: 1 })).toBe('1 m from the bar');
    expect(words({ kind: 'table-edge', name: 'Table 4' })).toBe('0.5 m from table 4');
    expect(words({ kind: 'table-edge', name: 'Table 4', distanceM: 0 })).toBe('at the edge of table 4');
    expect(words({ kind: 'wall', distanceM: 0 })).toBe('on the wall');
    expect(words({ kind: 'corner', distanceM: 0 })).toBe('in the corner');
    expect(words({ kind: 'wall-parallel' })).toBe('0.5 m from the wall');
    expect(words({})).toBe('on the half-metre grid');
    expect(words({ distanceM: 0.25 })).toBe('on the quarter-metre grid');
    expect(words({ distanceM: 0.3 })).toBe('on the 0.3 m grid');
    expect(words({ distanceM: 0.3048 }, 'imperial')).toBe('on the 1 ft grid');
  });
});
