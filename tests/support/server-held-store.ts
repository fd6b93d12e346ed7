import { createMemoryStore } from '../../server/store/memory-store.ts';
import type { Store } from '../../server/store/store.ts';

/** A store whose writes of updates wait for the test, when it says so. */
export interface HeldStore extends Store {
  /** From now on appends wait. */
  hold(): void;
  /** Resolves when `count` appends wait. */
  waiting(count: number): Promise<void>;
  /** Lets the appends that wait through, and all later ones. */
  release(): Promise<void>;
  /** From now on appends fail, as on a full disk; those that wait fail too. */
  fail(): void;
  /** Appends work again. */
  mend(): void;
  /** How many updates were asked to be written, and how many of them are. */
  readonly asked: number;
  readonly written: number;
}

export function heldStore(inner: Store = createMemoryStore()): HeldStore {
  let state: 'open' | 'held' | 'failing' = 'open';
  let asked = 0;
  let written = 0;
  const queue: { go: () => Promise<void>; fail: () => void }[] = [];
  let watchers: { count: number; done: () => void }[] = [];
  const full = () => new Error('no space left on device');
  const tellWatchers = () => {
    for (const { count, done } of watchers) if (queue.length >= count) done();
    watchers = watchers.filter(({ count }) => queue.length < count);
  };
  return {
    ...inner,
    where: inner.where,
    get asked() {
      return asked;
    },
    get written() {
      return written;
    },
    append(id, update) {
      asked += 1;
      const go = () =>
        inner.append(id, update).then(() => {
          written += 1;
        });
      if (state === 'open') return go();
      if (state === 'failing') return Promise.reject(full());
      return new Promise<void>((resolve, reject) => {
        queue.push({ go: () => go().then(resolve, reject), fail: () => reject(full()) });
        tellWatchers();
      });
    },
    hold() {
      state = 'held';
    },
    waiting: (count) =>
      new Promise((done) => {
        watchers.push({ count, done });
        tellWatchers();
      }),
    async release() {
      state = 'open';
      for (const { go } of queue.splice(0)) await go();
    },
    fail() {
      state = 'failing';
      for (const { fail } of queue.splice(0)) fail();
    },
    mend() {
      state = 'open';
    },
  };
}
