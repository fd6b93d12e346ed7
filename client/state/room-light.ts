import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { LightUnit } from '../../core/light/report/light-input.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { Mark } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import type { Lit } from '../workers/room-light/messages.ts';
import {
  openRoomLight,
  type RoomLightLink,
  type RoomReadiness,
} from '../workers/room-light/room-light-link.ts';
import { lightInputOf, lightUnits } from './light-input.ts';
import { roomModelOf } from './room-model.ts';

/** The light of the room as the lead's face reads it. */
export interface RoomLightState {
  readonly readiness: ReadonlySignal<RoomReadiness>;
  readonly lit: ReadonlySignal<Lit | null>;
  readonly trouble: ReadonlySignal<string | null>;
  /** The flashes of the moment that is on, where they are meant to be. */
  readonly units: ReadonlySignal<readonly LightUnit[]>;
  readonly close: () => void;
}

const startWorker = () =>
  new Worker(new URL('../workers/room-light/worker.ts', import.meta.url), { type: 'module' });

/**
 * Keeps a worker at the room's light: tells it the room when that changes, and asks anew whenever a light, the
 * camera, the subject or a setting does.
 *
 * @param isMoving a finger holds a mark
 * @param markOf where a stand is meant to be; reading it inside is what makes a drag ask
 */
export function watchRoomLight(
  night: ReadonlySignal<Night | null>,
  markOf: (stand: Stand) => Mark,
  isMoving: ReadonlySignal<boolean>,
): RoomLightState {
  const started = signal<RoomLightLink | null>(null);
  const units = computed(() => {
    const known = night.value;
    return known?.moment ? lightUnits(known, known.moment, markOf) : [];
  });
  const room = computed(() => {
    const model = night.value && roomModelOf(night.value);
    return model ? JSON.stringify(model) : null;
  });
  // The face is drawn first: a phone has two hands' worth of work when a page opens.
  const waiting = setTimeout(() => {
    started.value = openRoomLight(startWorker());
  }, 0);
  const stopRoom = effect(() => {
    if (started.value && room.value) started.value.setRoom(JSON.parse(room.value));
  });
  const stopAsking = effect(() => {
    const known = night.value;
    const input = known && lightInputOf(known, markOf, isMoving.value);
    if (started.value && input) started.value.ask(input);
  });
  return {
    readiness: computed(() => started.value?.readiness.value ?? { kind: 'working', part: 0 }),
    lit: computed(() => started.value?.lit.value ?? null),
    trouble: computed(() => started.value?.trouble.value ?? null),
    units,
    close: () => {
      clearTimeout(waiting);
      stopRoom();
      stopAsking();
      started.peek()?.close();
    },
  };
}
