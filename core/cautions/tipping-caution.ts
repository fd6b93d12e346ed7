import { type Caution, notChecked } from './caution.ts';
import { criticalWind, type StandBuild, tipForce, tipTiltDeg, weightN } from './tipping.ts';

/** Slope on which appliances and audio/video equipment must not fall over [°]. @source iec60335-stability */
const YARDSTICK_TILT_DEG = 10;
/** Horizontal push, as a share of weight, that such equipment withstands … @source iec62368-stability */
const YARDSTICK_PUSH_SHARE = 0.13;
/** … at this height [m]. @source iec62368-stability */
const YARDSTICK_PUSH_HEIGHT_M = 1.5;
/** A sustained push that everybody gives: an accessible interior door [N]. @source ada-door-force */
const DOOR_PUSH_N = 22.2;

/** A share beyond this is shown as this: it only keeps absurd input printable. */
const MOST_SHARE = 1e6;

const SOURCE = 'Statics; equipment stability tests (10° slope, 13 % of weight at 1.5 m) as yardsticks';
const TITLE = 'Tipping';

type TipNumbers = {
  readonly forceN: number;
  readonly tiltDeg: number;
  readonly pushShare: number;
  readonly windMs: number | null;
};

function numbersOf(
  build: StandBuild,
  headHeightM: number,
  umbrella: { readonly diameterM: number } | null,
): TipNumbers | null {
  const forceN = tipForce(build, headHeightM);
  const tiltDeg = tipTiltDeg(build, headHeightM);
  const yardstickN = tipForce(build, YARDSTICK_PUSH_HEIGHT_M);
  const weight = weightN(build);
  if (forceN === null || tiltDeg === null || yardstickN === null || !(weight > 0)) return null;
  const windMs = umbrella ? criticalWind(build, headHeightM, umbrella) : null;
  return { forceN, tiltDeg, pushShare: Math.min(yardstickN / weight, MOST_SHARE), windMs };
}

function sentences(numbers: TipNumbers, ballastKg: number, legs: number): string {
  const { forceN, tiltDeg, pushShare, windMs } = numbers;
  const between = legs === 3 ? 'half as strong between two legs as along one' : 'weakest between two legs';
  return [
    `Tips at a push of ${forceN.toFixed(1)} N at head height (${between}; a door takes ${DOOR_PUSH_N} N).`,
    `Tips on a slope of ${tiltDeg.toFixed(0)}° (yardstick ${YARDSTICK_TILT_DEG}°) and at ` +
      `${(pushShare * 100).toFixed(0)} % of its weight at 1.5 m (yardstick 13 %).`,
    windMs === null ? '' : `The umbrella tips it in a gust of about ${windMs.toFixed(1)} m/s.`,
    ballastKg > 0 ? '' : 'No ballast: hang a sandbag, centrally.',
    'Standing still on a level floor, nobody running into it: real limits are lower.',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/**
 * How easily the stand tips, beside yardsticks for other equipment (none is written for small stands).
 *
 * @param build null when the stand's build is not known
 * @param headHeightM height of the head [m]
 * @param umbrella its diameter [m]; null when bare
 * @returns 'stop' when it does not stand by itself, 'caution' when it misses a yardstick or has no ballast,
 *   else 'info' with the numbers; value is the tipping push at head height [N]
 * @source statics-tipping
 */
export function tippingCaution(
  build: StandBuild | null,
  headHeightM: number,
  umbrella: { readonly diameterM: number } | null,
): Caution {
  if (!build) return notChecked('tipping', TITLE, "the stand's weight and leg radius are not known", SOURCE);
  const numbers = numbersOf(build, headHeightM, umbrella);
  if (!numbers) return notChecked('tipping', TITLE, 'weight, legs or head height are missing', SOURCE);
  const misses = numbers.tiltDeg < YARDSTICK_TILT_DEG || numbers.pushShare < YARDSTICK_PUSH_SHARE;
  const unballasted = !(build.ballastKg > 0);
  const base = { id: 'tipping', value: numbers.forceN, limit: null, unit: 'N', source: SOURCE } as const;
  if (!(numbers.forceN > 0)) {
    return {
      ...base,
      level: 'stop',
      title: 'Falls over by itself',
      detail: 'Its weight lies outside the feet: no push is needed. Move the ballast or the head.',
    };
  }
  return {
    ...base,
    level: misses || unballasted ? 'caution' : 'info',
    title: misses ? 'Tips easily' : TITLE,
    detail: sentences(numbers, build.ballastKg, build.legs),
  };
}
