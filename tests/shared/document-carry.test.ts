import { describe, expect, it } from 'vitest';
import { isOpen } from '../../shared/document/carry.ts';
import { markSet, undoStamp } from '../../shared/document/commands/mark-set.ts';
import { nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import {
  cannotCarry,
  holdCall,
  releaseCall,
  stampDelivered,
  stampHeard,
  stampSeen,
  startCarrying,
} from '../../shared/document/commands/stamp-carry.ts';
import {
  acknowledgeWithdrawal,
  restoreCarry,
  withdrawCarry,
} from '../../shared/document/commands/withdraw-carry.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { callKey, carryOf, demoDocument, done, markAt, refusal, standOf } from '../support/document-night.ts';

const POWER_UP = { kind: 'power', byStops: 1 / 3 } as const;

describe('stamps and revisions on one phone', () => {
  it('[DOC7] set for revision 2 never closes revision 3', () => {
    const { doc, lead, assistant } = demoDocument();
    callKey(doc, lead, markAt(9, 6));
    const second = callKey(doc, lead, markAt(8, 6));
    done(markSet(doc, assistant, second));
    expect(carryOf(doc, second).state).toBe('set');
    const third = done(nudgeCarry(doc, lead, { standId: 'key', nudge: POWER_UP }));
    const carry = carryOf(doc, third);
    expect(third.carryId).toBe(second.carryId);
    expect(carry.current.number).toBe(3);
    expect(carry.state).toBe('called');
    expect(carry.revisions[1]?.stamps.set?.by).toBe('assistant');
    expect(carry.current.stamps).toEqual({});
  });

  it('[DOC7] every stamp for a revision that is not the current one is refused', () => {
    const { doc, lead, assistant } = demoDocument();
    const first = callKey(doc, lead);
    done(stampDelivered(doc, assistant, first));
    callKey(doc, lead, markAt(8, 6));
    const refused = [
      stampDelivered(doc, assistant, first),
      stampSeen(doc, assistant, first, markAt(9, 6)),
      stampHeard(doc, assistant, first),
      startCarrying(doc, assistant, first),
      cannotCarry(doc, assistant, first, 'too narrow'),
      markSet(doc, assistant, first),
      undoStamp(doc, assistant, first, 'set'),
      holdCall(doc, lead, first),
      releaseCall(doc, lead, first),
    ];
    expect(refused.map(refusal)).toEqual(refused.map(() => 'older-revision'));
  });

  it('[DOC7] a call that is changed is one carry with a further revision, and a set one is followed by a new carry', () => {
    const { doc, lead, assistant } = demoDocument();
    const first = callKey(doc, lead);
    const second = callKey(doc, lead, markAt(7, 7));
    expect(second.carryId).toBe(first.carryId);
    done(markSet(doc, assistant, second));
    const third = callKey(doc, lead, markAt(6, 6));
    expect(third.carryId).not.toBe(first.carryId);
    expect(carryOf(doc, third).current.number).toBe(1);
    expect(carryOf(doc, third).from).toEqual(markAt(7, 7));
  });

  it('[DOC7] "can\'t" and "carrying" go by which came later, though both are pressed in one millisecond', () => {
    const { doc, lead, assistant } = demoDocument();
    const on = callKey(doc, lead);
    const states = [
      () => startCarrying(doc, assistant, on),
      () => cannotCarry(doc, assistant, on, 'a chair stands there'),
      () => startCarrying(doc, assistant, on),
      () => cannotCarry(doc, assistant, on, 'two chairs stand there'),
    ].map((press) => {
      done(press());
      return carryOf(doc, on).state;
    });
    expect(states).toEqual(['carrying', 'cant', 'carrying', 'cant']);
    expect(carryOf(doc, on).current.stamps.cant?.reason).toBe('two chairs stand there');
    done(undoStamp(doc, assistant, on, 'cant'));
    expect(carryOf(doc, on).state).toBe('carrying');
  });

  it('[DOC13] set moves the stand in the same transaction, and its stamp echoes the mark that was set', () => {
    const { doc, lead, assistant } = demoDocument();
    const before = standOf(doc, 'key').place.mark;
    const on = callKey(doc, lead, markAt(9, 6));
    const seenStates: string[] = [];
    doc.on('afterTransaction', () => {
      const { x } = standOf(doc, 'key').place.mark.spot;
      seenStates.push(`${carryOf(doc, on).state} at ${x}`);
    });
    const really = markAt(9.4, 6.3, { heightM: 2.1 });
    done(markSet(doc, assistant, on, really));
    expect(seenStates).toEqual(['set at 9.4']);
    const { stamps, mark } = carryOf(doc, on).current;
    expect(stamps.set).toMatchObject({ echo: really, before, by: 'assistant' });
    expect(mark, 'what was asked stays as it was asked').toEqual(markAt(9, 6));
    expect(standOf(doc, 'key').place).toMatchObject({
      mark: really,
      by: 'assistant',
      carry: { carryId: on.carryId, revisionId: on.revisionId },
    });
  });

  it('[DOC13] undo of set puts the stand back where it was, and the carry is open again', () => {
    const { doc, lead, assistant } = demoDocument();
    const before = standOf(doc, 'key').place.mark;
    const on = callKey(doc, lead);
    done(startCarrying(doc, assistant, on));
    done(markSet(doc, assistant, on));
    done(undoStamp(doc, assistant, on, 'set'));
    expect(standOf(doc, 'key').place.mark).toEqual(before);
    expect(carryOf(doc, on).state).toBe('carrying');
    done(markSet(doc, assistant, on));
    expect(standOf(doc, 'key').place.mark).toEqual(markAt(9, 6));
  });

  it('[DOC13] undo of set leaves a stand that was set elsewhere since where it is', () => {
    const { doc, lead, assistant } = demoDocument();
    const first = callKey(doc, lead, markAt(9, 6));
    done(markSet(doc, assistant, first));
    const second = callKey(doc, lead, markAt(4, 8));
    done(markSet(doc, assistant, second));
    done(undoStamp(doc, assistant, first, 'set'));
    expect(standOf(doc, 'key').place.mark).toEqual(markAt(4, 8));
    expect(carryOf(doc, second).state).toBe('set');
    expect(carryOf(doc, first).state).toBe('replaced');
  });
});

describe('held and withdrawn calls on one phone', () => {
  it('[DOC11] a held call is not open for the assistant until it is let go', () => {
    const { doc, lead, clock } = demoDocument();
    const on = callKey(doc, lead);
    clock.pass(61_000);
    done(holdCall(doc, lead, on));
    expect(carryOf(doc, on).state).toBe('held');
    expect(refusal(holdCall(doc, lead, on))).toBe('already');
    done(releaseCall(doc, lead, on));
    expect(carryOf(doc, on).state).toBe('called');
    expect(refusal(releaseCall(doc, lead, on))).toBe('nothing-to-undo');
    done(holdCall(doc, lead, on));
    expect(carryOf(doc, on).state).toBe('held');
  });

  it('[DOC11] a change of a held call is a call of its own, and is not held', () => {
    const { doc, lead } = demoDocument();
    const first = callKey(doc, lead);
    done(holdCall(doc, lead, first));
    const second = done(nudgeCarry(doc, lead, { standId: 'key', nudge: POWER_UP }));
    expect(second.carryId).toBe(first.carryId);
    expect(carryOf(doc, second).state).toBe('called');
  });

  it('[DOC6] a call whose stand is set cannot be withdrawn, nor restored, nor acknowledged as withdrawn', () => {
    const { doc, lead, assistant } = demoDocument();
    const on = callKey(doc, lead);
    done(withdrawCarry(doc, lead, on.carryId));
    done(restoreCarry(doc, lead, on.carryId));
    done(markSet(doc, assistant, on));
    expect(refusal(withdrawCarry(doc, lead, on.carryId))).toBe('already');
    expect(refusal(restoreCarry(doc, lead, on.carryId))).toBe('nothing-to-undo');
    expect(refusal(acknowledgeWithdrawal(doc, assistant, on.carryId))).toBe('nothing-to-undo');
    expect(carryOf(doc, on)).toMatchObject({ state: 'set', withdrawnTooLate: false });
  });

  it('[DOC6] a withdrawn carry takes no stamp, and is restored as it was', () => {
    const { doc, lead, assistant } = demoDocument();
    const on = callKey(doc, lead);
    done(stampSeen(doc, assistant, on, markAt(9, 6)));
    done(withdrawCarry(doc, lead, on.carryId));
    expect(refusal(markSet(doc, assistant, on))).toBe('withdrawn');
    expect(refusal(startCarrying(doc, assistant, on))).toBe('withdrawn');
    done(restoreCarry(doc, lead, on.carryId));
    expect(carryOf(doc, on)).toMatchObject({ state: 'seen', withdrawnAt: null });
  });

  it("[ASSIST4] acknowledging one withdrawal says nothing of the next, whichever phone's clock is ahead", () => {
    for (const aheadMs of [-5000, 0, 5000]) {
      const { doc, lead, assistant } = demoDocument();
      const skewed = { ...assistant, now: () => assistant.now() + aheadMs };
      const { carryId } = callKey(doc, lead);
      done(withdrawCarry(doc, lead, carryId));
      done(acknowledgeWithdrawal(doc, skewed, carryId));
      expect(carryOf(doc, { carryId }).withdrawalSeen).toBe(true);
      done(restoreCarry(doc, lead, carryId));
      expect(carryOf(doc, { carryId }).withdrawalSeen).toBe(false);
      done(withdrawCarry(doc, lead, carryId));
      expect(carryOf(doc, { carryId }).withdrawalSeen, `clock ahead by ${aheadMs} ms`).toBe(false);
      done(acknowledgeWithdrawal(doc, skewed, carryId));
      expect(carryOf(doc, { carryId }).withdrawalSeen).toBe(true);
    }
  });

  it('[DOC8] a stand has one open carry at most, and a call by a slow clock is not replaced by what it follows', () => {
    const { doc, lead, assistant } = demoDocument();
    done(markSet(doc, assistant, callKey(doc, lead)));
    const slow = { ...lead, now: () => lead.now() - 90_000 };
    const on = callKey(doc, slow, markAt(5, 5));
    expect(carryOf(doc, on).state).toBe('called');
    expect(carryOf(doc, on).current.at, 'its age goes by the clock of its phone').toBe(slow.now());
    expect(readNight(doc).carries.filter(isOpen)).toHaveLength(1);
  });
});
