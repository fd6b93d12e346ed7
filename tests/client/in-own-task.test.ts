import { signal } from '@preact/signals';
import { describe, expect, it, vi } from 'vitest';
import { inOwnTask } from '../../client/state/in-own-task.ts';

describe('a value that takes long to make', () => {
  it('is made at once while nothing moves', () => {
    const from = signal(1);
    const held = signal(false);
    const tenfold = (n: number) => () => n * 10;
    const { value, stop } = inOwnTask(() => tenfold(from.value), held, 0);
    expect(value.value).toBe(10);
    from.value = 2;
    expect(value.value).toBe(20);
    stop();
  });

  it('waits for a task of its own while a finger is down, and only the last is made', async () => {
    const from = signal(1);
    const held = signal(false);
    const made: number[] = [];
    const make = (n: number) => () => {
      made.push(n);
      return n;
    };
    const { value, stop } = inOwnTask(() => make(from.value), held, 0);
    held.value = true;
    for (let n = 2; n <= 9; n++) from.value = n;
    expect(value.value).toBe(1);
    held.value = false;
    await vi.waitFor(() => expect(value.value).toBe(9));
    expect(made).toEqual([1, 9]);
    stop();
  });

  it('is not made any more once nobody wants it', () => {
    vi.useFakeTimers();
    const from = signal(1);
    const held = signal(true);
    const made: number[] = [];
    const { stop } = inOwnTask(
      () => {
        const n = from.value;
        return () => made.push(n);
      },
      held,
      0,
    );
    stop();
    from.value = 2;
    vi.runAllTimers();
    vi.useRealTimers();
    expect(made).toEqual([]);
  });
});
