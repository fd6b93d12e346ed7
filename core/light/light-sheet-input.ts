import type { Spot } from '../geometry/spot.ts';
import type { Mark } from '../placing/mark.ts';
import type { Exposure } from './exposure.ts';
import type { Frame } from './field-of-view.ts';
import { backFractionOf, type KeySource } from './umbrella.ts';

/** Everything that the light sheet of one key needs. Metres, degrees, stops as in the types named. */
export type LightSheetInput = {
  readonly source: KeySource;
  readonly mark: Mark;
  readonly subject: { readonly spot: Spot; readonly eyeM: number };
  readonly camera: { readonly spot: Spot; readonly heightM: number };
  readonly frame: Frame;
  readonly exposure: Exposure;
  /** Ambient EV at ISO 100 on the subject; null when not measured */
  readonly ambientEv100: number | null;
  /** Light that the room returns to the subject from this light at full power [lx·s]; 0 when not computed */
  readonly returnedLuxSeconds: number;
  /** All light of the other lights at the subject, straight and returned, at their powers [lx·s] */
  readonly othersLuxSeconds: number;
  /** Wanted exposure of the subject [stops]; 0 is what the meter calls correct */
  readonly targetStops: number;
};

/** A value, what it is called on screen, and the range in which the model means anything. */
type Check = readonly [value: number, name: string, least: number, most: number, unit: string];

function checksOf(input: LightSheetInput): Check[] {
  const { source, mark, subject, camera, frame, exposure } = input;
  const spots: [Spot, string][] = [
    [mark.spot, 'light'],
    [subject.spot, 'subject'],
    [camera.spot, 'camera'],
  ];
  return [
    [source.head.guideNumberM, 'guide number', 0.1, 500, ' m'],
    [source.head.zoomMm, 'zoom', 4, 2000, ' mm'],
    [source.head.leastPowerStops, 'least power', -12, 0, ' stops'],
    [source.umbrella?.diameterM ?? 1, 'umbrella diameter', 0.1, 5, ' m'],
    [source.umbrella?.forwardFraction ?? 1, 'umbrella forward fraction', 0.001, 1, ''],
    [source.umbrella?.backFraction ?? 0, 'umbrella back fraction', 0, 1, ''],
    [source.umbrella?.lossStops ?? 0, 'umbrella loss', -3, 15, ' stops'],
    [mark.heightM, 'light height', 0, 20, ' m'],
    [mark.facingDeg, 'facing', -36000, 36000, '°'],
    [mark.tiltDeg, 'tilt', -180, 180, '°'],
    [mark.powerStops, 'power', -12, 0, ' stops'],
    [subject.eyeM, 'eye height', 0, 10, ' m'],
    [camera.heightM, 'camera height', 0, 20, ' m'],
    [frame.focalMm, 'focal length', 1, 5000, ' mm'],
    [frame.sensorWidthMm, 'sensor width', 1, 500, ' mm'],
    [frame.sensorHeightMm, 'sensor height', 1, 500, ' mm'],
    [exposure.iso, 'ISO', 1, 10_000_000, ''],
    [exposure.fNumber, 'f-number', 0.5, 256, ''],
    [exposure.shutterS, 'shutter time', 1e-5, 3600, ' s'],
    [input.ambientEv100 ?? 0, 'ambient EV', -20, 25, ''],
    [input.returnedLuxSeconds, 'returned light', 0, 1e9, ' lx·s'],
    [input.othersLuxSeconds, 'light of the other lights', 0, 1e9, ' lx·s'],
    [input.targetStops, 'target', -20, 20, ' stops'],
    ...spots.flatMap(([spot, name]): Check[] => [
      [spot.x, `${name} position`, -10_000, 10_000, ' m'],
      [spot.y, `${name} position`, -10_000, 10_000, ' m'],
    ]),
  ];
}

/** Rounding that two shares typed in by hand may add up to. */
const ROUNDING = 1e-9;

/** Why the shares of an umbrella's light cannot be: more would leave it than goes in. */
function umbrellaReason({ source }: LightSheetInput): string | null {
  if (source.umbrella === null) return null;
  const { forwardFraction } = source.umbrella;
  const backFraction = backFractionOf(source.umbrella);
  if (forwardFraction + backFraction <= 1 + ROUNDING) return null;
  return `The umbrella sends ${forwardFraction} of the light forward and ${backFraction} back; together they must be at most 1.`;
}

/**
 * Why a light sheet cannot be made from these numbers.
 *
 * @returns a sentence in plain words that names the value and its range; null when all are usable
 */
export function unusableReason(input: LightSheetInput): string | null {
  for (const [value, name, least, most, unit] of checksOf(input)) {
    if (Number.isNaN(value)) return `The ${name} is not a number.`;
    if (value < least || value > most) {
      return `The ${name} is ${value}${unit}; it must be from ${least}${unit} to ${most}${unit}.`;
    }
  }
  return umbrellaReason(input);
}
