import { recordTestFrame } from '../../../shared/document/commands/test-frame.ts';
import { type Outcome, refuse } from '../../../shared/document/outcome.ts';
import type { TestFrame } from '../../../shared/document/parts.ts';
import type { FrameId } from '../../../shared/ids.ts';
import { CAMERA_UNIT } from '../../state/light-input.ts';
import type { LeadState } from './lead-state.ts';

export interface Result {
  readonly unitIds: readonly string[];
  readonly source: TestFrame['source'];
  readonly what: TestFrame['what'];
  readonly stops: number;
}

/** Keeps a test frame of the moment that is on, with everything as it is set now. */
export function recordFrame(state: LeadState, result: Result): Outcome<{ readonly frameId: FrameId }> {
  const { doc, hand } = state.session;
  const night = state.session.night.peek();
  const moment = night?.moment;
  if (!night || !moment) return refuse('no-such-moment');
  const { subject, camera } = moment.view;
  const fired = state.units.peek().filter(({ id }) => result.unitIds.includes(id));
  const lights = fired.flatMap((unit): TestFrame['lights'] => {
    if (unit.id === CAMERA_UNIT) {
      const { use } = moment.cameraLight;
      return night.cameraKit && use !== 'off'
        ? [{ on: 'camera', use, ...night.cameraKit, mark: unit.mark }]
        : [];
    }
    const kit = night.stands.find(({ id }) => id === unit.id)?.kit;
    if (!kit) return [];
    const { job, headGear, umbrellaGear } = kit;
    return [{ on: 'stand', standId: unit.id, job, headGear, umbrellaGear, mark: unit.mark }];
  });
  return recordTestFrame(doc, hand, {
    momentId: moment.id,
    lights,
    spot: subject.spot,
    eyeM: subject.eyeM,
    camera,
    exposure: moment.exposure,
    ambientEv100: night.ambientEv100,
    source: result.source,
    stops: result.stops,
    what: result.what,
  });
}
