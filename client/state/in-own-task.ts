import { effect, type ReadonlySignal, signal } from '@preact/signals';

/**
 * A value that takes long to make, made in a task of its own while a finger is down: the finger's own frame is not
 * kept waiting, and of several changes only the last is looked at. Otherwise it is made at once.
 *
 * @param wanted reads what the value hangs on and gives what makes it
 */
export function inOwnTask<Value>(
  wanted: () => () => Value,
  isMoving: ReadonlySignal<boolean>,
  first: Value,
): { readonly value: ReadonlySignal<Value>; readonly stop: () => void } {
  const value = signal(first);
  let latest: (() => Value) | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  const stopWatching = effect(() => {
    const make = wanted();
    if (!isMoving.peek() && timer === null) {
      value.value = make();
      return;
    }
    latest = make;
    timer ??= setTimeout(() => {
      timer = null;
      if (latest) value.value = latest();
    }, 0);
  });
  return {
    value,
    stop: () => {
      stopWatching();
      if (timer !== null) clearTimeout(timer);
    },
  };
}
