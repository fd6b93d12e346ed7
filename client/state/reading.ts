import type { Caution } from '../../core/cautions/caution.ts';
import { markCautions } from '../../core/cautions/mark-cautions.ts';
import { outlineOf } from '../../core/geometry/shape.ts';
import { ev100FromIlluminance } from '../../core/light/exposure.ts';
import { ambientLuxAt } from '../../core/light/lamps/ambient-at.ts';
import { type CannotSheet, type LightSheet, lightSheet } from '../../core/light/light-sheet.ts';
import type { UnitReport } from '../../core/light/report/light-report.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { Mark } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { buildOf, sourceOf, umbrellaOf } from './gear.ts';

/** What the room and the other lights add to one light at the subject; nothing until it was worked out. */
export type Added = Pick<UnitReport, 'returnedLuxSeconds' | 'othersLuxSeconds'>;
export const NOTHING_ADDED: Added = { returnedLuxSeconds: 0, othersLuxSeconds: 0 };

/** The light sheet of one stand at a mark, for the moment that is on. */
export function sheetAt(
  night: Night,
  stand: Stand,
  mark: Mark,
  { returnedLuxSeconds, othersLuxSeconds }: Added,
): LightSheet | CannotSheet {
  const source = sourceOf(night, stand);
  const moment = night.moment;
  if (!source) return { kind: 'cannot', reason: 'The gear list does not hold the head of this stand.' };
  if (!moment) return { kind: 'cannot', reason: 'No moment is on: there is no camera and no subject.' };
  const { subject, camera, frame } = moment.view;
  const lux = ambientLuxAt(night.ambientSpots, subject.spot, night.ambientEv100);
  return lightSheet({
    source,
    mark,
    subject: { spot: subject.spot, eyeM: subject.eyeM },
    camera,
    frame,
    exposure: moment.exposure,
    ambientEv100: lux === null ? null : ev100FromIlluminance(lux),
    returnedLuxSeconds,
    othersLuxSeconds,
    targetStops: moment.wish.subjectStops,
  });
}

/** The cautions for one stand at a mark, worst first. */
export function cautionsAt(night: Night, stand: Stand, mark: Mark): Caution[] {
  const umbrella = umbrellaOf(night, stand);
  const solid = night.features.filter((feature) => feature.blocksWalking);
  const exits = night.features.filter((feature) => feature.kind === 'exit');
  return markCautions({
    mark,
    umbrella: umbrella && { diameterM: umbrella.diameterM },
    build: buildOf(night, stand),
    obstacles: solid.map((feature) => ({
      id: feature.id,
      name: feature.name,
      outline: outlineOf(feature),
      chairs: feature.chairs,
    })),
    exits: exits.map((feature) => ({ id: feature.id, name: feature.name, outline: outlineOf(feature) })),
    room: night.room?.outline ?? [],
  });
}
