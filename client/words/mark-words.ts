import { distance } from '../../core/geometry/spot.ts';
import { bearingDeg, turnDeg } from '../../core/guidance/bearing.ts';
import { type DistanceWords, distanceWords } from '../../core/guidance/steps.ts';
import { lengthLabel } from '../../core/units/length.ts';
import { powerLabel } from '../../core/units/power.ts';
import type { Mark, Units } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** A turn smaller than this nobody would correct by eye. */
const NOTICED_DEG = 8;

/** How high a head is: heights are set to the decimetre, so they are told to it. */
export const headHeight = (heightM: number, units: Units): string =>
  units === 'metric' ? `${heightM.toFixed(1)} m` : `${(heightM / 0.3048).toFixed(1)} ft`;

/** A small change of length: "20 cm", "8 in". */
export const lengthChange = (changeM: number, units: Units): string =>
  units === 'metric'
    ? `${Math.round(Math.abs(changeM) * 100)} cm`
    : `${Math.round(Math.abs(changeM) / 0.0254)} in`;

/** Where the head or umbrella points: to the subject, or how far past it, as whoever stands behind the stand sees it. */
function facesWords(night: Night, mark: Mark): string {
  const subject = night.moment?.view.subject;
  const toward = subject ? bearingDeg(mark.spot, subject.spot) : null;
  if (!subject || toward === null) return `bearing ${Math.round(mark.facingDeg)}°`;
  const off = turnDeg(toward, mark.facingDeg);
  const name = subject.name.charAt(0).toLowerCase() + subject.name.slice(1);
  if (Math.abs(off) < NOTICED_DEG) return name;
  return `${Math.round(Math.abs(off))}° ${off > 0 ? 'right' : 'left'} of ${name}`;
}

const tiltWords = (tiltDeg: number): string => {
  const whole = Math.round(Math.abs(tiltDeg));
  return whole < 2 ? 'level' : `${whole}° ${tiltDeg > 0 ? 'down' : 'up'}`;
};

/** One line of the card: what, how much, and whether it differs from how the stand is now. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly change: string | null;
}

/** Height, power, tilt and facing of a mark, each with what changes against how the stand is now. */
export function markFacts(night: Night, now: Mark, mark: Mark, holds: 'Umbrella' | 'Head'): Fact[] {
  const { units } = night;
  const higherM = mark.heightM - now.heightM;
  const stops = mark.powerStops - now.powerStops;
  const tilt = mark.tiltDeg - now.tiltDeg;
  return [
    {
      name: 'Height',
      value: headHeight(mark.heightM, units),
      change:
        Math.abs(higherM) < 0.02
          ? null
          : `${lengthChange(higherM, units)} ${higherM > 0 ? 'higher' : 'lower'}`,
    },
    {
      name: 'Power',
      value: powerLabel(mark.powerStops),
      change: Math.abs(stops) < 0.1 ? null : `was ${powerLabel(now.powerStops)}`,
    },
    {
      name: 'Tilt',
      value: tiltWords(mark.tiltDeg),
      change: Math.abs(tilt) < 2 ? null : `was ${tiltWords(now.tiltDeg)}`,
    },
    { name: `${holds} faces`, value: facesWords(night, mark), change: null },
  ];
}

/** Whether a carry asks for a walk at all, or only for another height, tilt or power. */
export const asksToWalk = (now: Mark, mark: Mark): boolean => distance(now.spot, mark.spot) > 0.05;

/** A short move: "33 cm", with "arm's length" or "one step" for who measures by the body. */
export function shortDistance(distanceM: number, stepM: number, units: Units): DistanceWords {
  const body = distanceWords(distanceM, stepM, units).main;
  const main = distanceM < 1 ? lengthChange(distanceM, units) : lengthLabel(distanceM, units);
  return { main, steps: body === main ? null : body };
}
