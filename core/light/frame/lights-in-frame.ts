import { distance } from '../../geometry/spot.ts';
import { isPositive } from '../../units/finite.ts';
import { ratioFromStops, stopsFromRatio } from '../../units/stops.ts';
import type { Exposure } from '../exposure.ts';
import { type InFrame, standInFrame } from '../field-of-view.ts';
import type { Lamp } from '../lamp.ts';
import { createSight } from '../room/sight.ts';
import { frameProblem } from './frame-problem.ts';
import { meetBody, meetHead, personOf } from './person.ts';
import type { FrameScene, FrameStand } from './scene.ts';
import { meetSolid, solidsOf } from './solid.ts';

/** A lamp on one of the scene's stands, with the power it is set to [stops]. */
export type StandLamp = { readonly standId: string; readonly lamp: Lamp; readonly powerStops: number };

/**
 * A stand as the camera sees it, and what its light does to the picture:
 * - outside: its lamp is not in the picture (a leg may be: see `inFrame`)
 * - hidden: in the picture, but the subject or a thing stands before it
 * - dark: in the picture, but it sends no light to the lens, or nothing is known of its lamp
 * - star, veil: a small bright spot, or haze over the whole picture
 */
export type LightInFrame = {
  readonly standId: string;
  readonly letter: string;
  readonly inFrame: InFrame;
  readonly hiddenBy: string | null;
  readonly judged: 'outside' | 'hidden' | 'dark' | 'star' | 'veil';
  /** Haze against mid-grey at the sensor [stops]; null without light in the lens */
  readonly veilStops: number | null;
};

/**
 * ASSUMPTION: share of the light through the pupil that ends up spread evenly over the picture [1]. Modern
 * lenses have a veiling glare index of about 0.5–3 %, measured in an evenly bright sphere: much of that comes
 * from outside the frame, and of what a single lamp causes much stays close round its image. A quarter of
 * 1 % is left. It may be a factor of three off either way (1½ stops), more on a dirty lens.
 */
const GLARE_FRACTION = 0.0025;
/** Own rule: haze of half of mid-grey or more is a veil; less leaves the light a star [stops]. */
const VEIL_STOPS = -1;
/** Focal-plane exposure of mid-grey is this over S [lx·s]: standard output sensitivity. @source iso12232 */
const MID_EXPOSURE = 10;

/**
 * Haze over the picture from a lamp in it: light at the lens through the pupil, π/4·(f/N)², times the glare
 * share, spread over the sensor, against the exposure of mid-grey, 10/S.
 *
 * @param luxSeconds at the lens, as a meter there facing the lamp reads it [lx·s]
 * @param focalMm focal length [mm]
 * @param sensorMm2 area of the sensor [mm²]
 * @returns stops from mid-grey; null without light or when a setting is not above zero
 * @source iso9358
 * @source iso12232
 */
export function veilStopsOf(
  luxSeconds: number,
  exposure: Exposure,
  focalMm: number,
  sensorMm2: number,
): number | null {
  const { fNumber, iso } = exposure;
  if (![luxSeconds, fNumber, iso, focalMm, sensorMm2].every(isPositive)) return null;
  const pupilMm2 = (Math.PI / 4) * (focalMm / fNumber) ** 2;
  const veil = (GLARE_FRACTION * luxSeconds * pupilMm2) / sensorMm2;
  return stopsFromRatio((veil * iso) / MID_EXPOSURE);
}

function inFrameOf({ camera, subject, frame }: FrameScene, stand: FrameStand): InFrame {
  const { umbrellaRadiusM, heightM } = stand;
  return standInFrame({
    camera: camera.spot,
    cameraHeightM: camera.heightM,
    aim: subject.spot,
    aimHeightM: subject.eyeM,
    frame,
    stand: stand.spot,
    topM: heightM,
    umbrella: umbrellaRadiusM === null ? null : { diameterM: 2 * umbrellaRadiusM, heightM },
  });
}

/** Who or what stands between the lens and a lamp; null for a clear way. */
function hidingName(scene: FrameScene, stand: FrameStand): string | null {
  const { camera, room } = scene;
  const [ox, oy, oz] = [camera.spot.x, camera.spot.y, camera.heightM];
  const wayM = Math.hypot(distance(camera.spot, stand.spot), stand.heightM - oz);
  if (!isPositive(wayM)) return null;
  const dx = (stand.spot.x - ox) / wayM;
  const dy = (stand.spot.y - oy) / wayM;
  const dz = (stand.heightM - oz) / wayM;
  const hit = { distanceM: wayM, kind: 0, index: 0, nx: 0, ny: 0, nz: 0 };
  const person = personOf(scene.subject);
  if (meetHead(person, ox, oy, oz, dx, dy, dz, hit) || meetBody(person, ox, oy, oz, dx, dy, dz, hit)) {
    return 'the subject';
  }
  const solids = solidsOf(scene).filter(({ blocksLight }) => blocksLight);
  const solid = solids.find((each) => meetSolid(each, ox, oy, oz, dx, dy, dz, hit));
  if (solid) return solid.name;
  const walls = createSight({ ...room, blockers: [] });
  return walls.clear(ox, oy, oz, stand.spot.x, stand.spot.y, stand.heightM) ? null : 'a wall';
}

function judge(
  scene: FrameScene,
  stand: FrameStand,
  at: StandLamp | undefined,
  exposure: Exposure,
): LightInFrame {
  const { camera, frame } = scene;
  const inFrame = inFrameOf(scene, stand);
  const base = { standId: stand.id, letter: stand.letter, inFrame, hiddenBy: null, veilStops: null };
  if (inFrame.part === 'none' || inFrame.part === 'leg') return { ...base, judged: 'outside' };
  const hiddenBy = hidingName(scene, stand);
  if (hiddenBy !== null) return { ...base, judged: 'hidden', hiddenBy };
  const full = at?.lamp.toward(camera.spot.x, camera.spot.y, camera.heightM) ?? 0;
  const veilStops = veilStopsOf(
    full * ratioFromStops(at?.powerStops ?? 0),
    exposure,
    frame.focalMm,
    frame.sensorWidthMm * frame.sensorHeightMm,
  );
  if (veilStops === null) return { ...base, judged: 'dark' };
  return { ...base, judged: veilStops >= VEIL_STOPS ? 'veil' : 'star', veilStops };
}

/**
 * Every stand of a scene as the camera sees it, and whether its light is a star in the picture or a veil over
 * it. Light that reaches the lens from outside the picture is not checked: a hood keeps it off.
 *
 * @returns one entry per stand, in their order; empty when there is no picture (`frameProblem` says why)
 * @source iso9358
 * @source angle-of-view
 */
export function lightsInFrame(
  scene: FrameScene,
  lamps: readonly StandLamp[],
  exposure: Exposure,
): LightInFrame[] {
  if (frameProblem(scene) !== null) return [];
  return scene.stands.map((stand) =>
    judge(
      scene,
      stand,
      lamps.find(({ standId }) => standId === stand.id),
      exposure,
    ),
  );
}
