import type { Spot } from '../../core/geometry/spot.ts';
import { type Affine, apply, compose, shift, stretch } from './affine.ts';
import { ellipseRing } from './curves.ts';
import { metresPer } from './length-unit.ts';
import { type DrawnPlan, type FileTrouble, trouble } from './plan-file.ts';
import { createShapeList, MOST_POINTS, type ShapeList } from './shape-list.ts';
import type { SvgNode } from './svg-node.ts';
import { numbersIn, svgLength } from './svg-numbers.ts';
import { svgPath } from './svg-path.ts';
import { svgTransform } from './svg-transform.ts';

/** Elements that only hold others. */
const HOLDERS = new Set(['g', 'a', 'switch']);
/** Elements that are drawn, but are no line: counted as left out. Every other unknown one draws nothing itself. */
const NOT_READ = new Set(['use', 'text', 'image', 'foreignObject', 'svg']);
/** Groups within groups. */
const DEEPEST = 60;

interface Piece {
  readonly outline: readonly Spot[];
  readonly closed: boolean;
}

const spotsIn = (text = ''): Spot[] => {
  const numbers = numbersIn(text, 2 * MOST_POINTS + 2);
  return Array.from({ length: numbers.length >> 1 }, (_, index) => ({
    x: numbers[2 * index] ?? 0,
    y: numbers[2 * index + 1] ?? 0,
  }));
};

/** The lines and rings of one element; null for an element that is none. */
function piecesOf({ name, attributes }: SvgNode): readonly Piece[] | null {
  const number = (key: string) => svgLength(attributes.get(key))?.value ?? 0;
  const ring = (across: number, along: number): Piece[] => [
    {
      outline: ellipseRing({ centre: { x: number('cx'), y: number('cy') }, across, along, turnDeg: 0 }),
      closed: true,
    },
  ];
  switch (name) {
    case 'rect': {
      const [x, y, right, bottom] = [
        number('x'),
        number('y'),
        number('x') + number('width'),
        number('y') + number('height'),
      ];
      const outline = [
        { x, y },
        { x: right, y },
        { x: right, y: bottom },
        { x, y: bottom },
      ];
      return [{ outline, closed: true }];
    }
    case 'circle':
      return ring(number('r'), number('r'));
    case 'ellipse':
      return ring(number('rx'), number('ry'));
    case 'line':
      return [
        {
          outline: [
            { x: number('x1'), y: number('y1') },
            { x: number('x2'), y: number('y2') },
          ],
          closed: false,
        },
      ];
    case 'polygon':
    case 'polyline':
      return [{ outline: spotsIn(attributes.get('points')), closed: name === 'polygon' }];
    case 'path':
      return svgPath(attributes.get('d') ?? '', MOST_POINTS);
    default:
      return null;
  }
}

/** Not to be seen, by attribute or by its own style. */
const isHidden = ({ attributes }: SvgNode) =>
  attributes.get('display') === 'none' ||
  attributes.get('visibility') === 'hidden' ||
  /(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*hidden)/.test(attributes.get('style') ?? '');

function gather(node: SvgNode, outer: Affine, name: string, depth: number, list: ShapeList): void {
  if (!list.goOn() || isHidden(node)) return;
  const place = compose(outer, svgTransform(node.attributes.get('transform')));
  const own = node.attributes.get('id') ?? name;
  if (HOLDERS.has(node.name)) {
    if (depth >= DEEPEST) list.leaveOut();
    else for (const child of node.children) gather(child, place, own, depth + 1, list);
    return;
  }
  const pieces = piecesOf(node);
  if (!pieces && NOT_READ.has(node.name)) list.leaveOut();
  for (const { outline, closed } of pieces ?? []) {
    if (!list.goOn()) return;
    list.add(
      outline.map((spot) => apply(place, spot)),
      closed,
      own,
    );
  }
}

/** From the drawing's own units to millimetres, where the sheet's size says how large they are; else null. */
function toMillimetres(root: SvgNode): Affine | null {
  const [left = 0, top = 0, wide = 0, high = 0] = numbersIn(root.attributes.get('viewBox') ?? '', 4);
  const width = svgLength(root.attributes.get('width'));
  const height = svgLength(root.attributes.get('height'));
  if (!width?.unit || !height?.unit) return null;
  const widthMm = (width.value * metresPer(width.unit)) / metresPer('mm');
  const heightMm = (height.value * metresPer(height.unit)) / metresPer('mm');
  // Without a viewBox a drawing's unit is a pixel, of which 96 are an inch (CSS Values 4).
  if (!(wide > 0 && high > 0)) return stretch(25.4 / 96, 25.4 / 96);
  // As drawn by default: as large as fits both ways, never stretched out of shape.
  const scale = Math.min(widthMm / wide, heightMm / high);
  return scale > 0 ? compose(stretch(scale, scale), shift(-left, -top)) : null;
}

/**
 * An SVG drawing as shapes. In millimetres of the sheet where width and height are given as lengths; else in the
 * drawing's own units, and the unit has to be asked for. Texts, pictures and linked parts are counted as left out; scripts and
 * styles draw nothing and are not looked into.
 *
 * @param root the `svg` element
 */
export function shapesFromSvg(root: SvgNode): DrawnPlan | FileTrouble {
  if (root.name !== 'svg')
    return trouble('The file is not an SVG drawing, though it looks like one from outside.');
  const list = createShapeList();
  const scale = toMillimetres(root);
  const sheet: SvgNode = { name: 'g', attributes: new Map(), children: root.children };
  gather(sheet, scale ?? stretch(1, 1), '', 0, list);
  return list.plan(scale ? 'mm' : null);
}
