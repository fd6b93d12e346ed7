import { degFromRad, wrap180 } from '../geometry/angle.ts';
import { add, distance, rotate, type Spot, scale, subtract } from '../geometry/spot.ts';
import { isPositive, keepFinite } from '../units/finite.ts';
import { valueInWords } from './room-outline.ts';

/** A place in a picture [px]: x to the right, y down. */
export type Pixel = { readonly x: number; readonly y: number };

/** A wall (or anything of known length) found in a picture of the plan, seen straight from above. */
export type TracedLine = {
  readonly a: Pixel;
  readonly b: Pixel;
  /** Its true length [m] */
  readonly lengthM: number;
  /** Bearing that the way from a to b shall have on the plan [°], 90 for level; left out: as in the picture */
  readonly bearingDeg?: number;
};

/** What would make a trace better; null for nothing. */
export type TraceAdvice = 'longer-line' | 'finer-taps' | null;

/** A picture with its scale. */
export type Trace = {
  readonly mPerPx: number;
  readonly baselinePx: number;
  /** How far off any length on the traced plan may be, as a share of it: √2·σ/D [1], one standard deviation */
  readonly errorFraction: number;
  readonly advice: TraceAdvice;
  /** How far the picture is turned clockwise, about a [°] */
  readonly turnDeg: number;
  /** Where on the plan a place in the picture lies [m] */
  readonly toPlan: (pixel: Pixel) => Spot;
  /** Where in the picture a spot of the plan lies [px] */
  readonly toPicture: (spot: Spot) => Pixel;
};

/** How well a finger with a magnified view hits a pixel, one standard deviation [px]. @source own-estimate */
const TAP_SIGMA_PX = 3;
/** A shorter line asks for a longer one [px]. @source own-rule */
const SHORT_LINE_PX = 300;
/** From here on the error is worth a word [1]: 40 cm in a room of 20 m. @source own-rule */
const LARGE_ERROR = 0.02;
/** Two taps nearer than this are one [px]. @source own-rule */
const LEAST_LINE_PX = 10;
const MOST_LENGTH_M = 300;

function lineFault({ a, b, lengthM, bearingDeg }: TracedLine, baselinePx: number): string | null {
  const numbers = [a.x, a.y, b.x, b.y, bearingDeg ?? 0];
  if (!numbers.every(Number.isFinite)) return 'A traced point is not a number.';
  if (!(baselinePx >= LEAST_LINE_PX)) {
    return `The two points are ${valueInWords(baselinePx, ' px')} apart; take points far from each other.`;
  }
  if (isPositive(lengthM) && lengthM <= MOST_LENGTH_M) return null;
  return `The length is ${valueInWords(lengthM, ' m')}; above 0 and up to ${MOST_LENGTH_M} m.`;
}

function adviceFor(baselinePx: number, errorFraction: number): TraceAdvice {
  if (baselinePx < SHORT_LINE_PX) return 'longer-line';
  return errorFraction > LARGE_ERROR ? 'finer-taps' : null;
}

/**
 * The scale of a picture of the venue's plan, from two points and the true length between them. The
 * picture's top left is the plan's (0, 0) as long as nothing is turned; a turn is about point a, which stays.
 *
 * ASSUMPTION: the picture shows the floor straight from above, with one scale in all directions.
 *
 * @param sigmaPx how far off a tap is, one standard deviation [px]; not above zero counts as 3
 * @returns the trace; else the reason in a sentence
 * @source two-point-scale
 */
export function createTrace(
  line: TracedLine,
  sigmaPx: number = TAP_SIGMA_PX,
): Trace | { readonly reason: string } {
  const { a, b, lengthM, bearingDeg } = line;
  const baselinePx = distance(a, b);
  const reason = lineFault(line, baselinePx);
  if (reason !== null) return { reason };
  const mPerPx = lengthM / baselinePx;
  const errorFraction = keepFinite(
    (Math.SQRT2 * (isPositive(sigmaPx) ? sigmaPx : TAP_SIGMA_PX)) / baselinePx,
  );
  const drawnDeg = degFromRad(Math.atan2(b.x - a.x, a.y - b.y));
  const turnDeg = bearingDeg === undefined ? 0 : wrap180(bearingDeg - drawnDeg);
  const corner = scale(a, mPerPx);
  return {
    mPerPx,
    baselinePx,
    errorFraction,
    advice: adviceFor(baselinePx, errorFraction),
    turnDeg,
    toPlan: (pixel) => add(corner, rotate(scale(subtract(pixel, a), mPerPx), turnDeg)),
    toPicture: (spot) => add(a, scale(rotate(subtract(spot, corner), -turnDeg), 1 / mPerPx)),
  };
}

/**
 * A second known length held against a traced plan: the check that the scale and the view are right.
 *
 * @param lengthM what it truly is [m]
 * @returns what the plan gives [m], and by which share that is too long (+) or too short [1]; null where there
 *   is nothing to compare
 * @source two-point-scale
 */
export function checkedAgainst(
  toPlan: (pixel: Pixel) => Spot | null,
  { a, b, lengthM }: { readonly a: Pixel; readonly b: Pixel; readonly lengthM: number },
): { readonly tracedM: number; readonly offFraction: number } | null {
  const [from, to] = [toPlan(a), toPlan(b)];
  if (!from || !to || !isPositive(lengthM)) return null;
  const tracedM = distance(from, to);
  return { tracedM, offFraction: keepFinite(tracedM / lengthM - 1) };
}
