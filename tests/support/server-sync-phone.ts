import { createDecoder, readVarUint8Array } from 'lib0/decoding';
import { onTestFinished } from 'vitest';
import { WebSocket as NodeWebSocket } from 'ws';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { declareRoots, rootOf } from '../../shared/document/roots.ts';
import { SYNC_MESSAGE, SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import type { PairedPhone } from './server-scene.ts';

/** A phone on the sync socket, with the provider that the app uses. */
export interface SyncPhone {
  readonly doc: Y.Doc;
  readonly provider: WebsocketProvider;
  /** Resolves when the document fits; looked at after every change of it. */
  docShows(fits: (doc: Y.Doc) => boolean): Promise<void>;
  /** Resolves when it has been synced once since the last connection. */
  synced(): Promise<void>;
  /** Resolves when the server says that everything this phone wrote is on its disk. */
  everythingDurable(): Promise<void>;
  /** Resolves with the code of the next close for good. */
  closedForGood(): Promise<number>;
  /** Resolves with the code of the next close of any kind. */
  closed(): Promise<number>;
  /** Writes a log entry under a key of its own. */
  write(key: string, what: string): void;
}

/** The WebSocket of Node, with a phone's cookie: a browser sends it by itself. */
function socketWithCookie(cookie: string): typeof WebSocket {
  return class extends NodeWebSocket {
    constructor(url: string | URL, protocols?: string | string[]) {
      super(url, protocols, { headers: { cookie } });
    }
  } as unknown as typeof WebSocket;
}

/** Resolves at once or after the first event of `listen` at which `fits` holds. */
function when(fits: () => boolean, listen: (look: () => void) => () => void): Promise<void> {
  return new Promise((resolve) => {
    if (fits()) return resolve();
    const stop = listen(() => {
      if (!fits()) return;
      stop();
      resolve();
    });
  });
}

/** Opens a document on a server as a phone does; ended with the test. */
export function openSync(phone: PairedPhone, doc: Y.Doc = new Y.Doc()): SyncPhone {
  declareRoots(doc);
  const provider = new WebsocketProvider(`${phone.url.replace('http', 'ws')}${SYNC_PATH}`, phone.night, doc, {
    WebSocketPolyfill: socketWithCookie(phone.cookie),
    // Two providers of one process would sync with each other, past the server.
    disableBc: true,
    params: { as: phone.role },
    maxBackoffTime: 100,
  });
  let durable = new Map<number, number>();
  const looks = new Set<() => void>();
  provider.messageHandlers[SYNC_MESSAGE.durable] = (_encoder, decoder) => {
    durable = Y.decodeStateVector(readVarUint8Array(decoder));
    for (const look of [...looks]) look();
  };
  provider.messageHandlers[SYNC_MESSAGE.heartbeat] = () => undefined;
  onTestFinished(() => {
    provider.destroy();
    doc.destroy();
  });
  const onDoc = (look: () => void) => {
    doc.on('update', look);
    return () => doc.off('update', look);
  };
  return {
    doc,
    provider,
    docShows: (fits) => when(() => fits(doc), onDoc),
    synced: () =>
      when(
        () => provider.synced,
        (look) => {
          provider.on('sync', look);
          return () => provider.off('sync', look);
        },
      ),
    everythingDurable: () =>
      when(
        () => (durable.get(doc.clientID) ?? 0) >= Y.getState(doc.store, doc.clientID),
        (look) => {
          looks.add(look);
          return () => looks.delete(look);
        },
      ),
    closedForGood: () => new Promise((resolve) => provider.once('closed', ({ code }) => resolve(code))),
    closed: () =>
      new Promise((resolve) => provider.once('connection-close', (event) => resolve(event?.code ?? 0))),
    write: (key, what) => void rootOf(doc, 'log').set(key, { by: 'x', at: 1, what, about: '', detail: null }),
  };
}

/** Does the document hold a log entry under this key? */
export const hasEntry = (key: string) => (doc: Y.Doc) => rootOf(doc, 'log').has(key);

/** The payload of a frame that has one type number before it. */
export function payloadOf(frame: Uint8Array, skip: number): Uint8Array {
  const decoder = createDecoder(frame);
  decoder.pos = skip;
  return readVarUint8Array(decoder);
}
