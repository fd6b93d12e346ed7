import { degFromRad } from '../../geometry/angle.ts';
import { distance } from '../../geometry/spot.ts';
import { above, dot3, from, pointing, unit3 } from '../../geometry/vec3.ts';
import { ratioFromStops } from '../../units/stops.ts';
import type { Belief } from '../fit/belief.ts';
import { predict } from '../fit/predict.ts';
import { keyAngle } from '../key-angle.ts';
import type { Lamp } from '../lamp.ts';
import { patternName } from '../pattern.ts';
import type { Sight } from '../room/sight.ts';
import { BODY_RADIUS_M, clearFaceChance, HEAD_HEIGHT_M, RAISED_HANDS_M } from '../subject/clear-face.ts';
import { depthOfField } from '../subject/depth-of-field.ts';
import { evenness, groupSpots } from '../subject/evenness.ts';
import { shadowLanding } from '../subject/shadow-landing.ts';
import { softness } from '../subject/softness.ts';
import { subjectLevels } from '../subject/subject-levels.ts';
import type { LightInput, LightUnit } from './light-input.ts';
import type { Spread, SubjectReport } from './light-report.ts';
import { ambientFactor, litBy, outputFactor, roomFactor, type UnitParts } from './room-fit.ts';
import type { ViewLight } from './view-light.ts';
import type { LitUnit } from './wanted-powers.ts';

/** Places across a group at which its light is looked at. */
const GROUP_PLACES = 7;

/**
 * What each light gives a meter at the face that is held toward the key (without a key, toward the camera's
 * flash).
 *
 * @source iso2720
 */
export function subjectParts(lit: readonly LitUnit[]): UnitParts[] {
  const hasKey = lit.some(({ unit }) => unit.job === 'key');
  const isMain = (unit: LightUnit) => unit.job === (hasKey ? 'key' : 'camera');
  return lit.map(({ unit, seen: { subject } }) => ({
    unit,
    straightLuxSeconds: isMain(unit) ? subject.facingLuxSeconds : subject.keySideLuxSeconds,
    returnedLuxSeconds: subject.returnedKeySideLuxSeconds,
  }));
}

/**
 * What each light gives hair that faces the back light; empty without one.
 *
 * @source iso2720
 */
export function rimParts(lit: readonly LitUnit[]): UnitParts[] {
  if (!lit.some(({ unit }) => unit.job === 'back')) return [];
  return lit.map(({ unit, seen: { subject } }) => ({
    unit,
    straightLuxSeconds: unit.job === 'back' ? subject.facingLuxSeconds : 0,
    returnedLuxSeconds: subject.returnedKeySideLuxSeconds / 2 + subject.returnedShadowSideLuxSeconds / 2,
  }));
}

/** Everything that hangs on where the key is. */
function keyNumbers(input: LightInput, view: ViewLight, key: LightUnit | undefined, lamp: Lamp | undefined) {
  const none = {
    pattern: null,
    softness: null,
    shadow: null,
    clearFaceChance: null,
    clearOfHandsChance: null,
  };
  if (!key || !lamp) return none;
  const { camera, subject, crowdPerM2 } = input;
  const { mark } = key;
  const angle = keyAngle({
    camera: camera.spot,
    subject: subject.spot,
    subjectEyeM: subject.eyeM,
    light: mark.spot,
    lightHeightM: mark.heightM,
  });
  const light = above(mark.spot, mark.heightM);
  const way = unit3(from(light, view.eye));
  const cosine = way ? dot3(way, pointing(mark.facingDeg, mark.tiltDeg)) : 1;
  const chance = (topM: number) =>
    clearFaceChance(light, view.eye, { personsPerM2: crowdPerM2, topM, bodyRadiusM: BODY_RADIUS_M });
  return {
    pattern: angle ? patternName(Math.abs(angle.azimuthDeg), angle.elevationDeg) : null,
    softness: softness({
      diameterM: 2 * lamp.radiusM,
      distanceM: angle?.distanceM ?? 0,
      emissionDeg: degFromRad(Math.acos(Math.max(-1, Math.min(1, cosine)))),
    }),
    shadow: shadowLanding({
      light,
      diameterM: 2 * lamp.radiusM,
      head: view.eye,
      room: view.scene.room,
    }),
    clearFaceChance: chance(HEAD_HEIGHT_M),
    clearOfHandsChance: chance(RAISED_HANDS_M),
  };
}

/**
 * How evenly the group is lit: straight light of all lights at its places, with the ambient and what the room
 * returns at its middle.
 */
function groupStops(
  input: LightInput,
  sight: Sight,
  lamps: readonly { readonly unit: LightUnit; readonly lamp: Lamp }[],
  everywhereLuxSeconds: number,
): number | null {
  const { camera, subject, wish } = input;
  const spots = groupSpots({
    camera: camera.spot,
    subject: subject.spot,
    widthM: wish.groupWidthM,
    count: GROUP_PLACES,
  });
  const z = subject.eyeM;
  const light = spots?.map(({ x, y }) =>
    lamps
      .filter(({ unit, lamp }) => unit.job !== 'back' && sight.clear(lamp.x, lamp.y, lamp.z, x, y, z))
      .reduce(
        (sum, { unit, lamp }) => sum + lamp.toward(x, y, z) * ratioFromStops(unit.mark.powerStops),
        everywhereLuxSeconds,
      ),
  );
  return (light && evenness(light)?.spreadStops) ?? null;
}

/**
 * The subject's light: levels with their spread, and everything that hangs on the key's place.
 *
 * @source own-rule
 */
export function subjectReport({
  input,
  view,
  sight,
  lit,
  lamps,
  belief,
}: {
  readonly input: LightInput;
  readonly view: ViewLight;
  readonly sight: Sight;
  readonly lit: readonly LitUnit[];
  readonly lamps: readonly { readonly unit: LightUnit; readonly lamp: Lamp }[];
  readonly belief: Belief;
}): SubjectReport {
  const { exposure, frame, camera, subject } = input;
  const room = roomFactor(belief);
  const ambientLux = view.ambientLux * ambientFactor(belief);
  const levels = subjectLevels({
    exposure,
    ambientLux,
    lights: lit.map(({ unit, seen }) => {
      const out = outputFactor(belief, unit);
      const { subject: on } = seen;
      return {
        id: unit.id,
        job: unit.job,
        powerStops: unit.mark.powerStops,
        facingLuxSeconds: on.facingLuxSeconds * out,
        keySideLuxSeconds: on.keySideLuxSeconds * out,
        shadowSideLuxSeconds: on.shadowSideLuxSeconds * out,
        returnedKeySideLuxSeconds: on.returnedKeySideLuxSeconds * out * room,
        returnedShadowSideLuxSeconds: on.returnedShadowSideLuxSeconds * out * room,
      };
    }),
  });
  const spread = (parts: readonly UnitParts[]): Spread | null =>
    parts.length > 0 ? predict(belief, litBy(parts, view.ambientLux, exposure)) : null;
  const returned = lit.reduce(
    (sum, { unit, seen }) =>
      sum + seen.subject.returnedKeySideLuxSeconds * room * ratioFromStops(unit.mark.powerStops),
    ambientLux * exposure.shutterS,
  );
  const key = lamps.find(({ unit }) => unit.job === 'key');
  return {
    ...levels,
    total: spread(subjectParts(lit)),
    rim: spread(rimParts(lit)),
    ...keyNumbers(input, view, key?.unit, key?.lamp),
    evennessStops: groupStops(input, sight, lamps, returned),
    depthOfField: depthOfField({
      focalMm: frame.focalMm,
      sensorWidthMm: frame.sensorWidthMm,
      sensorHeightMm: frame.sensorHeightMm,
      fNumber: exposure.fNumber,
      focusM: Math.hypot(distance(camera.spot, subject.spot), camera.heightM - subject.eyeM),
    }),
  };
}
