import { type ReadonlySignal, signal } from '@preact/signals';

/** `unavailable`: this browser or this plain-http page has no such lock; `released`: the phone took it back. */
export type Waking = 'off' | 'held' | 'released' | 'unavailable';

const state = signal<Waking>('off');
let wanted = false;
let lock: WakeLockSentinel | null = null;

async function request(): Promise<void> {
  if (!('wakeLock' in navigator)) {
    state.value = 'unavailable';
    return;
  }
  if (lock || document.visibilityState !== 'visible') return;
  try {
    const sentinel = await navigator.wakeLock.request('screen');
    lock = sentinel;
    state.value = 'held';
    sentinel.addEventListener('release', () => {
      lock = null;
      state.value = wanted ? 'released' : 'off';
    });
    if (!wanted) await sentinel.release();
  } catch {
    state.value = 'released';
  }
}

document.addEventListener('visibilitychange', () => {
  if (wanted) void request();
});

/** Asks that the screen stay on, or lets it sleep again. The lock is lost when the page hides; it is asked for again. */
export function keepAwake(on: boolean): void {
  wanted = on;
  if (on) void request();
  else void lock?.release();
}

export const waking: ReadonlySignal<Waking> = state;
