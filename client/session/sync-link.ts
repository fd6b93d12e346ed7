import { type ReadonlySignal, signal } from '@preact/signals';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { type CloseReason, closeReason } from '../../shared/messages/close-reasons.ts';
import { SYNC_MESSAGE, SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import type { Role } from '../../shared/roles.ts';
import { Watchdog } from './watchdog.ts';

export type LinkState =
  | { readonly state: 'opening' | 'up' | 'down'; readonly since: number }
  | { readonly state: 'refused'; readonly reason: CloseReason; readonly since: number };

/** The sync socket of a night: how it stands, and what the server has on its disk. */
export interface SyncLink {
  readonly link: ReadonlySignal<LinkState>;
  /** By client of the document: how many of its changes are durable on the server. */
  readonly durable: ReadonlySignal<ReadonlyMap<number, number>>;
  /** The server's state has arrived once since this page was opened. */
  readonly synced: ReadonlySignal<boolean>;
  /** Drops the connection and opens it anew, at once. */
  readonly restart: () => void;
  readonly close: () => void;
}

/** On a network of two phones a long pause before the next try helps nobody. */
const LONGEST_PAUSE_MS = 500;

/** Opens the sync socket for a document. The device token travels as a cookie. */
export function openSyncLink(doc: Y.Doc, night: string, role: Role): SyncLink {
  const link = signal<LinkState>({ state: 'opening', since: Date.now() });
  const durable = signal<ReadonlyMap<number, number>>(new Map());
  const synced = signal(false);
  const scheme = location.protocol === 'https:' ? 'wss:' : 'ws:';
  const provider = new WebsocketProvider(`${scheme}//${location.host}${SYNC_PATH.slice(0, -1)}`, night, doc, {
    params: { as: role },
    maxBackoffTime: LONGEST_PAUSE_MS,
    // Two faces in one browser are two phones: they must meet on the server, as phones do.
    disableBc: true,
  });
  const restart = () => {
    provider.disconnect();
    provider.wsUnsuccessfulReconnects = 0;
    provider.connect();
  };
  const watchdog = new Watchdog({
    probe: () => {
      const encoder = encoding.createEncoder();
      encoding.writeVarUint(encoder, SYNC_MESSAGE.heartbeat);
      if (provider.ws?.readyState === WebSocket.OPEN) provider.ws.send(encoding.toUint8Array(encoder));
    },
    restart: () => {
      if (link.peek().state !== 'refused') restart();
    },
    isOpen: () => provider.ws?.readyState === WebSocket.OPEN,
    isOpening: () => provider.wsconnecting,
  });
  provider.messageHandlers[SYNC_MESSAGE.durable] = (_encoder, decoder) => {
    watchdog.answered();
    durable.value = Y.decodeStateVector(decoding.readVarUint8Array(decoder));
  };
  provider.messageHandlers[SYNC_MESSAGE.heartbeat] = () => watchdog.answered();
  provider.on('status', ({ status }) => {
    if (link.peek().state === 'refused') return;
    const state = status === 'connected' ? 'up' : status === 'connecting' ? 'opening' : 'down';
    watchdog.answered();
    // Between two tries the socket is "connecting" again and again; to a person it is down since it went down.
    if (state === 'opening' && link.peek().state === 'down') return;
    if (state !== link.peek().state) link.value = { state, since: Date.now() };
  });
  provider.on('sync', (isSynced: boolean) => {
    watchdog.answered();
    if (isSynced) synced.value = true;
  });
  provider.on('connection-close', () => {
    // A try that never opened says nothing of its own: without this the first try would look open for ever.
    if (link.peek().state === 'opening') link.value = { state: 'down', since: Date.now() };
  });
  provider.on('closed', ({ code }) => {
    link.value = { state: 'refused', reason: closeReason(code) ?? 'not-allowed', since: Date.now() };
  });
  return {
    link,
    durable,
    synced,
    restart,
    close: () => {
      watchdog.close();
      provider.destroy();
    },
  };
}
