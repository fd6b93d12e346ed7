import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Caution } from '../../../core/cautions/caution.ts';
import { EXIT_CLEAR_M, exitCaution } from '../../../core/cautions/exit-clear.ts';
import { type MarkCautionsInput, markCautions } from '../../../core/cautions/mark-cautions.ts';
import { rimCaution, rimLow } from '../../../core/cautions/rim-height.ts';
import { type Obstacle, widthLeft } from '../../../core/cautions/walkway.ts';
import { walkwayCaution } from '../../../core/cautions/walkway-caution.ts';
import { distanceToOutline } from '../../../core/geometry/polygon.ts';
import { rotate, type Spot } from '../../../core/geometry/spot.ts';

const ROOM = box(0, 0, 20, 12);
const TABLE: Obstacle = { id: 't4', name: 'Table 4', outline: box(8, 5, 10, 7), chairs: true };

function box(x0: number, y0: number, x1: number, y1: number): Spot[] {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

const inRoom = fc.record({
  x: fc.double({ min: 0.1, max: 19.9, noNaN: true }),
  y: fc.double({ min: 0.1, max: 11.9, noNaN: true }),
});

/** Away from the corners, where the rule on cut-off floor never speaks. */
const inTheOpen = fc.record({
  x: fc.double({ min: 1.6, max: 18.4, noNaN: true }),
  y: fc.double({ min: 1.6, max: 10.4, noNaN: true }),
});

describe('width left', () => {
  it('turning the whole room changes nothing', () => {
    fc.assert(
      fc.property(inTheOpen, fc.double({ min: 0, max: 360, noNaN: true }), (stand, turnDeg) => {
        fc.pre((distanceToOutline(TABLE.outline, stand) ?? 0) > 0.6);
        const turned = (spots: readonly Spot[]) => spots.map((spot) => rotate(spot, turnDeg));
        const plain = widthLeft({ stand, footprintRadiusM: 0.5, obstacles: [TABLE], room: ROOM });
        const other = widthLeft({
          stand: rotate(stand, turnDeg),
          footprintRadiusM: 0.5,
          obstacles: [{ ...TABLE, outline: turned(TABLE.outline) }],
          room: turned(ROOM),
        });
        // The 3° search is laid differently over a turned room: a few centimetres.
        expect(Math.abs((other?.gapM ?? 0) - (plain?.gapM ?? 0))).toBeLessThan(0.05 * (plain?.gapM ?? 1));
      }),
    );
  });

  it('a table in the way can only make it narrower, chairs narrower still, a bigger stand too', () => {
    fc.assert(
      fc.property(inRoom, (stand) => {
        fc.pre((distanceToOutline(TABLE.outline, stand) ?? 0) > 0.6);
        const gapOf = (obstacles: Obstacle[]) =>
          widthLeft({ stand, footprintRadiusM: 0.5, obstacles, room: ROOM })?.gapM ?? Number.MAX_VALUE;
        const bareTable = { ...TABLE, chairs: false };
        expect(gapOf([bareTable])).toBeLessThanOrEqual(gapOf([]) + 1e-9);
        // The search also looks square to the table, so the two searches differ by centimetres at most.
        expect(gapOf([TABLE])).toBeLessThanOrEqual(gapOf([bareTable]) + 1e-9);
        const left = (footprintRadiusM: number) =>
          widthLeft({ stand, footprintRadiusM, obstacles: [TABLE], room: ROOM })?.leftM ?? 0;
        expect(left(0.8)).toBeLessThanOrEqual(left(0.4));
      }),
    );
  });

  it('people pass on the wider side', () => {
    const room = box(0, 0, 3, 20);
    const stand = { x: 1, y: 10 };
    const width = widthLeft({ stand, footprintRadiusM: 0.5, obstacles: [], room });
    expect(width?.gapM).toBeCloseTo(3, 6);
    expect(width?.leftM).toBeCloseTo(1.5, 6);
    expect(width?.between).toEqual(['the wall', 'the wall']);
  });

  it('a stand tucked in a corner of a large room narrows no way', () => {
    const width = widthLeft({ stand: { x: 0.6, y: 0.6 }, footprintRadiusM: 0.5, obstacles: [], room: ROOM });
    expect(width?.leftM ?? 99).toBeGreaterThan(3);
  });

  it('a line across a corner is a way once it cuts off 4 m² or more', () => {
    const gapAt = (fromWallsM: number) =>
      widthLeft({ stand: { x: fromWallsM, y: fromWallsM }, footprintRadiusM: 0.5, obstacles: [], room: ROOM })
        ?.gapM ?? 0;
    // The shortest line cuts off 2·a² of floor and is 2·√2·a long.
    expect(gapAt(1.45)).toBeCloseTo(2 * Math.SQRT2 * 1.45, 6);
    expect(gapAt(1.39)).toBeGreaterThan(2 * Math.SQRT2 * 1.39 + 0.05);
  });

  it('a stand inside a chair zone has no room on the table’s side', () => {
    const stand = { x: 10.3, y: 6 };
    const room = box(0, 0, 12, 12);
    const width = widthLeft({ stand, footprintRadiusM: 0.4, obstacles: [TABLE], room });
    expect(width?.gapM).toBeCloseTo(1.7, 2);
    expect(width?.leftM).toBeCloseTo(1.3, 2);
  });

  it('outside the room there is no way', () => {
    expect(
      widthLeft({ stand: { x: -1, y: 3 }, footprintRadiusM: 0.5, obstacles: [], room: ROOM }),
    ).toBeNull();
  });

  it('levels turn at the limits', () => {
    const levelAt = (leftM: number) =>
      walkwayCaution({ stand: { x: 5, y: 5 }, room: ROOM, width: { leftM, gapM: 2, between: ['a', 'b'] } })
        ?.level;
    expect([levelAt(0.81), levelAt(0.82), levelAt(0.91), levelAt(0.92)]).toEqual([
      'stop',
      'caution',
      'caution',
      undefined,
    ]);
    const tight = walkwayCaution({
      stand: { x: 5, y: 5 },
      room: ROOM,
      width: { leftM: 0.7, gapM: 2, between: ['a', 'b'] },
    });
    expect(tight?.detail).toMatch(/0\.70 m of 2\.00 m between a and b.*Under 0\.711 m/);
  });

  it('an undrawn room or a stand outside it was not checked', () => {
    const outside = walkwayCaution({ stand: { x: -5, y: 5 }, room: ROOM, width: null });
    const undrawn = walkwayCaution({ stand: { x: 5, y: 5 }, room: [], width: null });
    for (const caution of [outside, undrawn]) {
      expect(caution).toMatchObject({ level: 'info', value: null });
      expect(caution?.detail).toMatch(/^Not checked/);
    }
  });
});

describe('exits', () => {
  const EXIT = { id: 'e', name: 'Garden door', outline: box(8, 0, 10, 0.1) };
  const levelAt = (y: number) =>
    exitCaution({ stand: { x: 9, y: 0.1 + 0.5 + y }, footprintRadiusM: 0.5, exits: [EXIT] })?.level;

  it('stop within the depth to keep free, caution within two metres', () => {
    expect([
      levelAt(EXIT_CLEAR_M - 0.01),
      levelAt(EXIT_CLEAR_M + 0.01),
      levelAt(1.99),
      levelAt(2.01),
    ]).toEqual(['stop', 'caution', 'caution', undefined]);
    expect(EXIT_CLEAR_M).toBe(1.118);
  });

  it('the nearest exit counts; without any it was not checked', () => {
    const far = { ...EXIT, id: 'f', outline: box(0, 11.9, 2, 12) };
    const caution = exitCaution({ stand: { x: 9, y: 1 }, footprintRadiusM: 0.5, exits: [far, EXIT] });
    expect(caution?.detail).toMatch(/Garden door/);
    expect(exitCaution({ stand: { x: 9, y: 1 }, footprintRadiusM: 0.5, exits: [] })?.detail).toMatch(
      /^Not checked/,
    );
  });
});

describe('rim', () => {
  it('tilting either way lifts the rim as much; level it is lowest', () => {
    fc.assert(
      fc.property(fc.double({ min: -80, max: 80, noNaN: true }), (tiltDeg) => {
        expect(rimLow(2.2, 1, tiltDeg)).toBeCloseTo(rimLow(2.2, 1, -tiltDeg), 9);
        expect(rimLow(2.2, 1, tiltDeg + 360)).toBeCloseTo(rimLow(2.2, 1, tiltDeg), 9);
        expect(rimLow(2.2, 1, tiltDeg)).toBeGreaterThanOrEqual(rimLow(2.2, 1, 0));
      }),
    );
  });

  it('cautions only where people pass, and says when that is not known', () => {
    const at = (heightM: number, nearWalkway: boolean | null) =>
      rimCaution({ heightM, tiltDeg: 0, umbrella: { diameterM: 1 }, nearWalkway });
    expect(at(2.2, true)).toMatchObject({ level: 'caution', limit: 2.032 });
    expect(at(2.2, true)?.value).toBeCloseTo(1.7, 9);
    expect(at(2.2, false)).toMatchObject({ level: 'info' });
    expect(at(2.2, null)?.detail).toMatch(/Not checked: whether people pass/);
    expect(at(2.54, true)).toBeNull();
    expect(rimCaution({ heightM: 2, tiltDeg: 0, umbrella: null, nearWalkway: true })).toBeNull();
  });
});

describe('all cautions of a mark', () => {
  const INPUT: MarkCautionsInput = {
    mark: { spot: { x: 9, y: 0.8 }, heightM: 2.2, tiltDeg: 10 },
    umbrella: { diameterM: 1 },
    build: {
      legs: 3,
      legRadiusM: 0.5,
      standKg: 1.5,
      standCgM: 0.7,
      headKg: 1,
      ballastKg: 7,
      ballastAt: { x: 0, y: 0 },
      ballastCgM: 0.15,
    },
    obstacles: [TABLE],
    exits: [{ id: 'e', name: 'Garden door', outline: box(8, 0, 10, 0.1) }],
    room: ROOM,
  };
  const RANK = { stop: 0, caution: 1, info: 2 };

  it('come worst first', () => {
    fc.assert(
      fc.property(inRoom, fc.double({ min: 1.5, max: 3, noNaN: true }), (spot, heightM) => {
        const cautions = markCautions({ ...INPUT, mark: { ...INPUT.mark, spot, heightM } });
        const ranks = cautions.map((caution) => RANK[caution.level]);
        expect(ranks).toEqual([...ranks].sort());
        expect(new Set(cautions.map((caution) => caution.id)).size).toBe(cautions.length);
      }),
    );
  });

  it('never use a word that promises anything, and always name a source', () => {
    const everywhere = fc.record({ spot: inRoom, heightM: fc.double({ min: 1, max: 3, noNaN: true }) });
    fc.assert(
      fc.property(everywhere, fc.boolean(), fc.boolean(), (place, known, drawn) => {
        const cautions: Caution[] = markCautions({
          ...INPUT,
          mark: { ...INPUT.mark, ...place },
          build: known ? INPUT.build : null,
          room: drawn ? ROOM : [],
          exits: drawn ? INPUT.exits : [],
        });
        for (const { title, detail, source, value } of cautions) {
          expect(`${title} ${detail} ${source}`).not.toMatch(
            /\b(safe|safely|compliant|approved|ok|okay|cannot tip)\b/i,
          );
          expect(source.length).toBeGreaterThan(3);
          if (value === null) expect(detail).toMatch(/^Not checked/);
          else expect(detail).toMatch(/\d/);
        }
        if (!known)
          expect(cautions.find((caution) => caution.id === 'tipping')?.detail).toMatch(/^Not checked/);
      }),
    );
  });

  it('in front of the exit: stop first, and the rim is named where people pass', () => {
    const cautions = markCautions(INPUT);
    expect(cautions[0]).toMatchObject({ id: 'exit', level: 'stop' });
    expect(cautions.find((caution) => caution.id === 'rim-height')).toMatchObject({ level: 'caution' });
  });

  it('where nobody can squeeze past, the rim is only a note', () => {
    const levelIn = (widthM: number) =>
      markCautions({
        ...INPUT,
        mark: { spot: { x: 0.5, y: 10 }, heightM: 2.2, tiltDeg: 0 },
        obstacles: [],
        room: box(0, 0, widthM, 20),
      }).find((caution) => caution.id === 'rim-height')?.level;
    expect([levelIn(1.29), levelIn(1.31)]).toEqual(['info', 'caution']);
  });

  it('a low umbrella counts as floor taken, a high one does not', () => {
    const room = box(0, 0, 2, 20);
    const narrow = (heightM: number) =>
      markCautions({
        ...INPUT,
        mark: { spot: { x: 0.8, y: 10 }, heightM, tiltDeg: 0 },
        umbrella: { diameterM: 1.2 },
        build: INPUT.build && { ...INPUT.build, legRadiusM: 0.25 },
        room,
        obstacles: [],
      }).find((caution) => caution.id === 'walkway');
    expect(narrow(2.2)).toMatchObject({ level: 'stop' });
    expect(narrow(2.2)?.value).toBeCloseTo(0.6, 6);
    expect(narrow(2.8)).toBeUndefined();
  });

  it('a mark on a table is called that', () => {
    const cautions = markCautions({ ...INPUT, mark: { ...INPUT.mark, spot: { x: 9, y: 6 } } });
    expect(cautions.find((caution) => caution.id === 'on-feature')?.detail).toMatch(/Table 4/);
  });
});
