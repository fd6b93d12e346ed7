import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import * as Y from 'yjs';
import { keepDocument } from '../../client/session/keeping.ts';

afterEach(() => vi.unstubAllGlobals());

describe('the night on the phone', () => {
  it('[APP1] is there again when the page comes back', async () => {
    const before = new Y.Doc();
    const keeper = keepDocument(before, 'night-a');
    await keeper.ready;
    expect(keeper.keeping.value).toBe('kept');
    before.getMap('log').set('one', { what: 'said' });
    const written = new Promise((resolve) => before.on('destroy', resolve));
    keeper.close();
    before.destroy();
    await written;

    const after = new Y.Doc();
    await keepDocument(after, 'night-a').ready;
    expect(after.getMap('log').get('one')).toEqual({ what: 'said' });
    const other = new Y.Doc();
    await keepDocument(other, 'night-b').ready;
    expect(other.getMap('log').size).toBe(0);
  });

  it.each([
    ['there is none', undefined],
    [
      'opening it throws',
      {
        open: () => {
          throw new Error('private window');
        },
      },
    ],
    [
      'opening it fails later',
      {
        open: () => {
          const request = { onerror: null as (() => void) | null };
          queueMicrotask(() => request.onerror?.());
          return request;
        },
      },
    ],
  ])('[APP1] is said not to be kept where %s, and the phone works on', async (_, storage) => {
    vi.stubGlobal('indexedDB', storage);
    const keeper = keepDocument(new Y.Doc(), 'night-c');
    await keeper.ready;
    expect(keeper.keeping.value).toBe('cannot');
  });
});
