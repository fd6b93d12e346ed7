import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { type Carry, toldRevisions } from '../../shared/document/carry.ts';
import { setView } from '../../shared/document/commands/change-moment.ts';
import { markSet, markSetElsewhere, undoStamp } from '../../shared/document/commands/mark-set.ts';
import { type Nudge, nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import {
  type StampOn,
  stampDelivered,
  stampHeard,
  stampSeen,
} from '../../shared/document/commands/stamp-carry.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import type { Hand } from '../../shared/document/transact.ts';
import {
  callKey,
  carryOf,
  demoDocument,
  done,
  markAt,
  phonePair,
  refusal,
  standOf,
} from '../support/document-night.ts';

const left: Nudge = { kind: 'move', way: 'camera-left', byM: 0.5 };
const up: Nudge = { kind: 'height', byM: 0.2 };

/** The demo night with the camera at the bottom of the plan, so that camera-left is the plan's left. */
function straightOn() {
  const one = demoDocument();
  const { moment } = readNight(one.doc);
  if (!moment) throw new Error('the demo night opens on a moment');
  const { view } = moment;
  done(
    setView(one.doc, one.lead, moment.id, {
      ...view,
      subject: { ...view.subject, spot: { x: 9, y: 6 } },
      camera: { ...view.camera, spot: { x: 9, y: 12 } },
    }),
  );
  return one;
}

const nudge = (doc: Y.Doc, hand: Hand, one: Nudge): StampOn =>
  done(nudgeCarry(doc, hand, { standId: 'key', nudge: one }));

/** Number, fold and words of the revision that is current. */
const told = ({ current, revisions }: Carry) => ({
  number: current.number,
  folds: revisions.find(({ id }) => id === current.folds)?.number ?? null,
  change: current.change,
  heard: toldRevisions({ revisions }).map(({ number }) => number),
});

describe('quick nudges', () => {
  it('[DOC23] are one change, told once, against the mark before the first of them', () => {
    const { doc, lead, clock } = straightOn();
    const first = callKey(doc, lead, markAt(9, 6));
    for (const one of [left, left, up]) {
      clock.pass(1500);
      nudge(doc, lead, one);
    }
    const carry = carryOf(doc, first);
    expect(told(carry)).toEqual({
      number: 4,
      folds: 3,
      change: 'camera-left 1 m, height +0.2 m',
      heard: [1, 4],
    });
    expect(carry.current.from).toEqual(markAt(9, 6));
    expect(carry.revisions.map(({ change }) => change)).toEqual([
      null,
      'camera-left 0.5 m',
      'camera-left 1 m',
      'camera-left 1 m, height +0.2 m',
    ]);
  });

  it('[DOC23] that take each other back say so', () => {
    const { doc, lead } = straightOn();
    const first = callKey(doc, lead, markAt(9, 6));
    nudge(doc, lead, left);
    nudge(doc, lead, { kind: 'move', way: 'camera-right', byM: 0.5 });
    expect(told(carryOf(doc, first))).toMatchObject({ change: 'as before', heard: [1, 3] });
  });

  it('[DOC23] over 4 s apart, or of another person, do not fold', () => {
    const { doc, lead, assistant, clock } = straightOn();
    const first = callKey(doc, lead, markAt(9, 6));
    nudge(doc, lead, left);
    clock.pass(4001);
    nudge(doc, lead, left);
    expect(told(carryOf(doc, first))).toMatchObject({ folds: null, change: 'camera-left 0.5 m' });
    nudge(doc, assistant, up);
    expect(told(carryOf(doc, first))).toMatchObject({ folds: null, heard: [1, 2, 3, 4] });
    clock.pass(4000);
    nudge(doc, assistant, up);
    expect(told(carryOf(doc, first))).toMatchObject({ folds: 4, change: 'height +0.4 m' });
  });

  it('[DOC23] fold while the other phone only has them, and no more once its person has looked or heard', () => {
    for (const look of [
      (doc: Y.Doc, hand: Hand, on: StampOn) => stampSeen(doc, hand, on, markAt(8.5, 6)),
      (doc: Y.Doc, hand: Hand, on: StampOn) => stampHeard(doc, hand, on),
      (doc: Y.Doc, hand: Hand, on: StampOn) => markSet(doc, hand, on),
    ]) {
      const { doc, lead, assistant } = straightOn();
      const first = callKey(doc, lead, markAt(9, 6));
      done(stampDelivered(doc, assistant, nudge(doc, lead, left)));
      const second = nudge(doc, lead, left);
      expect(told(carryOf(doc, first))).toMatchObject({ folds: 2, change: 'camera-left 1 m' });
      done(look(doc, assistant, second));
      nudge(doc, lead, up);
      expect(told(carryOf(doc, first))).toMatchObject({
        folds: null,
        change: 'height +0.2 m',
        heard: [1, 3, 4],
      });
    }
  });

  it('[DOC7 DOC23] nothing that was sent is rewritten, and a stamp for the folded one is refused', () => {
    const { doc, lead, assistant } = straightOn();
    callKey(doc, lead, markAt(9, 6));
    const folded = nudge(doc, lead, left);
    const entry = `${folded.carryId}/rev/${folded.revisionId}`;
    const sent = structuredClone(rootOf(doc, 'carries').get(entry));
    nudge(doc, lead, left);
    expect(rootOf(doc, 'carries').get(entry)).toEqual(sent);
    expect(refusal(markSet(doc, assistant, folded))).toBe('older-revision');
    expect(refusal(stampSeen(doc, assistant, folded, markAt(8.5, 6)))).toBe('older-revision');
  });

  it('[DOC8 DOC23] a look that was under way when the next nudge came is kept, and the last nudge is current', () => {
    const { network, lead, assistant } = phonePair();
    const first = callKey(lead.doc, lead.hand, markAt(9, 6));
    network.drain();
    const second = nudge(lead.doc, lead.hand, up);
    network.drain();
    network.cut(assistant.phone);
    done(stampSeen(assistant.doc, assistant.hand, second, markAt(9, 6)));
    nudge(lead.doc, lead.hand, up);
    network.joinAllAndDrain();
    for (const doc of network.docs) {
      const carry = carryOf(doc, first);
      expect(told(carry)).toEqual({ number: 3, folds: 2, change: 'height +0.4 m', heard: [1, 3] });
      expect(carry.state).toBe('called');
      expect(carry.revisions[1]?.stamps.seen).toBeDefined();
    }
  });

  it('[DOC23] however many there are, the one that is told says where the mark is against where it was', () => {
    const step = fc.constantFrom<Nudge>(
      left,
      { kind: 'move', way: 'nearer', byM: 0.25 },
      { kind: 'move', way: 'farther', byM: 0.75 },
      up,
      { kind: 'turn', byDeg: 200 },
      { kind: 'power', byStops: -1 / 3 },
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), (steps) => {
        const { doc, lead } = straightOn();
        const first = callKey(doc, lead, markAt(9, 6));
        for (const one of steps) nudge(doc, lead, one);
        const carry = carryOf(doc, first);
        const raisedM = 0.2 * steps.filter((one) => one === up).length;
        const words = carry.current.change ?? '';
        expect(words.length).toBeLessThanOrEqual(120);
        expect(words.includes(`height +${Number(raisedM.toFixed(2))} m`)).toBe(raisedM > 0);
        const leftM = 0.5 * steps.filter((one) => one === left).length;
        expect(words.includes(`camera-left ${leftM} m`)).toBe(leftM > 0);
        expect(told(carry).heard).toEqual([1, steps.length + 1]);
        expect(carry.current.from).toEqual(markAt(9, 6));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a stand that was set elsewhere', () => {
  it('[DOC24] stands where it really is; the call keeps its mark, and the stamp says where and why', () => {
    const { doc, lead, assistant } = demoDocument();
    const on = callKey(doc, lead, markAt(9, 6));
    const real = markAt(9, 7, { heightM: 2.1 });
    done(markSetElsewhere(doc, assistant, { ...on, mark: real, note: '  as near as I could: 1 m short ' }));
    const { state, current } = carryOf(doc, on);
    expect(state).toBe('set');
    expect(current.mark).toEqual(markAt(9, 6));
    expect(current.stamps.set).toMatchObject({ echo: real, reason: 'as near as I could: 1 m short' });
    expect(standOf(doc, 'key').place).toMatchObject({
      mark: real,
      carry: { carryId: on.carryId, revisionId: on.revisionId },
    });
  });

  it('[DOC13 DOC24] undo puts it back where it stood, and it can be set anew', () => {
    const { doc, lead, assistant } = demoDocument();
    const before = standOf(doc, 'key').place.mark;
    const on = callKey(doc, lead, markAt(9, 6));
    done(markSetElsewhere(doc, assistant, { ...on, mark: markAt(9, 7), note: '' }));
    expect(carryOf(doc, on).current.stamps.set?.reason).toBeNull();
    expect(refusal(markSetElsewhere(doc, assistant, { ...on, mark: markAt(8, 8), note: '' }))).toBe(
      'already',
    );
    done(undoStamp(doc, assistant, on, 'set'));
    expect(standOf(doc, 'key').place.mark).toEqual(before);
    done(markSetElsewhere(doc, assistant, { ...on, mark: markAt(8, 8), note: 'x'.repeat(300) }));
    expect(carryOf(doc, on).current.stamps.set?.reason).toBe('x'.repeat(200));
    expect(standOf(doc, 'key').place.mark).toEqual(markAt(8, 8));
  });

  it('[DOC14 DOC24] the next nudge starts from where it really stands', () => {
    const { doc, lead, assistant } = straightOn();
    const on = callKey(doc, lead, markAt(9, 6));
    done(markSetElsewhere(doc, assistant, { ...on, mark: markAt(9, 7), note: '' }));
    nudge(doc, lead, left);
    expect(carryOf(doc, on).current).toMatchObject({ from: markAt(9, 7), change: 'camera-left 0.5 m' });
    expect(carryOf(doc, on).current.mark.spot.x).toBeCloseTo(8.5, 9);
  });
});
