import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LENGTH_UNITS, metresPer } from '../../../client/import/length-unit.ts';
import type { DrawnPlan } from '../../../client/import/plan-file.ts';
import { roomFromShapes } from '../../../client/import/room-from-shapes.ts';
import { MOST_SHAPES } from '../../../client/import/shape-list.ts';
import { shapesFromDxf } from '../../../client/import/shapes-from-dxf.ts';
import { areaOf } from '../../../core/geometry/polygon.ts';
import { circle, dxfText, line, lwpolyline, type Pairs } from './dxf-text.ts';

const HALL = [
  [0, 0],
  [18000, 0],
  [18000, 12000],
  [0, 12000],
] as const;

function shapes(text: string): DrawnPlan {
  const read = shapesFromDxf(text);
  if (read.kind === 'trouble') throw new Error(read.reason);
  return read;
}

function room(text: string, metresPerUnit?: number) {
  const { shapes: drawn, unit } = shapes(text);
  const found = roomFromShapes(drawn, metresPerUnit ?? metresPer(unit ?? 'm'));
  if (found.kind === 'trouble') throw new Error(found.reason);
  return found;
}

describe('units of a DXF drawing', () => {
  // Group code 70 of $INSUNITS: DXF reference, HEADER section; 1 in = 25.4 mm exactly (agreement of 1959).
  it.each([
    [1, 'in', 0.0254],
    [2, 'ft', 0.3048],
    [4, 'mm', 0.001],
    [5, 'cm', 0.01],
    [6, 'm', 1],
    [10, 'yd', 0.9144],
    [14, 'dm', 0.1],
  ] as const)('$INSUNITS %i is %s', (insunits, unit, metres) => {
    expect(shapes(dxfText([lwpolyline(HALL)], { insunits })).unit).toBe(unit);
    expect(metresPer(unit)).toBeCloseTo(metres, 12);
    expect(LENGTH_UNITS.map(([known]) => known)).toContain(unit);
  });

  it('are asked for when the drawing has none, says 0, or says what no room is drawn in', () => {
    for (const options of [{}, { insunits: 0 }, { insunits: 18 }, { insunits: Number.NaN }])
      expect(shapes(dxfText([lwpolyline(HALL)], options)).unit).toBeNull();
  });

  it('18000 × 12000 in millimetres is a hall of 18 × 12 m', () => {
    const hall = room(dxfText([lwpolyline(HALL)], { insunits: 4 }));
    expect(hall).toMatchObject({ widthM: 18, depthM: 12, features: [], choices: 1 });
    expect(areaOf(hall.outline)).toBeCloseTo(216, 9);
  });
});

describe('shapes of a DXF drawing', () => {
  it('have y down: what is drawn at the top stays at the top', () => {
    const hall = room(
      dxfText([lwpolyline(HALL, 'walls'), circle(2000, 11000, 900, 'tables')], { insunits: 4 }),
    );
    expect(hall.features).toHaveLength(1);
    const [table] = hall.features;
    expect(table?.name).toBe('tables');
    expect(table?.at.x).toBeCloseTo(2, 3);
    expect(table?.at.y).toBeCloseTo(1, 3);
    expect(table?.shape.kind).toBe('round');
    expect(table?.shape.kind === 'round' && table.shape.radiusM).toBeCloseTo(0.9, 3);
  });

  it('an L drawn line by line, in any order and direction, with corners that miss by a centimetre, is one room', () => {
    // 18 × 12 m without its 6 × 4 m corner: 192 m².
    const corners = [
      [0, 0],
      [18, 0],
      [18, 8],
      [12, 8],
      [12, 12],
      [0, 12],
    ] as const;
    const walls = corners.map((from, index): Pairs => {
      const [x, y] = corners[(index + 1) % corners.length] ?? from;
      const to = [x + 0.007, y - 0.007] as const;
      return index % 2 === 0 ? line(from, to, 'walls') : line(to, from, 'walls');
    });
    const order = [3, 0, 5, 1, 4, 2];
    const hall = room(
      dxfText(
        order.map((index) => walls[index] ?? []),
        { insunits: 6 },
      ),
    );
    expect(hall.outline).toHaveLength(6);
    expect(Math.abs(areaOf(hall.outline) - 192)).toBeLessThan(0.5);
    expect(hall.leftOut.open).toBe(0);
  });

  it('a line that leads nowhere is counted, not taken', () => {
    const hall = room(dxfText([lwpolyline(HALL), line([1000, 1000], [5000, 1000])], { insunits: 4 }));
    expect(hall.features).toEqual([]);
    expect(hall.leftOut.open).toBe(1);
  });

  it('a bulge of 1 is a half circle to the right of the way (DXF reference, group code 42)', () => {
    const apse: Pairs = [
      [0, 'LWPOLYLINE'],
      [70, 1],
      [10, 0],
      [20, 0],
      [10, 10],
      [20, 0],
      [42, 1],
      [10, 10],
      [20, 10],
      [10, 0],
      [20, 10],
    ];
    const hall = room(dxfText([apse], { insunits: 6 }));
    expect(hall.widthM).toBeCloseTo(15, 2);
    expect(Math.abs(areaOf(hall.outline) - (100 + (Math.PI * 25) / 2))).toBeLessThan(0.3);
  });

  it('arcs and lines together make a round end, and an ellipse is read whole', () => {
    const hall = room(
      dxfText(
        [
          line([0, 0], [10, 0]),
          [
            [0, 'ARC'],
            [8, '0'],
            [10, 10],
            [20, 5],
            [40, 5],
            [50, 270],
            [51, 90],
          ],
          line([10, 10], [0, 10]),
          line([0, 10], [0, 0]),
          [
            [0, 'ELLIPSE'],
            [8, 'bar'],
            [10, 5],
            [20, 5],
            [11, 2],
            [21, 0],
            [40, 0.5],
            [41, 0],
            [42, 2 * Math.PI],
          ],
        ],
        { insunits: 6 },
      ),
    );
    expect(hall.widthM).toBeCloseTo(15, 2);
    expect(hall.features).toHaveLength(1);
    expect(hall.features[0]?.name).toBe('bar');
  });

  it('an old polyline is read with its corners, and one that is never ended ends with the next thing', () => {
    const corner = (x: number, y: number): Pairs => [
      [0, 'VERTEX'],
      [8, '0'],
      [10, x],
      [20, y],
    ];
    const head: Pairs = [
      [0, 'POLYLINE'],
      [8, '0'],
      [66, 1],
      [70, 1],
    ];
    const ring = [head, corner(0, 0), corner(9, 0), corner(9, 6), corner(0, 6)];
    for (const text of [
      dxfText([...ring, [[0, 'SEQEND']]]),
      dxfText(ring),
      dxfText([...ring, line([0, 0], [1, 1])]),
    ])
      expect(room(text, 1)).toMatchObject({ widthM: 9, depthM: 6 });
  });

  it('blocks are put in place, turned and stretched; one that holds itself ends', () => {
    const blocks: Pairs[] = [
      [
        [0, 'BLOCK'],
        [8, '0'],
        [2, 'table'],
        [10, 1],
        [20, 0],
      ],
      lwpolyline(
        [
          [0, -0.4],
          [2, -0.4],
          [2, 0.4],
          [0, 0.4],
        ],
        'table',
      ),
      [[0, 'ENDBLK']],
      [
        [0, 'BLOCK'],
        [2, 'again'],
        [10, 0],
        [20, 0],
      ],
      [
        [0, 'INSERT'],
        [2, 'again'],
        [10, 0],
        [20, 0],
      ],
      [
        [0, 'INSERT'],
        [2, 'again'],
        [10, 0],
        [20, 0],
      ],
      [[0, 'ENDBLK']],
    ];
    const insert: Pairs = [
      [0, 'INSERT'],
      [8, '0'],
      [2, 'table'],
      [10, 5],
      [20, 4],
      [50, 90],
    ];
    const hall = room(
      dxfText(
        [
          lwpolyline([
            [0, 0],
            [18, 0],
            [18, 12],
            [0, 12],
          ]),
          insert,
          [
            [0, 'INSERT'],
            [2, 'again'],
          ],
        ],
        { blocks },
      ),
      1,
    );
    expect(hall.features).toHaveLength(1);
    expect(hall.features[0]?.at.x).toBeCloseTo(5, 9);
    expect(hall.features[0]?.at.y).toBeCloseTo(8, 9);
    // Turned by a quarter: 0.8 m across the plan and 2 m down it.
    expect(hall.features[0]).toMatchObject({ turnDeg: 0, shape: { kind: 'box' } });
    const shape = hall.features[0]?.shape;
    expect(
      shape?.kind === 'box' && [shape.widthM, shape.depthM].map((side) => Number(side.toFixed(6))),
    ).toEqual([0.8, 2]);
  });

  it('agree with those of another reader (dxf-parser 1.1.2) for any lines, rings and circles', () => {
    const number = fc.integer({ min: -1e6, max: 1e6 }).map((value) => value / 8);
    const point = fc.tuple(number, number);
    const thing = fc.oneof(
      fc.tuple(point, point).map(([a, b]) => line(a, b, 'a')),
      fc.array(point, { minLength: 3, maxLength: 6 }).map((points) => lwpolyline(points, 'b')),
      fc.tuple(point, number).map(([[x, y], radius]) => circle(x, y, Math.abs(radius) + 1, 'c')),
    );
    fc.assert(
      fc.property(fc.array(thing, { minLength: 1, maxLength: 8 }), (things) => {
        const text = dxfText(things, { insunits: 6 });
        const other = new DxfParser().parseSync(text);
        const theirs = (other?.entities ?? []).flatMap((entity) => {
          const { vertices, center, radius } = entity as unknown as {
            vertices?: { x: number; y: number }[];
            center?: { x: number; y: number };
            radius?: number;
          };
          if (center && radius)
            return [center.x + radius, center.x - radius, -center.y - radius, -center.y + radius];
          const spots = vertices ?? [];
          return [
            Math.max(...spots.map(({ x }) => x)),
            Math.min(...spots.map(({ x }) => x)),
            Math.min(...spots.map(({ y }) => -y)),
            Math.max(...spots.map(({ y }) => -y)),
          ];
        });
        const read = shapesFromDxf(text);
        const ours = (read.kind === 'shapes' ? read.shapes : []).flatMap(({ outline }) => [
          Math.max(...outline.map(({ x }) => x)),
          Math.min(...outline.map(({ x }) => x)),
          Math.min(...outline.map(({ y }) => y)),
          Math.max(...outline.map(({ y }) => y)),
        ]);
        // A line without length is left out by ours: the rest must be the same.
        const kept = things.filter(
          (pairs) =>
            !(pairs[0]?.[1] === 'LINE' && pairs[2]?.[1] === pairs[4]?.[1] && pairs[3]?.[1] === pairs[5]?.[1]),
        );
        fc.pre(kept.length === things.length);
        expect(ours).toHaveLength(theirs.length);
        for (const [index, value] of ours.entries())
          expect(value).toBeCloseTo(theirs[index] ?? Number.NaN, 5);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a DXF drawing that is none', () => {
  const reason = (text: string) => {
    const read = shapesFromDxf(text);
    return read.kind === 'trouble' ? read.reason : 'no trouble';
  };

  it('says what is wrong and what to do', () => {
    expect(reason(dxfText([]))).toMatch(/no lines that can be read/);
    expect(reason(dxfText([lwpolyline(HALL)]).slice(0, -12))).toMatch(/breaks off in the middle/);
    expect(reason('0\nSECTION\n2\nENTITIES\nhello\nLINE\n')).toMatch(/^Line 5 .* number/);
    expect(
      reason(
        dxfText([
          lwpolyline([
            [1e300, 0],
            [0, 1e300],
            [-1e300, 1],
          ]),
        ]),
      ),
    ).toMatch(/no lines/);
    expect(
      reason(
        dxfText([
          [
            [0, 'LINE'],
            [8, '0'],
            [10, 'x'],
            [20, '1'],
            [11, '2'],
            [21, '3'],
          ],
        ]),
      ),
    ).toMatch(/no lines/);
    expect(reason(dxfText(Array.from({ length: MOST_SHAPES + 1 }, (_, x) => line([x, 0], [x, 1]))))).toMatch(
      /more than 5000 shapes/,
    );
    const long = Array.from({ length: 100_001 }, (_, x) => [x, x % 7] as const);
    expect(reason(dxfText([lwpolyline(long)]))).toMatch(/more than 100000 points/);
  });

  it('blocks that hold one another many times over end in a reason', () => {
    const name = (level: number) => `b${level}`;
    const blocks = Array.from({ length: 8 }, (_, level): Pairs[] => [
      [
        [0, 'BLOCK'],
        [2, name(level)],
      ],
      ...Array.from(
        { length: 60 },
        (): Pairs => [
          [0, 'INSERT'],
          [2, name(level + 1)],
        ],
      ),
      [[0, 'ENDBLK']],
    ]).flat();
    expect(
      reason(
        dxfText(
          [
            [
              [0, 'INSERT'],
              [2, name(0)],
            ],
          ],
          { blocks },
        ),
      ),
    ).toMatch(/too many things/);
  });

  it('whatever is cut out of it or put into it: shapes or a reason, never a throw', () => {
    const whole = dxfText([lwpolyline(HALL), circle(1, 2, 3), line([0, 0], [4, 5])], { insunits: 4 });
    fc.assert(
      fc.property(
        fc.nat(whole.length),
        fc.nat(40),
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.constantFrom('0\nPOLYLINE\n', '0\nBLOCK\n', '0\nEOF\n', '70\n-1\n'),
        ),
        (at, length, put) => {
          const read = shapesFromDxf(whole.slice(0, at) + put + whole.slice(at + length));
          expect(read.kind === 'trouble' ? read.reason.length : read.shapes.length).toBeGreaterThan(0);
        },
      ),
    );
  });
});
