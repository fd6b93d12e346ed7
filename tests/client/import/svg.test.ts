import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomFromShapes } from '../../../client/import/room-from-shapes.ts';
import { shapesFromSvg } from '../../../client/import/shapes-from-svg.ts';
import type { SvgNode } from '../../../client/import/svg-node.ts';
import { numbersIn, svgLength } from '../../../client/import/svg-numbers.ts';
import { svgPath } from '../../../client/import/svg-path.ts';
import { type ParsedElement, svgRoot } from '../../../client/import/svg-root.ts';
import { svgTransform } from '../../../client/import/svg-transform.ts';
import { areaOf } from '../../../core/geometry/polygon.ts';
import type { Spot } from '../../../core/geometry/spot.ts';

const el = (
  name: string,
  attributes: Readonly<Record<string, string | number>> = {},
  ...children: readonly SvgNode[]
): SvgNode => ({
  name,
  attributes: new Map(Object.entries(attributes).map(([key, value]) => [key, String(value)])),
  children,
});

function drawn(root: SvgNode) {
  const read = shapesFromSvg(root);
  if (read.kind === 'trouble') throw new Error(read.reason);
  return read;
}

const rounded = (spots: readonly Spot[] | undefined) =>
  spots?.map(({ x, y }) => [Number(x.toFixed(6)) + 0, Number(y.toFixed(6)) + 0]);

describe('units of an SVG drawing', () => {
  const hall = (attributes: Readonly<Record<string, string>>) =>
    drawn(el('svg', attributes, el('rect', { x: 1, y: 2, width: 18, height: 12 })));

  it('are millimetres of the sheet where width and height are lengths', () => {
    const read = hall({ width: '200mm', height: '20cm', viewBox: '0 0 20 20' });
    expect(read.unit).toBe('mm');
    expect(read.boxNative).toEqual({ left: 10, top: 20, right: 190, bottom: 140 });
    // CSS Values and Units 4, section 6.2: 1 in = 96 px = 72 pt = 6 pc = 25.4 mm.
    expect(hall({ width: '96pt', height: '8pc' }).boxNative.left).toBeCloseTo(25.4 / 96, 12);
    expect(hall({ width: '1in', height: '1in', viewBox: '1 2 10 10' }).boxNative).toMatchObject({
      left: 0,
      top: 0,
    });
  });

  it('are asked for where they are pixels, parts of something, or not given', () => {
    const given = [
      {},
      { width: '200', height: '200' },
      { width: '200px', height: '9px' },
      { width: '100%', height: '9mm' },
    ];
    for (const attributes of given) {
      expect(hall({ ...attributes, viewBox: '0 0 20 20' })).toMatchObject({
        unit: null,
        boxNative: { left: 1, top: 2, right: 19, bottom: 14 },
      });
    }
    expect(svgLength('3em')).toEqual({ value: 3, unit: null });
    expect(svgLength('wide')).toBeNull();
    expect(svgLength(undefined)).toBeNull();
  });
});

describe('shapes of an SVG drawing', () => {
  it('rings and lines of every kind', () => {
    const { shapes } = drawn(
      el(
        'svg',
        {},
        el(
          'g',
          { id: 'walls' },
          el('polygon', { points: '0,0 4 0 4-3' }),
          el('polyline', { points: '0 0 1 0 1 1' }),
        ),
        el('line', { x1: 1, y1: 2, x2: 3, y2: 4, id: 'rope' }),
        el('circle', { cx: 1, cy: 1, r: 2 }),
        el('ellipse', { cx: 1, cy: 1, rx: 2, ry: 1 }),
        el('path', { d: 'M0 0h2v2h-2z' }),
        el('polyline', { points: '0 0 1 0 1 1 0 0' }),
      ),
    );
    expect(shapes.map(({ name, closed, outline }) => [name, closed, outline.length])).toEqual([
      ['walls', true, 3],
      ['walls', false, 3],
      ['rope', false, 2],
      ['', true, 48],
      ['', true, 48],
      ['', true, 4],
      ['', true, 3],
    ]);
  });

  it('transforms go from the inside out', () => {
    const rect = el('rect', { width: 2, height: 1, transform: 'translate(10 0) rotate(90)' });
    const { shapes } = drawn(el('svg', {}, el('g', { transform: 'scale(2)' }, rect)));
    expect(rounded(shapes[0]?.outline)).toEqual([
      [20, 0],
      [20, 4],
      [18, 4],
      [18, 0],
    ]);
  });

  it('each transform is the matrix of the standard (SVG 1.1, section 7.6)', () => {
    const matrix = (text: string) =>
      Object.values(svgTransform(text)).map((value) => Number(value.toFixed(6)) + 0);
    expect(matrix('matrix(1,2,3,4,5,6)')).toEqual([1, 2, 3, 4, 5, 6]);
    expect(matrix('translate(3)')).toEqual([1, 0, 0, 1, 3, 0]);
    expect(matrix('scale(3)')).toEqual([3, 0, 0, 3, 0, 0]);
    expect(matrix('rotate(30)')).toEqual([0.866025, 0.5, -0.5, 0.866025, 0, 0]);
    expect(matrix('rotate(90, 1, 1)')).toEqual([0, 1, -1, 0, 2, 0]);
    expect(matrix('skewX(45)')).toEqual([1, 0, 1, 1, 0, 0]);
    expect(matrix('skewY(45)')).toEqual([1, 1, 0, 1, 0, 0]);
    expect(matrix('turn(45) nonsense')).toEqual([1, 0, 0, 1, 0, 0]);
  });

  it('what is hidden or only defined is not drawn; what cannot be read is counted', () => {
    const rect = el('rect', { width: 18, height: 12 });
    const read = drawn(
      el(
        'svg',
        {},
        rect,
        el('defs', {}, rect),
        el('g', { display: 'none' }, rect),
        el('g', { style: 'fill:red; display: none' }, rect),
        el('script', {}, rect),
        el('clipPath', {}, rect),
        el('foreignObject', {}, rect),
        el('use', { href: 'http://elsewhere.invalid/a.svg#b' }),
        el('image', { href: 'http://elsewhere.invalid/a.png' }),
        el('text'),
      ),
    );
    expect(read.shapes).toHaveLength(1);
    expect(read.leftOut).toBe(4);
  });

  it('a hall with tables in millimetres becomes a room', () => {
    const { shapes, unit } = drawn(
      el(
        'svg',
        { width: '18000mm', height: '12000mm', viewBox: '0 0 1800 1200' },
        el('rect', { id: 'hall', width: 1800, height: 1200 }),
        el('circle', { id: 'cake', cx: 900, cy: 300, r: 60 }),
        el('rect', {
          id: 'bar',
          x: -200,
          y: -40,
          width: 400,
          height: 80,
          transform: 'translate(1500 900) rotate(30)',
        }),
      ),
    );
    expect(unit).toBe('mm');
    const room = roomFromShapes(shapes, 0.001);
    expect(room).toMatchObject({ kind: 'room', widthM: 18, depthM: 12 });
    const features = room.kind === 'room' ? room.features : [];
    expect(features.map(({ name }) => name)).toEqual(['bar', 'cake']);
    const [bar] = features;
    expect(bar?.turnDeg).toBeCloseTo(30, 9);
    expect(
      bar?.shape.kind === 'box' && [bar.shape.widthM, bar.shape.depthM].map((side) => Math.round(side * 1e6)),
    ).toEqual([4e6, 0.8e6]);
  });
});

describe('paths', () => {
  const outlines = (data: string) => svgPath(data, 1e5).map(({ outline }) => rounded(outline));

  it('all ways of writing one ring are the same ring', () => {
    const ring = [
      [
        [0, 0],
        [2, 0],
        [2, 1],
        [0, 1],
      ],
    ];
    for (const data of [
      'M0 0 L2 0 L2 1 L0 1 Z',
      'M0 0 2 0 2 1 0 1z',
      'm0,0 2,0 0,1-2,0z',
      'M0 0H2V1H0Z',
      'M0 0h2v1h-2z',
      'M 0.0.0L2e0.0L2 1L.0 1Z',
    ])
      expect(outlines(data)).toEqual(ring);
  });

  it('a second piece begins where the first one did, and an error ends the drawing', () => {
    expect(outlines('m1 1h1v1z h-1 v-1')).toEqual([
      [
        [1, 1],
        [2, 1],
        [2, 2],
      ],
      [
        [1, 1],
        [0, 1],
        [0, 0],
      ],
    ]);
    expect(outlines('M0 0 L1 1 L2 Z L9 9')).toEqual([
      [
        [0, 0],
        [1, 1],
      ],
    ]);
    expect(outlines('nonsense')).toEqual([]);
  });

  it('the ends of curves are exact, their middles where the formula puts them', () => {
    const middle = (data: string) => {
      const [outline = []] = outlines(data);
      return [outline[0], outline[(outline.length - 1) / 2], outline.at(-1)];
    };
    // De Casteljau by hand at t = ½: (P0 + 3 P1 + 3 P2 + P3) / 8, and (P0 + 2 P1 + P2) / 4.
    expect(middle('M0 0C0 8 8 8 8 0')).toEqual([
      [0, 0],
      [4, 6],
      [8, 0],
    ]);
    expect(middle('M0 0c0 8 8 8 8 0')).toEqual([
      [0, 0],
      [4, 6],
      [8, 0],
    ]);
    expect(middle('M0 0Q4 8 8 0')).toEqual([
      [0, 0],
      [4, 4],
      [8, 0],
    ]);
    const smooth = outlines('M0 0C0 8 8 8 8 0S16-8 16 0');
    expect(smooth).toEqual(outlines('M0 0C0 8 8 8 8 0C8-8 16-8 16 0'));
    expect(outlines('M0 0Q4 8 8 0T16 0')).toEqual(outlines('M0 0Q4 8 8 0Q12-8 16 0'));
  });

  it('arcs: the four that join two points (SVG 1.1, section 8.3.8), flags with nothing between them', () => {
    // From (0,0) to (10,10) with radius 10 the centre is (10,0) or (0,10); far side of the circle or near side.
    const extremes = (data: string) => {
      const [outline = []] = outlines(data);
      const [xs, ys] = [outline.map(([x = 0]) => x), outline.map(([, y = 0]) => y)];
      return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    };
    expect(extremes('M0 0A10 10 0 0 0 10 10')).toEqual([0, 10, 0, 10]);
    expect(extremes('M0 0A10 10 0 1 0 10 10')).toEqual([-10, 10, 0, 20]);
    expect(extremes('M0 0A10 10 0 1 1 10 10')).toEqual([0, 20, -10, 10]);
    expect(outlines('M0 0a10 10 0 1110 10')).toEqual(outlines('M0 0A10 10 0 1 1 10 10'));
    const sideOf = (sweep: 0 | 1) => outlines(`M0 0A10 10 0 0 ${sweep} 10 10`)[0]?.[3] ?? [0, 0];
    expect((sideOf(0)[1] ?? 0) > (sideOf(0)[0] ?? 0)).toBe(true);
    expect((sideOf(1)[1] ?? 0) < (sideOf(1)[0] ?? 0)).toBe(true);
    // A radius too small is made as large as it must be (F.6.6): a half circle.
    expect(extremes('M0 0A1 1 0 0 1 10 0')).toEqual([0, 10, -5, 0]);
    expect(outlines('M0 0A0 5 0 0 1 10 0')).toEqual([
      [
        [0, 0],
        [10, 0],
      ],
    ]);
  });

  it('two half circles are a circle', () => {
    const [piece] = svgPath('M-3 0a3 3 0 0 1 6 0a3 3 0 0 1-6 0z', 1e5);
    expect(Math.abs(areaOf(piece?.outline ?? []) - 9 * Math.PI)).toBeLessThan(0.1);
  });

  it('whatever the text: numbers and pieces, never a throw', () => {
    const letters = fc.string({ unit: fc.constantFrom(...'MmLlHhVvCcSsQqTtAaZz0123456789.-+eE, ') });
    fc.assert(
      fc.property(letters, (data) => {
        expect(svgPath(data, 1e4).every(({ outline }) => outline.length > 0)).toBe(true);
        expect(numbersIn(data, 50).every((value) => !Number.isNaN(value))).toBe(true);
      }),
    );
  });
});

describe('an SVG file that means harm', () => {
  const parsed = (localName: string, children: readonly ParsedElement[] = []): ParsedElement => ({
    localName,
    attributes: [],
    children,
  });
  const reasonOf = (read: ReturnType<typeof svgRoot>) => ('kind' in read ? read.reason : 'no trouble');

  it('with entities of its own is refused before it is read', () => {
    const bomb = '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><svg>&b;</svg>';
    const mustNotRead = () => {
      throw new Error('it was read');
    };
    expect(reasonOf(svgRoot(bomb, mustNotRead))).toMatch(/abbreviations of its own/);
  });

  it('that is broken or too large gives a reason', () => {
    expect(reasonOf(svgRoot('<svg', () => null))).toMatch(/broken/);
    const many = Array.from({ length: 60_000 }, () => parsed('rect'));
    expect(reasonOf(svgRoot('<svg/>', () => parsed('svg', many)))).toMatch(/more than 50000 things/);
  });

  it('keeps nothing of what is inside scripts and the like', () => {
    const root = svgRoot('<svg/>', () =>
      parsed('svg', [
        parsed('script', [parsed('rect')]),
        parsed('foreignObject', [parsed('rect')]),
        parsed('g', [parsed('rect')]),
      ]),
    );
    if ('kind' in root) throw new Error(root.reason);
    expect(root.children.map(({ name, children }) => [name, children.length])).toEqual([
      ['script', 0],
      ['foreignObject', 0],
      ['g', 1],
    ]);
  });

  it('texts made to be searched for ever are read at once', () => {
    const long = 1_000_000;
    const attributes = {
      width: `1${' '.repeat(long)}!`,
      transform: `${'scale('.repeat(long)}${'a'.repeat(long)}`,
      style: `display${' '.repeat(long)};`.repeat(3),
      points: '1 '.repeat(long),
      d: `M${'1 '.repeat(long)}`,
    };
    const began = performance.now();
    for (const name of ['rect', 'polygon', 'path', 'g'])
      expect(shapesFromSvg(el('svg', attributes, el(name, attributes)))).toMatchObject({ kind: 'trouble' });
    // Searched the wrong way, one of them alone takes hours.
    expect(performance.now() - began).toBeLessThan(20_000);
  });

  it('groups in groups without end, and numbers without bounds, end in a reason', () => {
    let deep = el('rect', { width: 1, height: 1 });
    for (let level = 0; level < 90; level++) deep = el('g', {}, deep);
    expect(shapesFromSvg(el('svg', {}, deep))).toMatchObject({ kind: 'trouble' });
    const huge = el('rect', { x: '1e308', y: '1e308', width: '1e308', height: '9e999' });
    expect(shapesFromSvg(el('svg', {}, huge))).toMatchObject({ kind: 'trouble' });
    const far = el('g', { transform: 'scale(1e300) matrix(1e300)' }, el('rect', { width: 2, height: 2 }));
    expect(shapesFromSvg(el('svg', {}, far))).toMatchObject({ kind: 'trouble' });
    const long = el('path', { d: `M0 0${'l1 1 1-1'.repeat(60_000)}` });
    expect(shapesFromSvg(el('svg', {}, long))).toMatchObject({
      reason: expect.stringMatching(/more than 100000 points/),
    });
    expect(shapesFromSvg(el('html'))).toMatchObject({ kind: 'trouble' });
  });

  it('any attributes on any elements: shapes or a reason, every corner a place', () => {
    const keys = [
      'x',
      'y',
      'width',
      'height',
      'r',
      'cx',
      'points',
      'd',
      'transform',
      'viewBox',
      'style',
      'id',
    ];
    const value = fc.oneof(
      fc.string(),
      fc.double().map(String),
      fc.constantFrom('1e309', 'M0 0L1e308 1e308Z', 'rotate(1e308)', '5mm'),
    );
    const element = fc
      .tuple(
        fc.constantFrom('rect', 'circle', 'path', 'polygon', 'g', 'script'),
        fc.dictionary(fc.constantFrom(...keys), value),
      )
      .map(([name, attributes]) => el(name, attributes));
    fc.assert(
      fc.property(
        fc.array(element, { maxLength: 6 }),
        fc.dictionary(fc.constantFrom(...keys), value),
        (children, own) => {
          const read = shapesFromSvg(el('svg', own, el('g', own, ...children)));
          if (read.kind === 'trouble') expect(read.reason.length).toBeGreaterThan(10);
          else
            for (const { x, y } of read.shapes.flatMap(({ outline }) => outline))
              expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
        },
      ),
    );
  });
});
