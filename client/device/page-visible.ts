import { type ReadonlySignal, signal } from '@preact/signals';

const visible = signal(document.visibilityState === 'visible');
document.addEventListener('visibilitychange', () => {
  visible.value = document.visibilityState === 'visible';
});

/** Whether a person can see this page now. */
export const pageVisible: ReadonlySignal<boolean> = visible;
