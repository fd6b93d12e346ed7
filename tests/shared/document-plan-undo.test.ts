import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { measureAmbient } from '../../shared/document/commands/ambient-reading.ts';
import {
  addFeatures,
  changeFeature,
  newPlan,
  removeFeatures,
  setOutline,
} from '../../shared/document/commands/change-plan.ts';
import { setFinishes, setRoof } from '../../shared/document/commands/change-room.ts';
import { createPlanUndo } from '../../shared/document/plan-undo.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { demoDocument, done, phonePair } from '../support/document-night.ts';
import { boxOutline, emptyPlan, tableAt } from '../support/plan-features.ts';

/** All that the undo of the plan is about. */
const planOf = (doc: Y.Doc) => {
  const { room, roof, finishes, features } = readNight(doc);
  return { room, roof, finishes, features };
};
const placeOf = (doc: Y.Doc, id: string) => readNight(doc).features.find((one) => one.id === id)?.at;

function withUndo() {
  const one = demoDocument();
  return { ...one, undo: createPlanUndo(one.doc) };
}

/** Both phones joined, each with its undo. */
function undoPair() {
  const pair = phonePair();
  return { ...pair, mine: createPlanUndo(pair.lead.doc), theirs: createPlanUndo(pair.assistant.doc) };
}

describe('undo of the plan', () => {
  it('[DOC22] takes back each kind of change and does it again, a removal among them', () => {
    const { doc, lead, undo } = withUndo();
    const steps: readonly (() => unknown)[] = [
      () => done(setOutline(doc, lead, boxOutline(30, 20), 5)),
      () => done(setRoof(doc, lead, { kind: 'ridge', peakM: 7, ridgeDeg: 90 })),
      () => done(setFinishes(doc, lead, { ceiling: 0.2, walls: 0.3, floor: 0.1 })),
      () => done(addFeatures(doc, lead, [tableAt(3, 3), tableAt(6, 3)])),
      () => done(changeFeature(doc, lead, 'bar', { at: { x: 2, y: 2 } })),
      () => done(removeFeatures(doc, lead, ['bar', 'cake'])),
      () => done(newPlan(doc, lead, { ...emptyPlan(20, 16), features: [tableAt(1, 1)] })),
    ];
    const states = [planOf(doc)];
    for (const step of steps) {
      step();
      states.push(planOf(doc));
    }
    for (const state of [...states].reverse().slice(1)) {
      expect(undo.undo()).toBe(true);
      expect(planOf(doc)).toEqual(state);
    }
    expect(undo.canUndo()).toBe(false);
    expect(undo.undo()).toBe(false);
    for (const state of states.slice(1)) {
      expect(undo.redo()).toBe(true);
      expect(planOf(doc)).toEqual(state);
    }
    expect(undo.canRedo()).toBe(false);
    expect(undo.redo()).toBe(false);
  });

  it('[DOC22] a hundred levels back and forth', () => {
    const { doc, lead, undo } = withUndo();
    const before = planOf(doc);
    for (let level = 1; level <= 100; level += 1)
      done(changeFeature(doc, lead, level % 2 ? 'bar' : 'cake', { at: { x: level / 10, y: 1 } }));
    const after = planOf(doc);
    for (let level = 1; level <= 100; level += 1) expect(undo.undo()).toBe(true);
    expect(planOf(doc)).toEqual(before);
    expect(undo.canUndo()).toBe(false);
    for (let level = 1; level <= 100; level += 1) expect(undo.redo()).toBe(true);
    expect(planOf(doc)).toEqual(after);
  });

  it('[DOC22] a drag of many writes is one step, however long it lasts; what follows is another', () => {
    const { doc, lead, undo } = withUndo();
    const start = placeOf(doc, 'bar');
    const end = undo.startStep();
    for (let x = 1; x <= 40; x += 1) done(changeFeature(doc, lead, 'bar', { at: { x: x / 4, y: 3 } }));
    end();
    const dropped = placeOf(doc, 'bar');
    done(changeFeature(doc, lead, 'bar', { at: { x: 1, y: 1 } }));
    undo.undo();
    expect(placeOf(doc, 'bar')).toEqual(dropped);
    undo.undo();
    expect(placeOf(doc, 'bar')).toEqual(start);
    expect(undo.canUndo()).toBe(false);
  });

  it('[DOC22] a new step ends the one before it, and an end that comes late does not end the new one', () => {
    const { doc, lead, undo } = withUndo();
    const endFirst = undo.startStep();
    done(changeFeature(doc, lead, 'bar', { at: { x: 1, y: 1 } }));
    undo.startStep();
    done(changeFeature(doc, lead, 'bar', { at: { x: 2, y: 2 } }));
    endFirst();
    done(changeFeature(doc, lead, 'bar', { at: { x: 3, y: 3 } }));
    undo.undo();
    expect(placeOf(doc, 'bar')).toEqual({ x: 1, y: 1 });
  });

  it('[DOC22] takes back this phone’s own and leaves what the other did', () => {
    const { network, lead, assistant, mine, theirs } = undoPair();
    const start = placeOf(lead.doc, 'bar');
    done(changeFeature(lead.doc, lead.hand, 'bar', { at: { x: 3, y: 3 } }));
    network.drain();
    done(changeFeature(assistant.doc, assistant.hand, 'cake', { at: { x: 4, y: 4 } }));
    done(addFeatures(assistant.doc, assistant.hand, [tableAt(9, 9)]));
    network.drain();
    const { length } = readNight(lead.doc).features;
    expect(mine.undo()).toBe(true);
    expect(mine.undo()).toBe(false);
    network.drain();
    for (const doc of network.docs) {
      expect(placeOf(doc, 'bar')).toEqual(start);
      expect(placeOf(doc, 'cake')).toEqual({ x: 4, y: 4 });
      expect(readNight(doc).features).toHaveLength(length);
    }
    expect(theirs.undo()).toBe(true);
    network.drain();
    expect(readNight(lead.doc).features).toHaveLength(length - 1);
  });

  it('[DOC22] a value that the other phone has changed since stays as it changed it', () => {
    const { network, lead, assistant, mine } = undoPair();
    done(changeFeature(lead.doc, lead.hand, 'bar', { at: { x: 3, y: 3 } }));
    network.drain();
    done(changeFeature(assistant.doc, assistant.hand, 'bar', { at: { x: 4, y: 4 } }));
    network.drain();
    expect(mine.undo()).toBe(false);
    expect(mine.canUndo()).toBe(false);
    for (const doc of network.docs) expect(placeOf(doc, 'bar')).toEqual({ x: 4, y: 4 });
  });

  it('[DOC22] what the other phone took off comes back as it was before one’s change; what one added stays away', () => {
    const { network, lead, assistant, mine } = undoPair();
    const start = placeOf(lead.doc, 'bar');
    done(changeFeature(lead.doc, lead.hand, 'bar', { at: { x: 3, y: 3 } }));
    const { featureIds } = done(addFeatures(lead.doc, lead.hand, [tableAt(9, 9)]));
    network.drain();
    done(removeFeatures(assistant.doc, assistant.hand, ['bar', ...featureIds]));
    network.drain();
    // Of the adding nothing is left to take back, so the step before it is taken back at once.
    expect(mine.undo()).toBe(true);
    network.drain();
    for (const doc of network.docs) {
      expect(placeOf(doc, 'bar')).toEqual(start);
      expect(placeOf(doc, featureIds[0] ?? '')).toBeUndefined();
    }
    expect(mine.undo()).toBe(false);
  });

  it('[DOC22] ambient readings lie in the same map and are not its business', () => {
    const { doc, lead, undo } = withUndo();
    done(measureAmbient(doc, lead, { x: 3, y: 3 }, 4));
    expect(undo.canUndo()).toBe(false);
  });

  it('tells of every change of what can be undone, until it is told to stop', () => {
    const { doc, lead, undo } = withUndo();
    const seen: [boolean, boolean][] = [];
    const stop = undo.onChange(() => seen.push([undo.canUndo(), undo.canRedo()]));
    done(changeFeature(doc, lead, 'bar', { at: { x: 3, y: 3 } }));
    expect(seen.at(-1)).toEqual([true, false]);
    undo.undo();
    expect(seen.at(-1)).toEqual([false, true]);
    undo.redo();
    expect(seen.at(-1)).toEqual([true, false]);
    const { length } = seen;
    stop();
    undo.undo();
    expect(seen).toHaveLength(length);
    undo.close();
    done(changeFeature(doc, lead, 'bar', { at: { x: 5, y: 5 } }));
    expect([undo.canUndo(), undo.canRedo()]).toEqual([false, false]);
  });

  it('[DOC22] whatever both phones do to their own things, all undone is the plan as it was but for the other’s', () => {
    const move = fc.record({
      mine: fc.boolean(),
      x: fc.integer({ min: 0, max: 17 }),
      drain: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(move, { minLength: 1, maxLength: 25 }), (moves) => {
        const { network, lead, assistant, mine } = undoPair();
        const start = placeOf(lead.doc, 'bar');
        let cake = placeOf(lead.doc, 'cake');
        for (const one of moves) {
          const at = { x: one.x, y: 2 };
          if (one.mine) done(changeFeature(lead.doc, lead.hand, 'bar', { at }));
          else {
            done(changeFeature(assistant.doc, assistant.hand, 'cake', { at }));
            cake = at;
          }
          if (one.drain) network.drain();
        }
        let undone = 0;
        while (mine.undo()) undone += 1;
        network.drain();
        expect(undone).toBe(moves.filter((one) => one.mine).length);
        for (const doc of network.docs) {
          expect(placeOf(doc, 'bar')).toEqual(start);
          expect(placeOf(doc, 'cake')).toEqual(cake);
        }
      }),
      { numRuns: 40 },
    );
  });
});
