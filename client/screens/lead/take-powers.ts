import type { Signal } from '@preact/signals';
import { powerLabel } from '../../../core/units/power.ts';
import { setCameraLight } from '../../../shared/document/commands/change-moment.ts';
import { nudgeCarry } from '../../../shared/document/commands/nudge-carry.ts';
import type { NightSession } from '../../session/night-session.ts';
import { CAMERA_UNIT } from '../../state/light-input.ts';
import type { RoomLightState } from '../../state/room-light.ts';
import { REFUSED } from '../../words/refusal-words.ts';
import type { Draft } from './draft.ts';

/** Less than half a click of a dial is no change, stops. */
const HALF_CLICK_STOPS = 1 / 6;

interface Hands {
  readonly session: NightSession;
  readonly draft: Signal<Draft | null>;
  readonly light: RoomLightState;
  readonly say: (text: string, undo?: (() => void) | null) => void;
  readonly ring: (kind: 'change', carryId: string) => void;
}

/** One light's power moved by so many stops: by a nudge, or on the camera itself. Null when that went through. */
function move({ session, ring }: Hands, id: string, byStops: number): string | null {
  const { doc, hand, night } = session;
  const moment = night.peek()?.moment;
  if (id === CAMERA_UNIT) {
    if (!moment) return REFUSED['no-such-moment'];
    const { cameraLight } = moment;
    const next = { ...cameraLight, powerStops: cameraLight.powerStops + byStops };
    const outcome = setCameraLight(doc, hand, moment.id, next);
    return outcome.ok ? null : REFUSED[outcome.reason];
  }
  const outcome = nudgeCarry(doc, hand, { standId: id, nudge: { kind: 'power', byStops } });
  if (!outcome.ok) return REFUSED[outcome.reason];
  ring('change', outcome.carryId);
  return null;
}

/**
 * Takes the solved power of every light: the draft in hand gets it, the others are nudged, and the flash on the
 * camera is noted. Undo nudges them back.
 */
export function takePowers(hands: Hands): void {
  const { light, draft, say } = hands;
  const report = light.lit.peek()?.report;
  if (!report) return;
  const changes = report.powers.lights.flatMap(({ id, powerStops }) => {
    const unit = light.units.peek().find((known) => known.id === id);
    const byStops = unit && powerStops !== null ? powerStops - unit.mark.powerStops : 0;
    return unit && Math.abs(byStops) >= HALF_CLICK_STOPS ? [{ unit, byStops }] : [];
  });
  if (changes.length === 0) {
    say('The powers are as wanted already.');
    return;
  }
  const inHand = draft.peek();
  const away = changes.filter(({ unit }) => unit.id !== inHand?.standId);
  for (const { unit, byStops } of changes) {
    if (inHand && unit.id === inHand.standId) {
      const powerStops = inHand.mark.powerStops + byStops;
      draft.value = { ...inHand, mark: { ...inHand.mark, powerStops } };
    }
  }
  const refused = away.map(({ unit, byStops }) => move(hands, unit.id, byStops)).find((why) => why !== null);
  if (refused) {
    say(refused);
    return;
  }
  const words = changes.map(
    ({ unit, byStops }) => `${unit.letter} ${powerLabel(unit.mark.powerStops + byStops)}`,
  );
  say(`Called: ${words.join(', ')}.`, () => {
    for (const { unit, byStops } of away) move(hands, unit.id, -byStops);
    say('Powers put back.');
  });
}
