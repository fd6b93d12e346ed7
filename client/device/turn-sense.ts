import { type ReadonlySignal, signal } from '@preact/signals';
import { wrap180 } from '../../core/geometry/angle.ts';
import { remember, remembered } from '../session/own-settings.ts';
import { phoneHeadingDeg } from './phone-heading.ts';

/**
 * How a phone feels that it is turned: from its own zero, never from north. `listening`: nothing felt yet.
 * `not-secure`: a page over plain http gets no sensor.
 */
export type TurnSense = 'off' | 'not-secure' | 'none' | 'refused' | 'listening' | 'ready';

/** For so long after the tap a turn is taken for the truth: a gyroscope drifts. */
export const TRUSTED_MS = 60_000;
/** A phone with a sensor tells of itself within this. */
const SILENT_MS = 3000;
/** Finer than this nobody turns an arrow by hand, and the screen would be drawn for every tremble. */
const FELT_DEG = 3;

interface Felt {
  readonly turnedDeg: number;
  readonly untilMs: number;
}

const sense = signal<TurnSense>('off');
const felt = signal<Felt | null>(null);
let heading: number | null = null;
let zeroDeg: number | null = null;
let silent: ReturnType<typeof setTimeout> | undefined;

function onOrientation({ alpha, beta, gamma }: DeviceOrientationEvent): void {
  if (alpha === null || beta === null || gamma === null) return;
  clearTimeout(silent);
  sense.value = 'ready';
  heading = phoneHeadingDeg({ alphaDeg: alpha, betaDeg: beta, gammaDeg: gamma });
  const now = felt.peek();
  if (!now || heading === null) return;
  zeroDeg ??= heading;
  const turnedDeg = Math.round(wrap180(heading - zeroDeg) / FELT_DEG) * FELT_DEG;
  if (turnedDeg !== now.turnedDeg) felt.value = { ...now, turnedDeg };
}

type Asking = typeof DeviceOrientationEvent & { requestPermission?: () => Promise<string> };

async function listen(): Promise<void> {
  if (!isSecureContext) {
    sense.value = 'not-secure';
    return;
  }
  const sensor = (globalThis as { DeviceOrientationEvent?: Asking }).DeviceOrientationEvent;
  if (!sensor) {
    sense.value = 'none';
    return;
  }
  try {
    // Must be asked inside the tap, so nothing is awaited before it.
    const answer = await (sensor.requestPermission?.() ?? 'granted');
    if (answer !== 'granted') throw new Error(answer);
  } catch {
    sense.value = 'refused';
    return;
  }
  if (sense.peek() === 'ready') return;
  sense.value = 'listening';
  addEventListener('deviceorientation', onOrientation);
  clearTimeout(silent);
  silent = setTimeout(() => {
    if (sense.peek() === 'listening') sense.value = 'none';
  }, SILENT_MS);
}

const KEY = 'hushmark/turn-sense';
const wanted = signal(remembered(KEY));

/** Whether the person of this phone wants the arrow to turn with it. */
export const turnWanted: ReadonlySignal<boolean> = wanted;
/** What the phone can tell, once it was asked. */
export const turnSense: ReadonlySignal<TurnSense> = sense;
/** Since the last "I'm facing": how far the phone was turned, clockwise, and until when that is to be trusted. */
export const turnFelt: ReadonlySignal<Felt | null> = felt;

/** Switches the sense on or off, in a tap: some phones ask their person then. */
export function wantTurn(on: boolean): void {
  wanted.value = on;
  remember(KEY, on);
  felt.value = null;
  if (on) {
    void listen();
    return;
  }
  removeEventListener('deviceorientation', onOrientation);
  clearTimeout(silent);
  sense.value = 'off';
}

/** The person says what they face now: a new zero, in a tap. */
export function turnZero(): void {
  if (!wanted.peek()) return;
  zeroDeg = sense.peek() === 'ready' ? heading : null;
  felt.value = { turnedDeg: 0, untilMs: Date.now() + TRUSTED_MS };
  if (sense.peek() !== 'ready') void listen();
}

/** What was felt is trusted no more: the time is over, or the card has changed. */
export function forgetTurn(): void {
  felt.value = null;
}
