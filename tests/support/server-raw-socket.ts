import { onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import type { PairedPhone } from './server-scene.ts';

/** A sync socket without a provider: sends what it is told and keeps what it gets. */
export interface RawSocket {
  send(bytes: Uint8Array | string): void;
  /** Resolves with the first frame, past or coming, that fits. */
  frame(fits: (frame: Uint8Array) => boolean): Promise<Uint8Array>;
  /** All frames so far. */
  readonly frames: readonly Uint8Array[];
  readonly opened: Promise<void>;
  /** Resolves with the close code. */
  readonly closed: Promise<number>;
}

/** Opens the sync socket of a phone, or of anybody at all by overriding path and headers. */
export function openRaw(
  phone: Pick<PairedPhone, 'url' | 'night' | 'role' | 'cookie'>,
  overrides: { path?: string; headers?: Record<string, string> } = {},
): RawSocket {
  const path = overrides.path ?? `${SYNC_PATH}${phone.night}?as=${phone.role}`;
  const socket = new WebSocket(`${phone.url.replace('http', 'ws')}${path}`, {
    headers: { cookie: phone.cookie, ...overrides.headers },
  });
  const frames: Uint8Array[] = [];
  const looks = new Set<() => void>();
  socket.on('message', (data) => {
    frames.push(new Uint8Array(data as Buffer));
    for (const look of [...looks]) look();
  });
  const opened = new Promise<void>((resolve, reject) => {
    socket.once('open', resolve);
    socket.once('error', reject);
  });
  opened.catch(() => undefined); // a test that expects the close does not wait for the opening
  const closed = new Promise<number>((resolve) => socket.once('close', resolve));
  onTestFinished(() => socket.terminate());
  return {
    send: (bytes) => socket.send(bytes),
    frames,
    opened,
    closed,
    frame: (fits) =>
      new Promise((resolve) => {
        const look = () => {
          const found = frames.find(fits);
          if (!found) return;
          looks.delete(look);
          resolve(found);
        };
        looks.add(look);
        look();
      }),
  };
}
