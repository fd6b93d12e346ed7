import type { RawData, WebSocket } from 'ws';
import { CLOSE_REASONS, type CloseReason } from '../../shared/messages/close-reasons.ts';
import { LARGEST_SYNC_BYTES } from '../../shared/messages/sync-codes.ts';
import { TokenBucket } from '../access/token-bucket.ts';
import type { Log } from '../logging.ts';
import type { Device } from '../store/store.ts';
import { awarenessFrame, readFrame, type SyncFrame } from './frames.ts';
import { MOST_UNSENT_BYTES, type SyncLimits } from './limits.ts';
import type { Member, Room } from './room.ts';

interface Surroundings {
  readonly room: Room;
  readonly device: Device;
  readonly limits: SyncLimits;
  readonly now: () => number;
  readonly log: Log;
}

/** One phone's sync socket: reads, limits and answers. A refusal always closes, for a phone whose update was left out has another night. */
export class SyncConnection implements Member {
  readonly #socket: WebSocket;
  readonly #around: Surroundings;
  readonly #messages: TokenBucket;
  readonly #bytes: TokenBucket;
  #answered = true;
  /** It has answered the question of this connection: from here on its updates follow one another without a gap. */
  #toldAll = false;

  /** Listens before it returns: what the phone sends in the same breath as its handshake is not lost. */
  constructor(socket: WebSocket, around: Surroundings) {
    this.#socket = socket;
    this.#around = around;
    this.#messages = new TokenBucket(around.limits.messages, around.now);
    this.#bytes = new TokenBucket(around.limits.bytes, around.now);
    socket.on('message', (data, isBinary) => this.#receive(data, isBinary));
    socket.on('pong', () => {
      this.#answered = true;
    });
    socket.on('close', () => around.room.leave(this));
    around.room.join(this, this.#mayWrite());
  }

  send(frame: Uint8Array): void {
    if (this.#socket.readyState !== this.#socket.OPEN) return;
    if (this.#socket.bufferedAmount > MOST_UNSENT_BYTES) this.end(1013, 'the phone takes nothing');
    else this.#socket.send(frame);
  }

  end(code: 1012 | 1013, why: string): void {
    this.#socket.close(code, why);
  }

  /** Asks whether the phone is there, and cuts it off if it has not answered the last time. */
  ping() {
    if (!this.#answered) return this.#socket.terminate();
    this.#answered = false;
    this.#socket.ping();
  }

  #mayWrite(): boolean {
    return this.#around.device.role !== 'looker-on' && !this.#around.room.fromNewerApp;
  }

  #receive(data: RawData, isBinary: boolean) {
    if (this.#socket.readyState !== this.#socket.OPEN) return; // refused before: the rest is not read
    const bytes = data instanceof Uint8Array ? data : null;
    if (!bytes || !isBinary) return this.#refuse('garbage');
    if (bytes.length > LARGEST_SYNC_BYTES) return this.#refuse('too-large');
    if (!this.#messages.take() || !this.#bytes.take(bytes.length)) return this.#refuse('too-many');
    const frame = readFrame(bytes);
    if (!frame) return this.#refuse('garbage');
    this.#act(frame, bytes);
  }

  #act(frame: SyncFrame, bytes: Uint8Array) {
    switch (frame.kind) {
      case 'update':
        return this.#update(frame);
      case 'ask': {
        const answer = this.#around.room.answer(frame.stateVector);
        return answer ? this.send(answer) : this.#refuse('garbage');
      }
      case 'awareness':
        return this.#awareness(frame.update);
      case 'query-awareness': {
        const shown = this.#around.room.awareness.everything();
        return shown ? this.send(awarenessFrame(shown)) : undefined;
      }
      case 'heartbeat':
        return this.send(bytes);
      default:
        return frame satisfies never;
    }
  }

  #update({ update, frame, answers }: Extract<SyncFrame, { kind: 'update' }>) {
    const { room, device } = this.#around;
    if (device.role === 'looker-on') return this.#refuse('not-allowed');
    if (room.fromNewerApp) return this.#refuse('other-version');
    const taken = room.take(update, frame);
    // What was written between opening the socket and answering builds on what only the answer brings; the answer
    // brings this too, so it is set aside. After the answer a gap means that the phone's bytes went wrong.
    const early = taken === 'gap' && !this.#toldAll && !answers;
    if (answers) this.#toldAll = true;
    if (early) return;
    if (taken === 'garbage' || taken === 'gap') this.#refuse('garbage');
    else if (taken === 'disk') this.end(1013, 'the night cannot be stored');
  }

  #awareness(update: Uint8Array) {
    if (update.length > this.#around.limits.awarenessBytes) return this.#refuse('too-large');
    if (!this.#around.room.awareness.take(update, this)) this.#refuse('garbage');
  }

  #refuse(reason: CloseReason): void {
    this.#around.log.warn({ reason }, 'update refused');
    this.#socket.close(CLOSE_REASONS[reason], reason);
  }
}
