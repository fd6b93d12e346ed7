import type { LightInput, LightUnit, TakenFrame } from '../../core/light/report/light-input.ts';
import { aimAt } from '../../core/placing/mark.ts';
import type { Moment, Stand, TestFrame } from '../../shared/document/parts.ts';
import type { Entry, Mark } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { cameraRecipe, item, recipeFor } from './gear.ts';
import { sceneFeaturesOf } from './room-model.ts';

/** The unit of the flash on the camera; stands are called by their own ids, which are never this word. */
export const CAMERA_UNIT = 'camera';

/** ASSUMPTION: the flash on the camera sits a hand's breadth over the lens, m. */
const OVER_LENS_M = 0.15;
/** Turned to the ceiling without a word about how far, a flash points up and a little forward, degrees. */
const BOUNCE_TILT_DEG = -60;
/** ASSUMPTION: about one person to a square metre, a dance floor that is full but not packed. */
const CROWD_PER_M2 = 1;

type CameraUse = Exclude<Entry<'moment/camera-light'>['use'], 'off'>;

const unknowns = (...ids: (string | null)[]): string[] => ids.filter((id) => id !== null);

function standUnit(
  night: Night,
  kit: { headGear: string; umbrellaGear: string | null; job: 'key' | 'back' },
  at: { id: string; letter: string; mark: Mark },
): LightUnit | null {
  const recipe = recipeFor(night, kit.headGear, kit.umbrellaGear);
  const head = item(night, kit.headGear, 'head');
  if (!recipe || !head) return null;
  return {
    ...at,
    job: kit.job,
    recipe,
    leastPowerStops: head.leastPowerStops,
    recycleS: head.recycleS ?? null,
    flashesFull: head.flashesFull ?? null,
    unknownIds: unknowns(`head:${kit.headGear}`, kit.umbrellaGear && `umbrella:${kit.umbrellaGear}`),
  };
}

function cameraUnit(
  night: Night,
  kit: { flashGear: string; cardGear: string | null },
  use: CameraUse,
  mark: Mark,
): LightUnit | null {
  const recipe = cameraRecipe(night, use, kit);
  const flash = item(night, kit.flashGear, 'flash');
  if (!recipe || !flash) return null;
  return {
    id: CAMERA_UNIT,
    letter: 'C',
    job: 'camera',
    recipe,
    mark,
    leastPowerStops: flash.leastPowerStops,
    recycleS: flash.recycleS ?? null,
    flashesFull: flash.flashesFull ?? null,
    unknownIds: unknowns(
      `flash:${kit.flashGear}`,
      use === 'card' && kit.cardGear ? `card:${kit.cardGear}` : null,
    ),
  };
}

/** Where the flash on the camera is and where it points, for a moment. */
function cameraMark(moment: Moment): Mark {
  const { subject, camera } = moment.view;
  const { use, powerStops, tiltDeg, facingDeg } = moment.cameraLight;
  const heightM = camera.heightM + OVER_LENS_M;
  const aim = aimAt(camera.spot, heightM, subject.spot, subject.eyeM);
  return {
    spot: camera.spot,
    heightM,
    facingDeg: use === 'bounce' ? (facingDeg ?? aim.facingDeg) : aim.facingDeg,
    tiltDeg: use === 'bounce' ? (tiltDeg ?? BOUNCE_TILT_DEG) : aim.tiltDeg,
    powerStops,
  };
}

/**
 * The flashes of a moment where they are meant to be.
 *
 * @param markOf where a stand is, or would be
 */
export function lightUnits(night: Night, moment: Moment, markOf: (stand: Stand) => Mark): LightUnit[] {
  const stands = night.stands.map((stand) =>
    standUnit(night, stand.kit, { id: stand.id, letter: stand.kit.letter, mark: markOf(stand) }),
  );
  const { use } = moment.cameraLight;
  const camera =
    use !== 'off' && night.cameraKit ? cameraUnit(night, night.cameraKit, use, cameraMark(moment)) : null;
  return [...stands, camera].filter((unit) => unit !== null);
}

/** A test frame as the model reads it; a light whose head has left the gear list cannot be counted. */
function takenFrame(night: Night, frame: TestFrame): TakenFrame | null {
  const units = frame.lights.map((fired) => {
    if (fired.on === 'camera') return cameraUnit(night, fired, fired.use, fired.mark);
    const letter = night.stands.find(({ id }) => id === fired.standId)?.kit.letter ?? '?';
    return standUnit(night, fired, { id: fired.standId, letter, mark: fired.mark });
  });
  if (units.some((unit) => unit === null)) return null;
  const { id, spot, eyeM, camera, exposure, ambientEv100, source, what, stops } = frame;
  const toCamera = aimAt(spot, eyeM, camera.spot, camera.heightM);
  return {
    id,
    units: units.filter((unit) => unit !== null),
    subject: { spot, eyeM, facingDeg: toCamera.facingDeg },
    camera,
    exposure,
    ambientEv100,
    source,
    what,
    stops,
  };
}

/** Everything that the light of a moment follows from, besides the room itself; null before a moment is on. */
export function lightInputOf(
  night: Night,
  markOf: (stand: Stand) => Mark,
  isMoving: boolean,
): LightInput | null {
  const { moment } = night;
  if (!moment) return null;
  const { subject, camera, frame } = moment.view;
  return {
    units: lightUnits(night, moment, markOf),
    features: sceneFeaturesOf(night),
    subject: { spot: subject.spot, eyeM: subject.eyeM, facingDeg: subject.facingDeg },
    camera,
    frame,
    exposure: moment.exposure,
    ambientSpots: night.ambientSpots.map(({ spot, ev100 }) => ({ spot, ev100 })),
    ambientEv100: night.ambientEv100,
    wish: moment.wish,
    taken: night.frames.map((one) => takenFrame(night, one)).filter((one) => one !== null),
    crowdPerM2: CROWD_PER_M2,
    isMoving,
  };
}
