import * as Y from 'yjs';
import { entryAt } from '../../shared/document/entries.ts';
import { SCHEMA_VERSION } from '../../shared/document/schema.ts';
import type { NightId } from '../../shared/ids.ts';
import type { Log } from '../logging.ts';
import type { NightRecord, Store } from '../store/store.ts';
import type { Time } from '../time.ts';
import { AwarenessRelay } from './awareness-relay.ts';
import { answerFrame, askFrame, awarenessFrame, durableFrame } from './frames.ts';
import { DISK_REST_MS } from './limits.ts';
import type { NightDocument } from './night-document.ts';

/** A phone in the room, as the room sees it. */
export interface Member {
  send(frame: Uint8Array): void;
  /** 1012: the server stops. 1013: the disk does not write; try again. */
  end(code: 1012 | 1013, why: string): void;
}

export type Taken = 'taken' | 'nothing-new' | 'gap' | 'garbage' | 'disk';

/** One night and the phones that are in it. Nothing is passed on before it is on the disk. */
export class Room {
  readonly record: NightRecord;
  readonly #document: NightDocument;
  readonly #store: Store;
  readonly #time: Time;
  readonly #log: Log;
  readonly #members = new Set<Member>();
  readonly awareness: AwarenessRelay<Member>;
  #failedAt: number | null = null;
  #writing = 0;
  #whenIdle: (() => void)[] = [];

  constructor(record: NightRecord, document: NightDocument, deps: { store: Store; time: Time; log: Log }) {
    this.record = record;
    this.#document = document;
    this.#store = deps.store;
    this.#time = deps.time;
    this.#log = deps.log.child({ night: record.id });
    this.awareness = new AwarenessRelay((update) => this.#broadcast(awarenessFrame(update)));
  }

  get id(): NightId {
    return this.record.id;
  }

  /** The disk refused the last write. */
  get failed(): boolean {
    return this.#failedAt !== null;
  }

  /** A newer server wrote this night: it may be looked at, not written to. */
  get fromNewerApp(): boolean {
    return (entryAt(this.#document.onDisk, 'about', 'schema', 'about/schema') ?? 0) > SCHEMA_VERSION;
  }

  /** Lets a phone in. One that may write is asked at once for what it has and this night lacks. */
  join(member: Member, mayWrite: boolean): void {
    this.#members.add(member);
    if (mayWrite) member.send(askFrame(this.#stateVector()));
    member.send(durableFrame(this.#stateVector()));
    const shown = this.awareness.everything();
    if (shown) member.send(awarenessFrame(shown));
  }

  leave(member: Member): void {
    this.#members.delete(member);
    this.awareness.leave(member);
  }

  /** What the night has on the disk beyond a state vector; null when that is none. */
  answer(stateVector: Uint8Array): Uint8Array | null {
    try {
      return answerFrame(Y.encodeStateAsUpdate(this.#document.onDisk, stateVector));
    } catch {
      return null;
    }
  }

  /**
   * Takes an update from a phone: checks it, starts the write, and passes `frame` on to everybody, the sender
   * included, when the disk has it. Returns at once; "disk" means that nothing can be stored now.
   */
  take(update: Uint8Array, frame: Uint8Array): Taken {
    if (this.#failedAt !== null && this.#time.now() - this.#failedAt < DISK_REST_MS) return 'disk';
    const verdict = this.#document.offer(update);
    if (verdict !== 'taken') return verdict;
    this.#writing += 1;
    this.#store.append(this.id, update).then(
      () => this.#stored(update, frame),
      (error: unknown) => this.#notStored(update, error),
    );
    return 'taken';
  }

  /** Ends all connections, waits for what is being written, and lets go. */
  async close(): Promise<void> {
    for (const member of [...this.#members]) member.end(1012, 'the server stops');
    await this.idle();
    this.awareness.destroy();
    this.#document.destroy();
  }

  /** Resolves when nothing is on its way to the disk. */
  idle(): Promise<void> {
    if (this.#writing === 0) return Promise.resolve();
    return new Promise((resolve) => this.#whenIdle.push(resolve));
  }

  #stored(update: Uint8Array, frame: Uint8Array): void {
    this.#failedAt = null;
    this.#broadcast(frame);
    this.#document.keep(update);
    this.#broadcast(durableFrame(this.#stateVector()));
    this.#written();
  }

  #notStored(update: Uint8Array, error: unknown): void {
    this.#failedAt = this.#time.now();
    this.#log.error({ error }, 'store error');
    this.#document.drop(update);
    for (const member of [...this.#members]) member.end(1013, 'the night cannot be stored');
    this.#written();
  }

  #written(): void {
    this.#writing -= 1;
    if (this.#writing > 0) return;
    const waiting = this.#whenIdle;
    this.#whenIdle = [];
    for (const resolve of waiting) resolve();
  }

  #stateVector(): Uint8Array {
    return Y.encodeStateVector(this.#document.onDisk);
  }

  #broadcast(frame: Uint8Array): void {
    for (const member of this.#members) member.send(frame);
  }
}
