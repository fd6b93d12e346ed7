import { type ReadonlySignal, signal } from '@preact/signals';

const now = signal(Date.now());
setInterval(() => {
  now.value = Date.now();
}, 1000);

/** This phone's clock, once a second: for ages that are read by people ("seen, 12 s"). */
export const everySecond: ReadonlySignal<number> = now;
