import { computed, type ReadonlySignal, signal } from '@preact/signals';
import * as Y from 'yjs';
import { enterNight } from '../../shared/document/commands/enter-night.ts';
import { declareRoots } from '../../shared/document/roots.ts';
import { type Night, readNight } from '../../shared/document/snapshot.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { makeId } from '../../shared/ids.ts';
import type { Membership } from '../../shared/messages/http.ts';
import { type Keeper, keepDocument } from './keeping.ts';
import { rememberedStep } from './own-step.ts';
import { hasUnsent } from './sent.ts';
import { openSignalsLink, type SignalsLink } from './signals-link.ts';
import { openSyncLink, type SyncLink } from './sync-link.ts';

/** Everything a face needs of the night it is in. The only code that knows sockets lies behind it. */
export interface NightSession {
  readonly doc: Y.Doc;
  readonly me: Membership;
  readonly hand: Hand;
  /** The night as plain values; null until this phone holds any of it. */
  readonly night: ReadonlySignal<Night | null>;
  readonly sync: SyncLink;
  readonly signals: SignalsLink;
  readonly keeper: Keeper;
  /** Something written here is not on the server's disk yet. */
  readonly unsent: ReadonlySignal<boolean>;
  readonly close: () => void;
}

const randomBytes = (count: number) => crypto.getRandomValues(new Uint8Array(count));
const newId = () => makeId(randomBytes);

/** Opens a night on this phone: what it holds itself first, then the server's word. */
export async function openNightSession(me: Membership): Promise<NightSession> {
  const doc = new Y.Doc();
  declareRoots(doc);
  const keeper = keepDocument(doc, `hushmark/${me.night}/${me.role}`);
  await keeper.ready;
  const signals = openSignalsLink(me.night, me.role);
  const sync = openSyncLink(doc, me.night, me.role);
  const hand: Hand = {
    person: me.person,
    now: () => Math.round(Date.now() + (signals.clock.peek()?.offsetMs ?? 0)),
    newId,
  };
  const changes = signal(0);
  const night = signal<Night | null>(null);
  const read = () => {
    const fresh = readNight(doc);
    night.value = fresh.about ? fresh : null;
    changes.value++;
  };
  // After the change has been handed to the socket, and once for changes that come together.
  let waiting = false;
  doc.on('afterTransaction', (transaction) => {
    if (transaction.changed.size === 0 || waiting) return;
    waiting = true;
    queueMicrotask(() => {
      waiting = false;
      read();
    });
  });
  read();
  const unsent = computed(() => {
    void changes.value;
    return hasUnsent(doc, sync.durable.value);
  });
  // A phone writes itself into the night only once it has it: before that there is nothing to be in.
  const stopEntering = night.subscribe((known) => {
    if (known && me.role !== 'looker-on')
      enterNight(doc, hand, { name: me.name, role: me.role, stepM: rememberedStep() });
  });
  return {
    doc,
    me,
    hand,
    night,
    sync,
    signals,
    keeper,
    unsent,
    close: () => {
      stopEntering();
      signals.close();
      sync.close();
      keeper.close();
      doc.destroy();
    },
  };
}
