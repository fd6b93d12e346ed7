import { above } from '../../geometry/vec3.ts';
import { keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';
import type { Exposure } from '../exposure.ts';
import { illuminanceFromEv100 } from '../exposure.ts';
import { type Belief, offsetOf, PRIOR_SD_STOPS, priorBelief } from '../fit/belief.ts';
import { type Candidate, mostTelling } from '../fit/most-telling.ts';
import { OBSERVED_SD_STOPS } from '../fit/observed.ts';
import type { Contribution, Lit } from '../fit/predict.ts';
import { beliefFrom, type Observation } from '../fit/update.ts';
import { lampOf } from '../lamps/lamp-recipe.ts';
import type { RoomExchange } from '../room/exchange.ts';
import { returnedAt } from '../room/gather.ts';
import { lightRoom } from '../room/light-room.ts';
import type { Sight } from '../room/sight.ts';
import { faceNormals } from '../subject/face-normals.ts';
import type { LightInput, LightUnit, TakenFrame } from './light-input.ts';
import type { Learnt, NextFrame } from './light-report.ts';

/** The unknowns that no piece of gear has. */
const ROOM = 'room';
const AMBIENT = 'ambient';

/** How far off an unknown usually is, by what it belongs to [stops]. */
function spreadOf(id: string): number {
  if (id === ROOM) return PRIOR_SD_STOPS.room;
  if (id === AMBIENT) return PRIOR_SD_STOPS.ambient;
  return id.startsWith('head:') || id.startsWith('flash:') ? PRIOR_SD_STOPS.head : PRIOR_SD_STOPS.modifier;
}

/** Straight and returned light of one unit on one place, at its power, each with what it hangs on. */
export type UnitParts = {
  readonly unit: LightUnit;
  /** At full power [lx·s] */
  readonly straightLuxSeconds: number;
  readonly returnedLuxSeconds: number;
};

/**
 * Light on one place as `predict` takes it: of every unit at its power, and of the ambient.
 *
 * @param ambientLux [lx]; counts for as long as the shutter is open
 * @source iso2720
 */
export function litBy(parts: readonly UnitParts[], ambientLux: number, exposure: Exposure): Lit {
  const contributions = parts.flatMap(({ unit, straightLuxSeconds, returnedLuxSeconds }): Contribution[] => {
    const power = ratioFromStops(unit.mark.powerStops);
    return [
      { luxSeconds: keepFinite(straightLuxSeconds * power), unknownIds: unit.unknownIds },
      { luxSeconds: keepFinite(returnedLuxSeconds * power), unknownIds: [...unit.unknownIds, ROOM] },
    ];
  });
  const ambient = { luxSeconds: keepFinite(ambientLux * exposure.shutterS), unknownIds: [AMBIENT] };
  return { contributions: [...contributions, ambient], exposure };
}

/** What a stand-in got in a test frame, from every light that fired. A rim is read toward the light itself. */
function observed(exchange: RoomExchange, sight: Sight, frame: TakenFrame): Observation | null {
  const { subject, camera, units, exposure, ambientEv100 } = frame;
  const key = units.find(({ job }) => job === (frame.what === 'rim' ? 'back' : 'key')) ?? units[0];
  const sides = faceNormals({
    camera: camera.spot,
    subject: subject.spot,
    light: key?.mark.spot ?? camera.spot,
  });
  if (!sides || frame.what === 'background') return null;
  const eye = above(subject.spot, subject.eyeM);
  const parts = units.map((unit): UnitParts => {
    const lamp = lampOf(unit.recipe, unit.mark);
    const clear = sight.clear(lamp.x, lamp.y, lamp.z, eye.x, eye.y, eye.z);
    const { keySide } = sides;
    const straight =
      unit === key
        ? lamp.toward(eye.x, eye.y, eye.z)
        : lamp.on(eye.x, eye.y, eye.z, keySide.x, keySide.y, keySide.z);
    const light = lightRoom(exchange, sight, lamp);
    return {
      unit,
      straightLuxSeconds: clear ? straight : 0,
      returnedLuxSeconds: returnedAt(exchange, sight, light.exitance, eye, keySide),
    };
  });
  const ambientLux = ambientEv100 === null ? 0 : illuminanceFromEv100(ambientEv100);
  return {
    ...litBy(parts, ambientLux, exposure),
    observedStops: frame.stops,
    sdStops: OBSERVED_SD_STOPS[frame.source],
  };
}

/**
 * What the test frames of a night have taught about its heads, modifiers, room and ambient. Frames of the
 * background are kept, but not read: what they show hangs on where the camera looked.
 *
 * @param remember keeps what a frame's lights did, so that it is worked out once
 * @source bayes-normal
 */
export function roomFit(
  exchange: RoomExchange,
  sight: Sight,
  input: LightInput,
  remember: (name: string, madeFrom: string, make: () => Observation | null) => Observation | null,
): Belief {
  const ids = [...input.units, ...input.taken.flatMap(({ units }) => units)].flatMap(
    ({ unknownIds }) => unknownIds,
  );
  const prior = priorBelief(
    [...new Set([...ids, ROOM, AMBIENT])].map((id) => ({ id, sdStops: spreadOf(id) })),
  );
  const seen = input.taken.map((frame) =>
    remember(frame.id, JSON.stringify(frame), () => observed(exchange, sight, frame)),
  );
  return beliefFrom(
    prior,
    seen.filter((one) => one !== null),
  );
}

/**
 * Factors that a belief puts on a unit's straight light, and on what the room returns of any light.
 *
 * @returns factor [1]
 * @source bayes-normal
 */
export function outputFactor(belief: Belief, unit: LightUnit): number {
  return ratioFromStops(unit.unknownIds.reduce((sum, id) => sum + (offsetOf(belief, id)?.meanStops ?? 0), 0));
}

/** @returns factor on returned light [1] @source bayes-normal */
export function roomFactor(belief: Belief): number {
  return ratioFromStops(offsetOf(belief, ROOM)?.meanStops ?? 0);
}

/** @returns factor on the ambient light [1] @source bayes-normal */
export function ambientFactor(belief: Belief): number {
  return ratioFromStops(offsetOf(belief, AMBIENT)?.meanStops ?? 0);
}

/** @returns every unknown with what is believed of it @source bayes-normal */
export function learntOf(belief: Belief): Learnt[] {
  return belief.ids.flatMap((id) => {
    const offset = offsetOf(belief, id);
    return offset ? [{ id, ...offset }] : [];
  });
}

/**
 * The next test frame: of one light alone on a stand-in, or of the ambient alone, the one that narrows subject
 * and rim most.
 *
 * @param subject, rim what each light gives there at full power; rim empty without a back light
 * @source bayes-normal
 */
export function nextFrame(
  belief: Belief,
  subject: readonly UnitParts[],
  rim: readonly UnitParts[],
  ambientLux: number,
  exposure: Exposure,
): NextFrame | null {
  const sdStops = OBSERVED_SD_STOPS.seen;
  const alone = (parts: readonly UnitParts[], isRim: boolean): Candidate[] =>
    parts
      .filter(({ unit }) => (unit.job === 'back') === isRim)
      .map((part) => ({ id: part.unit.id, sdStops, ...litBy([part], ambientLux, exposure) }));
  const ambient: Candidate = { id: AMBIENT, sdStops, ...litBy([], ambientLux, exposure) };
  const targets = [litBy(subject, ambientLux, exposure)];
  if (rim.length > 0) targets.push(litBy(rim, ambientLux, exposure));
  const best = mostTelling(belief, [...alone(subject, false), ...alone(rim, true), ambient], targets);
  if (!best) return null;
  const unit = [...subject, ...rim].find((part) => part.unit.id === best.id)?.unit;
  return {
    unitIds: unit ? [unit.id] : [],
    what: unit?.job === 'back' ? 'rim' : 'subject',
    beforeStops: best.sdBeforeStops,
    afterStops: best.sdAfterStops,
  };
}
