import { wrap180 } from '../../core/geometry/angle.ts';
import { distance } from '../../core/geometry/spot.ts';
import { inOwnSense } from '../../core/guidance/camera-sense.ts';
import { lengthLabel } from '../../core/units/length.ts';
import type { Mark, Units } from '../../shared/document/schema.ts';
import { lengthChange } from './mark-words.ts';

/** Less than this nobody can see, so it is not told. */
const LEAST_MOVE_M = 0.05;
const LEAST_HEIGHT_M = 0.02;
const LEAST_DEG = 2;
const LEAST_STOPS = 0.1;
/** Under this a move is told by the ruler: a quarter of a step is no step. */
const BODY_FROM_M = 0.2;

const STEPS = ['', 'half a step', 'a step', 'a step and a half', 'two steps'] as const;

/** A short move measured by the body: "10 cm", "half a step", "a step", "two steps"; beyond that by the ruler. */
export function bodyLength(lengthM: number, stepM: number, units: Units): string {
  const halves = Math.round((lengthM / stepM) * 2);
  const word = lengthM < BODY_FROM_M ? undefined : STEPS[Math.max(1, halves)];
  return word ?? (lengthM < 1 ? lengthChange(lengthM, units) : lengthLabel(lengthM, units));
}

/** Thirds of a stop as they are dialled: "⅓", "1", "1⅔". */
function thirds(stops: number): string {
  const count = Math.round(Math.abs(stops) * 3);
  const rest = ['', '⅓', '⅔'][count % 3] ?? '';
  return `${count >= 3 ? Math.floor(count / 3) : ''}${rest}`;
}

/**
 * What a nudge changed, one line each, in the sense of who carries the stand and faces `headingDeg`: the move, the
 * height, the power, the tilt, the turn. Empty when nothing changed that anyone could see.
 *
 * @param holds what turns: the umbrella, or the bare head
 */
export function nudgeLines(
  from: Mark,
  to: Mark,
  own: { headingDeg: number; stepM: number; units: Units; holds: 'umbrella' | 'head' },
): string[] {
  const lines: string[] = [];
  const moveM = distance(from.spot, to.spot);
  const sense = inOwnSense({ fromSpot: from.spot, toSpot: to.spot, headingDeg: own.headingDeg });
  if (sense && moveM > LEAST_MOVE_M) lines.push(`${bodyLength(moveM, own.stepM, own.units)} ${sense.words}`);
  const upM = to.heightM - from.heightM;
  if (Math.abs(upM) >= LEAST_HEIGHT_M)
    lines.push(`${lengthChange(upM, own.units)} ${upM > 0 ? 'higher' : 'lower'}`);
  const stops = to.powerStops - from.powerStops;
  if (Math.abs(stops) >= LEAST_STOPS) lines.push(`power ${thirds(stops)} ${stops > 0 ? 'up' : 'down'}`);
  const downDeg = to.tiltDeg - from.tiltDeg;
  if (Math.abs(downDeg) >= LEAST_DEG)
    lines.push(`tilt it ${Math.round(Math.abs(downDeg))}° ${downDeg > 0 ? 'down' : 'up'}`);
  const rightDeg = wrap180(to.facingDeg - from.facingDeg);
  if (Math.abs(rightDeg) >= LEAST_DEG) {
    const side = rightDeg > 0 ? 'right' : 'left';
    lines.push(`turn the ${own.holds} ${Math.round(Math.abs(rightDeg))}° to the ${side}`);
  }
  return lines;
}
