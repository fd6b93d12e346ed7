import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { contains } from '../../core/geometry/polygon.ts';
import {
  addFeatures,
  changeFeature,
  changeFeatures,
  newPlan,
  removeFeatures,
  setOutline,
} from '../../shared/document/commands/change-plan.ts';
import { moveCamera, moveSubject } from '../../shared/document/commands/move-people.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { MOST_FEATURES } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { useVenue, venueOf } from '../../shared/venue/venue-file.ts';
import { demoDocument, done, phonePair, refusal, standOf } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';
import { boxOutline, CROSSING, emptyPlan, tableAt } from '../support/plan-features.ts';

const featureIn = (doc: Y.Doc, id: string) => readNight(doc).features.find((one) => one.id === id);

describe('walls', () => {
  it('[DOC19] walls that cross or touch are refused, and so are fewer than three corners', () => {
    const { doc, lead } = demoDocument();
    const before = valuesOf(doc);
    expect(refusal(setOutline(doc, lead, CROSSING))).toBe('crossing-outline');
    const spike = [...boxOutline(8, 6), { x: 0, y: 3 }, { x: 4, y: 3 }, { x: 0, y: 3 }];
    expect(refusal(setOutline(doc, lead, spike))).toBe('crossing-outline');
    expect(refusal(setOutline(doc, lead, boxOutline(8, 6).slice(0, 2)))).toBe('out-of-range');
    expect(valuesOf(doc)).toEqual(before);
  });

  it('[DOC19] a stand that a wall leaves outside is brought inside with it, 0.3 m off the wall; others stay', () => {
    const { doc, lead } = demoDocument();
    const back = standOf(doc, 'back').place;
    // The key stands at (12.9, 9.1): 0.9 m outside of a room that ends at x = 12, level with its side.
    done(setOutline(doc, lead, boxOutline(12, 12)));
    const { spot } = standOf(doc, 'key').place.mark;
    expect(spot.x).toBeCloseTo(12 - 0.3, 9);
    expect(spot.y).toBeCloseTo(9.1, 9);
    expect(standOf(doc, 'back').place).toEqual(back);
    expect(readNight(doc).room?.ceilingM).toBe(readNight(demoDocument().doc).room?.ceilingM);
  });

  it('[DOC19] however the walls are drawn, all stands are inside afterwards', () => {
    const side = fc.double({ min: 2, max: 40, noNaN: true });
    fc.assert(
      fc.property(side, side, fc.double({ min: -20, max: 20, noNaN: true }), (widthM, depthM, shift) => {
        const { doc, lead } = demoDocument();
        const outline = boxOutline(widthM, depthM).map(({ x, y }) => ({ x: x + shift, y: y - shift }));
        done(setOutline(doc, lead, outline, 3));
        const { stands, room } = readNight(doc);
        expect(room).toEqual({ outline, ceilingM: 3 });
        for (const { place } of stands) expect(contains(outline, place.mark.spot)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('[DOC10] a field of the room that a newer app wrote is kept through new walls', () => {
    const { doc, lead } = demoDocument();
    const shape = rootOf(doc, 'room').get('shape');
    rootOf(doc, 'room').set('shape', { ...(shape as object), dado: 0.9 });
    done(setOutline(doc, lead, boxOutline(20, 14)));
    expect(rootOf(doc, 'room').get('shape')).toMatchObject({ dado: 0.9, outline: boxOutline(20, 14) });
  });
});

describe('things on the plan', () => {
  it('[DOC20] a row is put down as one transaction, and its ids come in the order of the list', () => {
    const { doc, lead } = demoDocument();
    let updates = 0;
    doc.on('update', () => {
      updates += 1;
    });
    const row = [2, 5, 8, 11].map((x) => tableAt(x, 5, { name: `Table ${x}` }));
    const { featureIds } = done(addFeatures(doc, lead, row));
    expect(updates).toBe(1);
    expect(featureIds.map((id) => featureIn(doc, id)?.name)).toEqual(row.map(({ name }) => name));
    done(changeFeatures(doc, lead, Object.fromEntries(featureIds.map((id) => [id, { turnDeg: 45 }]))));
    expect(updates).toBe(2);
    expect(featureIds.map((id) => featureIn(doc, id))).toEqual(
      row.map((feature, at) => ({ ...feature, id: featureIds[at], turnDeg: 45 })),
    );
    done(removeFeatures(doc, lead, featureIds));
    expect(updates).toBe(3);
    for (const id of featureIds) expect(rootOf(doc, 'features').has(id)).toBe(false);
  });

  it('[DOC20] one that does not fit, or is not there, and none is put down, changed or taken off', () => {
    const { doc, lead } = demoDocument();
    const before = Y.encodeStateVector(doc);
    const crossing = tableAt(3, 3, { shape: { kind: 'outline', points: CROSSING } });
    expect(refusal(addFeatures(doc, lead, [tableAt(2, 2), crossing]))).toBe('crossing-outline');
    expect(addFeatures(doc, lead, [tableAt(2, 2), tableAt(2, 2, { heightM: 90 })])).toEqual({
      ok: false,
      reason: 'out-of-range',
      field: 'heightM',
    });
    expect(refusal(addFeatures(doc, lead, []))).toBe('out-of-range');
    const changes = { bar: { turnDeg: 10 }, cake: { turnDeg: Number.NaN } };
    expect(refusal(changeFeatures(doc, lead, changes))).toBe('out-of-range');
    expect(refusal(changeFeatures(doc, lead, { bar: { turnDeg: 10 }, gone: {} }))).toBe('no-such-feature');
    expect(refusal(removeFeatures(doc, lead, ['bar', 'gone']))).toBe('no-such-feature');
    const many = Array.from({ length: MOST_FEATURES }, () => tableAt(1, 1));
    expect(refusal(addFeatures(doc, lead, many)), 'beside those of the demo night').toBe('too-many-features');
    expect(Y.encodeStateVector(doc)).toEqual(before);
  });

  it('[DOC20] what one phone took off and the other moved while apart is there, moved, on both', () => {
    for (const assistantWinsTies of [true, false]) {
      const { network, lead, assistant } = phonePair({ assistantWinsTies });
      for (const { phone } of [lead, assistant]) network.cut(phone);
      done(removeFeatures(lead.doc, lead.hand, ['bar', 'cake']));
      done(changeFeature(assistant.doc, assistant.hand, 'bar', { at: { x: 4, y: 4 } }));
      network.joinAllAndDrain();
      for (const doc of network.docs) {
        expect(featureIn(doc, 'bar')?.at).toEqual({ x: 4, y: 4 });
        expect(featureIn(doc, 'cake')).toBeUndefined();
      }
    }
  });

  it('[DOC20] what one phone moved and then took off and the other moved too is the same on all', () => {
    const ends = [true, false].map((assistantWinsTies) => {
      const { network, lead, assistant } = phonePair({ assistantWinsTies });
      for (const { phone } of [lead, assistant]) network.cut(phone);
      done(changeFeature(lead.doc, lead.hand, 'bar', { at: { x: 5, y: 5 } }));
      done(removeFeatures(lead.doc, lead.hand, ['bar']));
      done(changeFeature(assistant.doc, assistant.hand, 'bar', { at: { x: 4, y: 4 } }));
      network.joinAllAndDrain();
      const [first, ...others] = network.docs.map((doc) => featureIn(doc, 'bar')?.at ?? 'gone');
      for (const other of others) expect(other).toEqual(first);
      return first;
    });
    expect(ends).toEqual([{ x: 4, y: 4 }, 'gone']);
  });

  it('subject and camera are moved and all else of the view stays', () => {
    const { doc, lead } = demoDocument();
    const viewOf = () => readNight(doc).moments.find(({ id }) => id === 'toasts')?.view;
    const before = viewOf();
    done(moveSubject(doc, lead, 'toasts', { x: 3, y: 4 }));
    done(moveCamera(doc, lead, 'toasts', { x: 3, y: 8 }));
    expect(viewOf()).toEqual({
      ...before,
      subject: { ...before?.subject, spot: { x: 3, y: 4 } },
      camera: { ...before?.camera, spot: { x: 3, y: 8 } },
    });
    done(moveSubject(doc, lead, 'toasts', { x: 3, y: 4 }, 77));
    expect(viewOf()?.subject.facingDeg).toBe(77);
  });
});

describe('a new plan', () => {
  it('[DOC21] takes the place of everything on the plan, in one transaction; all that stands comes inside', () => {
    const { doc, lead } = demoDocument();
    const plan = { ...emptyPlan(6, 5), features: [tableAt(2, 2)] };
    let updates = 0;
    doc.on('update', () => {
      updates += 1;
    });
    done(newPlan(doc, lead, plan));
    expect(updates).toBe(1);
    const night = readNight(doc);
    expect([night.room, night.roof, night.finishes]).toEqual([plan.room, plan.roof, plan.finishes]);
    expect(night.features.map(({ id, ...feature }) => feature)).toEqual(plan.features);
    const { outline } = plan.room;
    for (const { place } of night.stands) expect(contains(outline, place.mark.spot)).toBe(true);
    for (const { view } of night.moments) {
      expect(contains(outline, view.subject.spot)).toBe(true);
      expect(contains(outline, view.camera.spot)).toBe(true);
    }
  });

  it('[DOC21] what could not be read stays; a plan that crosses itself or holds too much changes nothing', () => {
    const { doc, lead } = demoDocument();
    rootOf(doc, 'features').set('blurred', { kind: 'fog' });
    const before = valuesOf(doc);
    const plan = { ...emptyPlan(6, 5), features: [] };
    const crossing = { ...plan, room: { outline: CROSSING, ceilingM: 4 } };
    expect(refusal(newPlan(doc, lead, crossing))).toBe('crossing-outline');
    const full = Array.from({ length: MOST_FEATURES + 1 }, () => tableAt(1, 1));
    expect(refusal(newPlan(doc, lead, { ...plan, features: full }))).toBe('too-many-features');
    expect(refusal(newPlan(doc, lead, { ...plan, features: { 'a/b': tableAt(1, 1) } }))).toBe(
      'no-such-feature',
    );
    expect(valuesOf(doc)).toEqual(before);
    done(newPlan(doc, lead, plan));
    expect(rootOf(doc, 'features').get('blurred')).toEqual({ kind: 'fog' });
    expect(readNight(doc).features).toEqual([]);
  });

  it('[DOC21] two phones that take the same venue while apart hold everything once', () => {
    const { network, lead, assistant } = phonePair();
    const saved = venueOf(readNight(demoDocument().doc), 'Hall', 1);
    if (!saved.ok) throw new Error(saved.reason);
    for (const { phone } of [lead, assistant]) network.cut(phone);
    done(removeFeatures(lead.doc, lead.hand, ['bar']));
    for (const { doc, hand } of [lead, assistant]) done(useVenue(doc, hand, saved.venue));
    network.joinAllAndDrain();
    for (const doc of network.docs) {
      const again = venueOf(readNight(doc), 'Hall', 1);
      expect(again).toEqual(saved);
    }
  });
});
