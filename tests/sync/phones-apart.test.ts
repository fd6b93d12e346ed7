import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { type Called, callCarry } from '../../shared/document/commands/call-carry.ts';
import { setAmbient, setExposure, setView } from '../../shared/document/commands/change-moment.ts';
import { setUnits } from '../../shared/document/commands/enter-night.ts';
import { markSet } from '../../shared/document/commands/mark-set.ts';
import { nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import {
  cannotCarry,
  holdCall,
  releaseCall,
  stampDelivered,
  startCarrying,
} from '../../shared/document/commands/stamp-carry.ts';
import { acknowledgeWithdrawal, withdrawCarry } from '../../shared/document/commands/withdraw-carry.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import {
  callKey,
  carryOf,
  done,
  markAt,
  type Pair,
  phonePair,
  refusal,
  standOf,
} from '../support/document-night.ts';

/** Whatever is decided by who wins a tie is decided the same way on both phones, whoever wins. */
const WHO_WINS = [true, false] as const;

/** Lets each phone act while the other cannot be heard, then joins both again; all documents are level afterwards. */
function apart({ network, lead, assistant }: Pair, acts: { lead: () => void; assistant: () => void }): void {
  network.cut(lead.phone);
  network.cut(assistant.phone);
  acts.lead();
  acts.assistant();
  network.joinAllAndDrain();
  const [first, ...others] = network.docs.map((doc: Y.Doc) => readNight(doc));
  for (const other of others) expect(other).toEqual(first);
}

const onAll = ({ network }: Pair, look: (doc: Y.Doc) => void) => {
  for (const doc of network.docs) look(doc);
};

describe('two phones that do different things while apart', () => {
  it('[DOC2] a call by the lead and stamps by the assistant on another stand are both kept', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const pair = phonePair({ assistantWinsTies });
      const { lead, assistant, network } = pair;
      const back = done(callCarry(lead.doc, lead.hand, { standId: 'back', mark: markAt(4, 4) }));
      network.drain();
      let key: Called = back;
      apart(pair, {
        lead: () => {
          key = callKey(lead.doc, lead.hand);
        },
        assistant: () => {
          done(startCarrying(assistant.doc, assistant.hand, back));
          done(markSet(assistant.doc, assistant.hand, back));
        },
      });
      onAll(pair, (doc) => {
        expect(carryOf(doc, key).state).toBe('called');
        expect(carryOf(doc, back).state).toBe('set');
        expect(standOf(doc, 'back').place.mark).toEqual(markAt(4, 4));
      });
    }
  });

  it('[DOC2] exposure, view, ambient and units that were changed apart are all kept', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const pair = phonePair({ assistantWinsTies });
      const { lead, assistant } = pair;
      const exposure = { iso: 3200, fNumber: 2.8, shutterS: 1 / 125 };
      const seen = readNight(lead.doc).moment?.view;
      if (!seen) throw new Error('the demo night opens on a moment');
      const view = { ...seen, camera: { spot: { x: 9, y: 11 }, heightM: 1.5 } };
      apart(pair, {
        lead: () => {
          done(setExposure(lead.doc, lead.hand, 'first-dance', exposure));
          done(setAmbient(lead.doc, lead.hand, 3));
        },
        assistant: () => {
          done(setView(assistant.doc, assistant.hand, 'first-dance', view));
          done(setUnits(assistant.doc, assistant.hand, 'imperial'));
        },
      });
      onAll(pair, (doc) => {
        const night = readNight(doc);
        expect(night.moment).toMatchObject({ exposure, view });
        expect(night).toMatchObject({ ambientEv100: 3, units: 'imperial' });
      });
    }
  });

  it('[DOC1] two marks that were set apart for one stand never mix into a third', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const pair = phonePair({ assistantWinsTies });
      const { lead, assistant, network } = pair;
      const on = callKey(lead.doc, lead.hand);
      network.drain();
      const marks = [markAt(4, 9, { heightM: 2.5 }), markAt(12, 3, { heightM: 1.9 })] as const;
      apart(pair, {
        lead: () => done(markSet(lead.doc, lead.hand, on, marks[0])),
        assistant: () => done(markSet(assistant.doc, assistant.hand, on, marks[1])),
      });
      onAll(pair, (doc) => {
        const { mark } = standOf(doc, 'key').place;
        expect(marks).toContainEqual(mark);
        expect(carryOf(doc, on).current.stamps.set?.echo).toEqual(mark);
      });
    }
  });
});

describe('two phones that do things to one carry while apart', () => {
  it('[DOC7] set for the revision the assistant knew never closes the one the lead made meanwhile', () => {
    const pair = phonePair();
    const { lead, assistant, network } = pair;
    const first = callKey(lead.doc, lead.hand);
    network.drain();
    let second: Called = first;
    apart(pair, {
      lead: () => {
        second = done(
          nudgeCarry(lead.doc, lead.hand, { standId: 'key', nudge: { kind: 'height', byM: 0.2 } }),
        );
      },
      assistant: () => done(markSet(assistant.doc, assistant.hand, first)),
    });
    onAll(pair, (doc) => {
      const carry = carryOf(doc, second);
      expect(carry.state).toBe('called');
      expect(carry.current.id).toBe(second.revisionId);
      expect(carry.revisions[0]?.stamps.set?.by, 'what was done is kept').toBe('assistant');
      expect(standOf(doc, 'key').place.mark).toEqual(markAt(9, 6));
    });
  });

  it('[DOC8] of two revisions made apart with one number the same one is current on every phone', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const pair = phonePair({ assistantWinsTies });
      const { lead, assistant, network } = pair;
      const first = callKey(lead.doc, lead.hand);
      network.drain();
      const made: string[] = [];
      apart(pair, {
        lead: () => made.push(callKey(lead.doc, lead.hand, markAt(8, 6)).revisionId),
        assistant: () => made.push(callKey(assistant.doc, assistant.hand, markAt(10, 6)).revisionId),
      });
      const [greater] = [...made].sort().reverse();
      onAll(pair, (doc) => {
        const carry = carryOf(doc, first);
        expect(carry.revisions.map(({ number }) => number)).toEqual([1, 2, 2]);
        expect(carry.current.id).toBe(greater);
        expect(carry.revisions.map(({ id }) => id)).toEqual(expect.arrayContaining(made));
      });
    }
  });

  it('[DOC8] of two open carries of one stand the later called stays open and the other is replaced, not lost', () => {
    for (const leadIsLater of [true, false]) {
      const pair = phonePair({ clockErrorMs: leadIsLater ? 400 : -400 });
      const { lead, assistant } = pair;
      const made: { lead?: string; assistant?: string } = {};
      apart(pair, {
        lead: () => {
          made.lead = callKey(lead.doc, lead.hand, markAt(8, 6)).carryId;
        },
        assistant: () => {
          made.assistant = callKey(assistant.doc, assistant.hand, markAt(10, 6)).carryId;
        },
      });
      onAll(pair, (doc) => {
        const state = (carryId = '') => carryOf(doc, { carryId }).state;
        expect(state(made.lead)).toBe(leadIsLater ? 'called' : 'replaced');
        expect(state(made.assistant)).toBe(leadIsLater ? 'replaced' : 'called');
      });
      const replaced = (leadIsLater ? made.assistant : made.lead) ?? '';
      const { id, current } = carryOf(assistant.doc, { carryId: replaced });
      expect(refusal(markSet(assistant.doc, assistant.hand, { carryId: id, revisionId: current.id }))).toBe(
        'replaced',
      );
    }
  });

  it('[DOC9] a stand that was set before its withdrawal arrived stands where it was set, and the carry says so', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const pair = phonePair({ assistantWinsTies });
      const { lead, assistant, network } = pair;
      const on = callKey(lead.doc, lead.hand);
      network.drain();
      apart(pair, {
        lead: () => done(withdrawCarry(lead.doc, lead.hand, on.carryId)),
        assistant: () => done(markSet(assistant.doc, assistant.hand, on)),
      });
      onAll(pair, (doc) => {
        expect(carryOf(doc, on)).toMatchObject({ state: 'set', withdrawnTooLate: true });
        expect(standOf(doc, 'key').place.mark).toEqual(markAt(9, 6));
      });
    }
  });

  it('[DOC9] a nudge after a withdrawal that came too late begins a new carry, and is not taken back by it', () => {
    const pair = phonePair();
    const { lead, assistant, network } = pair;
    const on = callKey(lead.doc, lead.hand);
    network.drain();
    apart(pair, {
      lead: () => done(withdrawCarry(lead.doc, lead.hand, on.carryId)),
      assistant: () => done(markSet(assistant.doc, assistant.hand, on)),
    });
    const next = done(
      nudgeCarry(lead.doc, lead.hand, { standId: 'key', nudge: { kind: 'height', byM: 0.2 } }),
    );
    network.drain();
    onAll(pair, (doc) => {
      expect(next.carryId).not.toBe(on.carryId);
      expect(carryOf(doc, next)).toMatchObject({ state: 'called', from: markAt(9, 6) });
      expect(carryOf(doc, on)).toMatchObject({ state: 'set', withdrawnTooLate: true });
    });
  });

  it('[ASSIST4] a withdrawal that meets "carrying" and "can\'t" is withdrawn on both until it is acknowledged', () => {
    const pair = phonePair();
    const { lead, assistant, network } = pair;
    const on = callKey(lead.doc, lead.hand);
    network.drain();
    done(stampDelivered(assistant.doc, assistant.hand, on));
    network.drain();
    apart(pair, {
      lead: () => done(withdrawCarry(lead.doc, lead.hand, on.carryId)),
      assistant: () => {
        done(startCarrying(assistant.doc, assistant.hand, on));
        done(cannotCarry(assistant.doc, assistant.hand, on, 'a guest sits there'));
      },
    });
    onAll(pair, (doc) =>
      expect(carryOf(doc, on)).toMatchObject({ state: 'withdrawn', withdrawalSeen: false }),
    );
    done(acknowledgeWithdrawal(assistant.doc, assistant.hand, on.carryId));
    network.drain();
    onAll(pair, (doc) => expect(carryOf(doc, on).withdrawalSeen).toBe(true));
  });

  it('[DOC11] a call that was delivered before it was held is not held back', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const pair = phonePair({ assistantWinsTies });
      const { lead, assistant, network } = pair;
      const on = callKey(lead.doc, lead.hand);
      network.drain();
      apart(pair, {
        lead: () => {
          done(holdCall(lead.doc, lead.hand, on));
          expect(carryOf(lead.doc, on).state).toBe('held');
        },
        assistant: () => done(stampDelivered(assistant.doc, assistant.hand, on)),
      });
      onAll(pair, (doc) => expect(carryOf(doc, on).state).toBe('delivered'));
    }
  });

  it('[DOC11] a call held before the link came back arrives as held, and as called once it is let go', () => {
    const pair = phonePair();
    const { lead, assistant, network, clock } = pair;
    network.cut(lead.phone);
    const on = callKey(lead.doc, lead.hand);
    clock.pass(61_000);
    done(holdCall(lead.doc, lead.hand, on));
    network.joinAllAndDrain();
    expect(carryOf(assistant.doc, on).state).toBe('held');
    done(releaseCall(lead.doc, lead.hand, on));
    network.drain();
    expect(carryOf(assistant.doc, on).state).toBe('called');
  });
});
