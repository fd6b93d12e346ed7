import { type ReadonlySignal, signal } from '@preact/signals';
import { IndexeddbPersistence } from 'y-indexeddb';
import type * as Y from 'yjs';

/** Whether this phone can hold the night by itself. */
export type Keeping = 'opening' | 'kept' | 'cannot';

export interface Keeper {
  readonly keeping: ReadonlySignal<Keeping>;
  /** Resolves when what the phone held is in the document, or when it is known to hold nothing. */
  readonly ready: Promise<void>;
  readonly close: () => void;
}

/** Writes and reads one value: the library that keeps the document swallows its errors, so they are looked for first. */
function canStore(name: string): Promise<boolean> {
  return new Promise((resolve) => {
    try {
      const request = indexedDB.open(`${name}/probe`, 1);
      request.onupgradeneeded = () => request.result.createObjectStore('probe');
      request.onerror = () => resolve(false);
      request.onsuccess = () => {
        const act = request.result.transaction('probe', 'readwrite');
        act.objectStore('probe').put(Date.now(), 'written');
        act.oncomplete = () => {
          request.result.close();
          resolve(true);
        };
        act.onerror = () => resolve(false);
        act.onabort = () => resolve(false);
      };
    } catch {
      resolve(false);
    }
  });
}

/** Keeps a document on this phone, under a name of its own for each night and role. */
export function keepDocument(doc: Y.Doc, name: string): Keeper {
  const keeping = signal<Keeping>('opening');
  let store: IndexeddbPersistence | null = null;
  const open = async () => {
    if (!(await canStore(name))) {
      keeping.value = 'cannot';
      return;
    }
    store = new IndexeddbPersistence(name, doc);
    await store.whenSynced;
    keeping.value = 'kept';
  };
  const ready = open().catch(() => {
    keeping.value = 'cannot';
  });
  return { keeping, ready, close: () => void store?.destroy() };
}
