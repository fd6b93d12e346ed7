import { degFromRad, radFromDeg } from '../geometry/angle.ts';
import { distance, subtract } from '../geometry/spot.ts';
import { isPositive } from '../units/finite.ts';
import { ambientStops, flashStops, INCIDENT_C, sumStops } from './exposure.ts';
import { type InFrame, standInFrame } from './field-of-view.ts';
import { type CameraSide, type KeyAngle, keyAngle } from './key-angle.ts';
import { type LightSheetInput, unusableReason } from './light-sheet-input.ts';
import { type PatternName, patternName } from './pattern.ts';
import { type PowerAnswer, solvePower } from './power.ts';
import { luxSecondsAt } from './umbrella.ts';

/** The numbers of one key; stops over what an incident meter at the subject calls correct. */
export type LightSheet = {
  readonly kind: 'sheet';
  /** From the key alone at the mark's power, straight [stops] */
  readonly keyStops: number;
  /** What the room gives back of it, at the mark's power [stops]; null when nothing, or not computed */
  readonly returnedStops: number | null;
  /** From the ambient alone [stops]; null when it was not measured */
  readonly ambientStops: number | null;
  /** All light together: key, returned, the other lights, and the ambient as far as known [stops] */
  readonly totalStops: number;
  /** The power that brings the total to the target */
  readonly powerForZero: PowerAnswer;
  readonly azimuthDeg: number;
  readonly side: CameraSide;
  readonly elevationDeg: number;
  readonly pattern: PatternName;
  /** From the light to the subject's eyes in space [m] */
  readonly distanceM: number;
  readonly inFrame: InFrame;
};

export type CannotSheet = { readonly kind: 'cannot'; readonly reason: string };

/** Nearer than this, positions on a plan mean nothing for light or angle [m]. */
const NEAREST_M = 0.3;

/** Angle between where the head points and where the subject's eyes are [°], 0–180. */
function offAxisDeg({ mark, subject }: LightSheetInput): number {
  const facing = radFromDeg(mark.facingDeg);
  const tilt = radFromDeg(mark.tiltDeg);
  const axis = [
    Math.sin(facing) * Math.cos(tilt),
    -Math.cos(facing) * Math.cos(tilt),
    -Math.sin(tilt),
  ] as const;
  const plan = subtract(subject.spot, mark.spot);
  const way = [plan.x, plan.y, subject.eyeM - mark.heightM] as const;
  const along = axis[0] * way[0] + axis[1] * way[1] + axis[2] * way[2];
  const across = Math.hypot(
    axis[1] * way[2] - axis[2] * way[1],
    axis[2] * way[0] - axis[0] * way[2],
    axis[0] * way[1] - axis[1] * way[0],
  );
  // atan2 of cross and dot product keeps its digits at small angles, where acos loses them.
  return degFromRad(Math.atan2(across, along));
}

function inFrameOf({ camera, subject, frame, mark, source }: LightSheetInput): InFrame {
  const umbrella = source.umbrella;
  return standInFrame({
    camera: camera.spot,
    cameraHeightM: camera.heightM,
    aim: subject.spot,
    aimHeightM: subject.eyeM,
    frame,
    stand: mark.spot,
    topM: mark.heightM,
    umbrella: umbrella ? { diameterM: umbrella.diameterM, heightM: mark.heightM } : null,
  });
}

function placementReason(input: LightSheetInput, angle: KeyAngle | null): string | null {
  if (distance(input.camera.spot, input.subject.spot) < NEAREST_M) {
    return 'The camera stands on the subject: there is no camera axis to measure from.';
  }
  if (!angle || angle.distanceM < NEAREST_M) return 'The light stands on the subject.';
  return null;
}

type Levels = Pick<LightSheet, 'keyStops' | 'returnedStops' | 'ambientStops' | 'totalStops' | 'powerForZero'>;

/**
 * Exposure at the subject: what this light gives straight and by way of the room goes with its power; the
 * other lights and the ambient are there already. Null when the light sends nothing straight at the subject.
 */
function levelsOf(input: LightSheetInput, straightLuxSeconds: number, c: number): Levels | null {
  const { source, mark, exposure, ambientEv100, targetStops } = input;
  const straight = flashStops(straightLuxSeconds, exposure, c);
  if (straight === null) return null;
  const returned = flashStops(input.returnedLuxSeconds, exposure, c);
  const stopsAtFull = sumStops([straight, returned]) ?? straight;
  const ambient = ambientEv100 === null ? null : ambientStops(ambientEv100, exposure);
  const base = sumStops([ambient, flashStops(input.othersLuxSeconds, exposure, c)]);
  return {
    keyStops: straight + mark.powerStops,
    returnedStops: returned === null ? null : returned + mark.powerStops,
    ambientStops: ambient,
    totalStops: sumStops([stopsAtFull + mark.powerStops, base]) ?? stopsAtFull + mark.powerStops,
    powerForZero: solvePower({
      stopsAtFull,
      ambientStops: base,
      targetStops,
      leastPowerStops: source.head.leastPowerStops,
    }),
  };
}

/**
 * The light sheet of one key: its exposure at the subject, straight and by way of the room, with the other
 * lights and the ambient; the power that brings the sum to the target; its angles to the camera axis with the
 * pattern's name, and whether the stand is in the picture. The room's and the other lights' share come in as
 * numbers: they are the room model's.
 *
 * @param input see the type; ranges are those of `unusableReason`
 * @param c incident constant C of the meter that "correct" means [lx·s]
 * @returns the sheet, or 'cannot' with a reason in plain words
 * @source iso2720
 * @source portrait-patterns
 */
export function lightSheet(input: LightSheetInput, c: number = INCIDENT_C): LightSheet | CannotSheet {
  const cannot = (reason: string): CannotSheet => ({ kind: 'cannot', reason });
  const unusable = unusableReason(input);
  if (unusable !== null) return cannot(unusable);
  if (!isPositive(c)) return cannot(`The meter constant is ${c} lx·s; it must be above 0 lx·s.`);
  const { source, mark, subject, camera } = input;
  const angle = keyAngle({
    camera: camera.spot,
    subject: subject.spot,
    subjectEyeM: subject.eyeM,
    light: mark.spot,
    lightHeightM: mark.heightM,
  });
  const misplaced = placementReason(input, angle);
  if (misplaced !== null || !angle) return cannot(misplaced ?? 'The light stands on the subject.');
  const toward = { distanceM: angle.distanceM, offAxisDeg: offAxisDeg(input), powerStops: 0 };
  const levels = levelsOf(input, luxSecondsAt(source, toward), c);
  if (levels === null) return cannot('The light faces away from the subject.');
  return {
    kind: 'sheet',
    ...levels,
    azimuthDeg: angle.azimuthDeg,
    side: angle.side,
    elevationDeg: angle.elevationDeg,
    pattern: patternName(Math.abs(angle.azimuthDeg), angle.elevationDeg),
    distanceM: angle.distanceM,
    inFrame: inFrameOf(input),
  };
}
