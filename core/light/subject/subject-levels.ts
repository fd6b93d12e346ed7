import { finiteOrNull, keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';
import { type Exposure, flashStops } from '../exposure.ts';

/** What a light is there for. */
export type LightJob = 'key' | 'back' | 'camera';

/**
 * What one light gives the subject's face at FULL power. The two sides of the face are those of
 * `faceNormals`. "Direct" is straight from the light with shadows of the room taken into account, "returned"
 * what the room sends back from it.
 */
export type SubjectLight = {
  readonly id: string;
  readonly job: LightJob;
  /** log2 of the power fraction [stops]; null: it does not fire */
  readonly powerStops: number | null;
  /** Direct, on an element that faces this light [lx·s] */
  readonly facingLuxSeconds: number;
  /** Direct, on the key side of the face [lx·s] */
  readonly keySideLuxSeconds: number;
  /** Direct, on the shadow side of the face [lx·s] */
  readonly shadowSideLuxSeconds: number;
  readonly returnedKeySideLuxSeconds: number;
  readonly returnedShadowSideLuxSeconds: number;
};

/** Levels at the subject, in stops over what the meter calls correct; null where there is no light. */
export type SubjectLevels = {
  /** Key lights alone, direct, on an element facing them */
  readonly keyStops: number | null;
  /** All light on the key side of the face */
  readonly keySideStops: number | null;
  /** All light on the shadow side of the face, the key's own included where it still reaches round */
  readonly shadowSideStops: number | null;
  /** The shadow side without the key's direct light: returned light, camera flash, ambient */
  readonly fillStops: number | null;
  /** On hair that faces the back light: its direct light, what the room returns, ambient; null without one */
  readonly rimStops: number | null;
  /** What a meter at the face, held toward the key, reads of everything (without a key: toward the camera) */
  readonly totalStops: number | null;
  /** Key side : shadow side, the (key + fill) : fill convention; null when one of them has no light */
  readonly keySideToShadowSide: number | null;
  /** Key : fill, the other convention */
  readonly keyToFill: number | null;
};

function ratioOf(over: number, under: number): number | null {
  return over > 0 && under > 0 ? finiteOrNull(over / under) : null;
}

type Field = Exclude<keyof SubjectLight, 'id' | 'job' | 'powerStops'>;

/** Light of some of the lights on one element, each at its power [lx·s]. */
function sumOf(lights: readonly SubjectLight[], field: Field): number {
  return lights.reduce(
    (sum, light) =>
      light.powerStops === null
        ? sum
        : keepFinite(sum + Math.max(0, light[field]) * ratioFromStops(light.powerStops)),
    0,
  );
}

/**
 * Key, fill, rim and ratio at the subject.
 *
 * The ratio is key side : shadow side, that is (key + fill) : fill as the ASC defines lighting ratio; a key
 * of the same light as the fill gives 2 : 1. Key : fill is given beside it, so that the screen can say which
 * it shows.
 *
 * ASSUMPTION: ambient light is alike on all sides, and what the room returns to the back of the head is the
 * mean of what it returns to the two sides of the face.
 *
 * @param lights each at its power; negative light counts as none
 * @param ambientLux steady light at the face [lx]; it counts for as long as the shutter is open
 * @param exposure camera settings; a setting not above zero makes every level null
 * @source asc-lighting-ratio
 * @source iso2720
 */
export function subjectLevels({
  lights,
  ambientLux,
  exposure,
}: {
  readonly lights: readonly SubjectLight[];
  readonly ambientLux: number;
  readonly exposure: Exposure;
}): SubjectLevels {
  const of = (job: LightJob) => lights.filter((light) => light.job === job && light.powerStops !== null);
  const [keys, backs, cameras] = [of('key'), of('back'), of('camera')];
  const ambient = keepFinite(Math.max(0, ambientLux) * Math.max(0, exposure.shutterS));
  const returnedKeySide = sumOf(lights, 'returnedKeySideLuxSeconds') + ambient;
  const returnedShadowSide = sumOf(lights, 'returnedShadowSideLuxSeconds') + ambient;
  const keySide = sumOf(lights, 'keySideLuxSeconds') + returnedKeySide;
  const fill = sumOf([...backs, ...cameras], 'shadowSideLuxSeconds') + returnedShadowSide;
  const shadowSide = sumOf(keys, 'shadowSideLuxSeconds') + fill;
  const key = sumOf(keys, 'facingLuxSeconds');
  const [main, others] = keys.length > 0 ? [keys, [...backs, ...cameras]] : [cameras, backs];
  const total = sumOf(main, 'facingLuxSeconds') + sumOf(others, 'keySideLuxSeconds') + returnedKeySide;
  const rim = sumOf(backs, 'facingLuxSeconds') + returnedKeySide / 2 + returnedShadowSide / 2;
  const stops = (luxSeconds: number) => flashStops(luxSeconds, exposure);
  return {
    keyStops: stops(key),
    keySideStops: stops(keySide),
    shadowSideStops: stops(shadowSide),
    fillStops: stops(fill),
    rimStops: backs.length > 0 ? stops(rim) : null,
    totalStops: stops(total),
    keySideToShadowSide: ratioOf(keySide, shadowSide),
    keyToFill: ratioOf(key, fill),
  };
}
