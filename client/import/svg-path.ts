import type { Spot } from '../../core/geometry/spot.ts';
import { arcPoints, cubicPoints, quadraticPoints } from './curves.ts';
import { svgArc } from './svg-arc.ts';

/** One line or ring of a path. */
export interface PathPiece {
  readonly outline: Spot[];
  closed: boolean;
}

/** How many numbers each command takes (SVG 1.1, section 8.3). */
const TAKES: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};

/** Numbers of a command; the two flags of an arc may stand without anything between them. */
function numbersOf(command: string, text: string, most: number): number[] {
  const numbers: number[] = [];
  const pattern = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/y;
  const between = /[\s,]*/y;
  for (let at = 0; at < text.length && numbers.length < most; ) {
    between.lastIndex = at;
    between.exec(text);
    at = between.lastIndex;
    const place = numbers.length % 7;
    if (command === 'A' && (place === 3 || place === 4) && (text[at] === '0' || text[at] === '1')) {
      numbers.push(Number(text[at++]));
      continue;
    }
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found) break;
    numbers.push(Number(found[0]));
    at = pattern.lastIndex;
  }
  return numbers;
}

/** Where the pen is while a path is drawn. */
interface Pen {
  at: Spot;
  start: Spot;
  /** Last control point of a curve, for the commands that go on smoothly; null after anything else. */
  cubic: Spot | null;
  quadratic: Spot | null;
  piece: PathPiece | null;
}

const mirrored = (about: Spot, control: Spot | null): Spot =>
  control ? { x: 2 * about.x - control.x, y: 2 * about.y - control.y } : about;

/** The points that a command adds after where the pen is, and the control point that it leaves behind. */
function drawn(
  command: string,
  pen: Pen,
  numbers: readonly number[],
  relative: boolean,
): { points: Spot[]; cubic?: Spot; quadratic?: Spot } {
  const { at } = pen;
  const base = relative ? at : { x: 0, y: 0 };
  const pick = (index: number): Spot => ({
    x: base.x + (numbers[index] ?? Number.NaN),
    y: base.y + (numbers[index + 1] ?? Number.NaN),
  });
  switch (command) {
    case 'H':
      return { points: [{ x: base.x + (numbers[0] ?? Number.NaN), y: at.y }] };
    case 'V':
      return { points: [{ x: at.x, y: base.y + (numbers[0] ?? Number.NaN) }] };
    case 'C':
      return { points: cubicPoints(at, pick(0), pick(2), pick(4)), cubic: pick(2) };
    case 'S':
      return { points: cubicPoints(at, mirrored(at, pen.cubic), pick(0), pick(2)), cubic: pick(0) };
    case 'Q':
      return { points: quadraticPoints(at, pick(0), pick(2)), quadratic: pick(0) };
    case 'T': {
      const control = mirrored(at, pen.quadratic);
      return { points: quadraticPoints(at, control, pick(0)), quadratic: control };
    }
    case 'A': {
      const to = pick(5);
      const arc = svgArc(at, numbers, to);
      return { points: arc ? [...arcPoints(arc.ellipse, arc.fromDeg, arc.sweepDeg).slice(1, -1), to] : [to] };
    }
    default:
      return { points: [pick(0)] };
  }
}

/** Does one command; a move begins a new piece. @returns how many points it added, at least one for the time it took */
function act(
  pieces: PathPiece[],
  pen: Pen,
  command: string,
  numbers: readonly number[],
  relative: boolean,
): number {
  if (command === 'Z') {
    if (pen.piece) pen.piece.closed = true;
    Object.assign(pen, { at: pen.start, piece: null, cubic: null, quadratic: null });
    return 1;
  }
  const { points, cubic = null, quadratic = null } = drawn(command, pen, numbers, relative);
  const end = points.at(-1) ?? pen.at;
  if (command === 'M') {
    pen.start = end;
    pen.piece = null;
  } else {
    if (!pen.piece) {
      pen.piece = { outline: [pen.at], closed: false };
      pieces.push(pen.piece);
    }
    pen.piece.outline.push(...points);
  }
  Object.assign(pen, { at: end, cubic, quadratic });
  return points.length;
}

/**
 * The pieces of a path's `d`, curves as short straight lines. As the standard says, what follows an error is not drawn
 * (SVG 1.1, section F.2).
 *
 * @param mostPoints reading ends when the pieces hold more points than this
 */
export function svgPath(data: string, mostPoints: number): PathPiece[] {
  const pieces: PathPiece[] = [];
  const pen: Pen = { at: { x: 0, y: 0 }, start: { x: 0, y: 0 }, cubic: null, quadratic: null, piece: null };
  let points = 0;
  for (const [, letter = '', rest = ''] of data.matchAll(/([a-df-zA-DF-Z])([^a-df-zA-DF-Z]*)/g)) {
    let command = letter.toUpperCase();
    const takes = TAKES[command];
    if (takes === undefined) break;
    const relative = letter !== command;
    const numbers = numbersOf(command, rest, takes * (mostPoints + 1));
    if (takes === 0) act(pieces, pen, command, [], relative);
    else if (numbers.length < takes) break;
    for (let at = 0; takes > 0 && at + takes <= numbers.length; at += takes) {
      points += act(pieces, pen, command, numbers.slice(at, at + takes), relative);
      if (points > mostPoints) return pieces;
      // More pairs after a move are lines.
      if (command === 'M') command = 'L';
    }
  }
  return pieces;
}
