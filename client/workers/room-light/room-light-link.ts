import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { LightInput } from '../../../core/light/report/light-input.ts';
import type { RoomModel } from '../../../core/light/room/room-model.ts';
import type { FromRoomLight, Lit, Port, ToRoomLight } from './messages.ts';

/** How far the room is: being worked out (0 to 1), or ready. */
export type RoomReadiness = { readonly kind: 'working'; readonly part: number } | { readonly kind: 'ready' };

/** The room's light as the page sees it: ask, and read what came last. */
export interface RoomLightLink {
  readonly readiness: ReadonlySignal<RoomReadiness>;
  /** The last good answer; stays when a later question has none. */
  readonly lit: ReadonlySignal<Lit | null>;
  /** Why the last question or the last room could not be worked out; null when it could. */
  readonly trouble: ReadonlySignal<string | null>;
  readonly setRoom: (room: RoomModel) => void;
  readonly ask: (input: LightInput) => void;
  readonly close: () => void;
}

/**
 * Speaks with the worker. One question is under way at a time; of those asked meanwhile only the last is kept, so
 * that a finger never waits for the places it has already left.
 *
 * @param port the worker; its `terminate` is called on close
 */
export function openRoomLight(port: Port<ToRoomLight> & { terminate?: () => void }): RoomLightLink {
  const readiness = signal<RoomReadiness>({ kind: 'working', part: 0 });
  const lit = signal<Lit | null>(null);
  // An answer about the light takes back only what was said of the light: a room that cannot be stays named.
  const roomTrouble = signal<string | null>(null);
  const lightTrouble = signal<string | null>(null);
  let number = 0;
  let underWay = false;
  let isReady = false;
  let next: LightInput | null = null;
  let latest: LightInput | null = null;
  const send = () => {
    if (underWay || !next) return;
    underWay = true;
    port.postMessage({ kind: 'light', number: ++number, input: next });
    next = null;
  };
  const answered = () => {
    underWay = false;
    send();
  };
  port.onmessage = ({ data }) => {
    const message = data as FromRoomLight;
    switch (message.kind) {
      case 'progress':
        readiness.value = { kind: 'working', part: message.part };
        break;
      case 'ready':
        isReady = true;
        readiness.value = { kind: 'ready' };
        // What was answered so far was the old room's; what is under way will be the new one's.
        if (!underWay) next ??= latest;
        send();
        break;
      case 'lit':
        lit.value = message.lit;
        lightTrouble.value = null;
        answered();
        break;
      case 'trouble':
        if (message.number !== null) {
          lightTrouble.value = message.reason;
          answered();
          break;
        }
        roomTrouble.value = message.reason;
        // The room of before, if there was one, is still in use.
        if (isReady) readiness.value = { kind: 'ready' };
        break;
    }
  };
  return {
    readiness,
    lit,
    trouble: computed(() => roomTrouble.value ?? lightTrouble.value),
    setRoom: (room) => {
      roomTrouble.value = null;
      readiness.value = { kind: 'working', part: 0 };
      port.postMessage({ kind: 'room', room });
    },
    ask: (input) => {
      next = input;
      latest = input;
      send();
    },
    close: () => {
      port.onmessage = null;
      port.terminate?.();
    },
  };
}
