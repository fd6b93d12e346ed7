import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import {
  setCameraLight,
  setExposure,
  setWish,
  startMoment,
} from '../../shared/document/commands/change-moment.ts';
import { newPlan } from '../../shared/document/commands/change-plan.ts';
import {
  removeMoment,
  restoreMoment,
  skipMoment,
  unskipMoment,
} from '../../shared/document/commands/leave-out-moment.ts';
import { moveSubject } from '../../shared/document/commands/move-people.ts';
import {
  addMoment,
  addMoments,
  moveMoment,
  renameMoment,
  repeatMoment,
} from '../../shared/document/commands/running-order.ts';
import { key } from '../../shared/document/keys.ts';
import type { Moment } from '../../shared/document/parts.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { MOST_MOMENTS } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { demoDocument, done, phonePair, refusal } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';
import { emptyPlan } from '../support/plan-features.ts';

const DEMO = ['entrances', 'first-dance', 'toasts', 'cake', 'open-dancing'];
const idsOf = (doc: Y.Doc): readonly string[] => readNight(doc).moments.map(({ id }) => id);
const namesOf = (doc: Y.Doc): readonly string[] => readNight(doc).moments.map(({ name }) => name);

function momentOf(doc: Y.Doc, id: string): Moment {
  const moment = readNight(doc).moments.find((known) => known.id === id);
  if (!moment) throw new Error(`no moment ${id}`);
  return moment;
}

/** What a copy shares with its source. */
const taken = ({ view, exposure, wish, cameraLight }: Moment) => ({ view, exposure, wish, cameraLight });

/** Both phones act while they cannot hear each other; afterwards all hold the same order, which is given back. */
function orderAfter(acts: { lead: ActOn; assistant: ActOn }, assistantWinsTies: boolean): readonly string[] {
  const { network, lead, assistant } = phonePair({ assistantWinsTies });
  network.cut(lead.phone);
  network.cut(assistant.phone);
  acts.lead(lead);
  acts.assistant(assistant);
  network.joinAllAndDrain();
  const [first, ...others] = network.docs.map((doc: Y.Doc) => readNight(doc));
  for (const other of others) expect(other).toEqual(first);
  return first?.moments.map(({ id }) => id) ?? [];
}
type Phone = ReturnType<typeof phonePair>['lead'];
type ActOn = (phone: Phone) => void;

describe('the running order', () => {
  it('[DOC25] a moment is added after another, before all, and at the end', () => {
    const { doc, lead } = demoDocument();
    const { momentId: second } = done(addMoment(doc, lead, 'entrances', { name: 'Grace' }));
    const { momentId: first } = done(addMoment(doc, lead, null, { name: ' Doors ', expected: '18:30' }));
    const { momentId: last } = done(addMoment(doc, lead, 'open-dancing', { name: 'Exit', expected: null }));
    expect(idsOf(doc)).toEqual([first, 'entrances', second, ...DEMO.slice(1), last]);
    expect(momentOf(doc, first)).toMatchObject({ name: 'Doors', expected: '18:30', skipped: false });
    expect(momentOf(doc, second).expected).toBeNull();
  });

  it('[DOC25] whatever is moved after whatever, the order is the one a person would write down', () => {
    const move = fc.record({ which: fc.nat(9), after: fc.option(fc.nat(9)), repeat: fc.boolean() });
    fc.assert(
      fc.property(fc.array(move, { maxLength: 25 }), (moves) => {
        const { doc, lead } = demoDocument();
        let wanted: readonly string[] = DEMO;
        for (const { which, after: behind, repeat } of moves) {
          const id = wanted[which % wanted.length] ?? '';
          const after = behind === null ? null : (wanted[behind % wanted.length] ?? null);
          if (repeat && wanted.length < 9) {
            const at = wanted.indexOf(id) + 1;
            wanted = wanted.toSpliced(at, 0, done(repeatMoment(doc, lead, id)).momentId);
          } else if (refusal(moveMoment(doc, lead, id, after)) === null) {
            const rest = wanted.filter((one) => one !== id);
            wanted = rest.toSpliced(after === null ? 0 : rest.indexOf(after) + 1, 0, id);
          } else {
            expect(after === id || (wanted[wanted.indexOf(id) - 1] ?? null) === after).toBe(true);
          }
          expect(idsOf(doc)).toEqual(wanted);
        }
        expect(readNight(doc).skipped).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('[DOC25] what one phone moved and what the other moved and added meanwhile are both where they were put', () => {
    for (const assistantWinsTies of [true, false]) {
      let added = '';
      const order = orderAfter(
        {
          lead: ({ doc, hand }) => done(moveMoment(doc, hand, 'cake', null)),
          assistant: ({ doc, hand }) => {
            done(moveMoment(doc, hand, 'toasts', 'open-dancing'));
            added = done(addMoment(doc, hand, 'first-dance', { name: 'Parents' })).momentId;
          },
        },
        assistantWinsTies,
      );
      expect(order).toEqual(['cake', 'entrances', 'first-dance', added, 'open-dancing', 'toasts']);
    }
  });

  it('[DOC25] two moved one moment apart: it is there once, where one of them put it', () => {
    for (const assistantWinsTies of [true, false]) {
      const order = orderAfter(
        {
          lead: ({ doc, hand }) => done(moveMoment(doc, hand, 'toasts', null)),
          assistant: ({ doc, hand }) => done(moveMoment(doc, hand, 'toasts', 'open-dancing')),
        },
        assistantWinsTies,
      );
      const rest = ['entrances', 'first-dance', 'cake', 'open-dancing'];
      expect([
        ['toasts', ...rest],
        [...rest, 'toasts'],
      ]).toContainEqual(order);
    }
  });

  it('[DOC25] between two that were added at one place apart there is room for a third', () => {
    const { network, lead, assistant } = phonePair();
    network.cut(lead.phone);
    network.cut(assistant.phone);
    done(addMoment(lead.doc, lead.hand, 'toasts', { name: 'Song' }));
    done(addMoment(assistant.doc, assistant.hand, 'toasts', { name: 'Speech' }));
    network.joinAllAndDrain();
    const [one, other] = idsOf(lead.doc).slice(3, 5);
    if (!one || !other) throw new Error('both were added after the toasts');
    expect(momentOf(lead.doc, one).place).toBe(momentOf(lead.doc, other).place);
    const { momentId } = done(addMoment(lead.doc, lead.hand, one, { name: 'Between' }));
    network.drain();
    for (const doc of network.docs)
      expect(idsOf(doc)).toEqual([...DEMO.slice(0, 3), one, momentId, other, ...DEMO.slice(3)]);
  });

  it('[DOC25] places that nothing fits between are written anew, and the order stays', () => {
    for (const place of ['not a place!', `a0${'0'.repeat(150)}1`, 'a00']) {
      const { doc, lead } = demoDocument();
      rootOf(doc, 'moments').set(key.momentPlace('first-dance'), place);
      const before = idsOf(doc);
      const { momentId } = done(addMoment(doc, lead, 'first-dance', { name: 'Parents' }));
      expect(idsOf(doc)).toEqual(before.toSpliced(before.indexOf('first-dance') + 1, 0, momentId));
    }
    const { doc, lead } = demoDocument();
    // Always into the same gap: the places there grow until they are written anew.
    let longest = 0;
    for (let count = 0; count < 1300; count += 1) {
      done(moveMoment(doc, lead, idsOf(doc)[2] ?? '', 'entrances'));
      longest = Math.max(longest, ...readNight(doc).moments.map(({ place }) => place.length));
    }
    expect(longest).toBeGreaterThan(190);
    expect(Math.max(...readNight(doc).moments.map(({ place }) => place.length))).toBeLessThan(100);
    expect(readNight(doc).skipped).toEqual([]);
    expect(idsOf(doc)).toEqual(DEMO);
  });

  it('[DOC18 DOC25] a new name or time replaces the old one; a time that is none is refused by its field', () => {
    const { doc, lead } = demoDocument();
    done(renameMoment(doc, lead, 'toasts', ' Speeches ', '00:30'));
    expect(momentOf(doc, 'toasts')).toMatchObject({ name: 'Speeches', expected: '00:30' });
    done(renameMoment(doc, lead, 'toasts', 'Speeches', null));
    expect(momentOf(doc, 'toasts').expected).toBeNull();
    const before = valuesOf(doc);
    for (const time of ['9:30', '24:00', '19:60', '7 pm', '', '19:05 '])
      expect(renameMoment(doc, lead, 'toasts', 'Speeches', time), time).toEqual({
        ok: false,
        reason: 'out-of-range',
        field: 'expected',
      });
    expect(renameMoment(doc, lead, 'toasts', '  ', null)).toMatchObject({ field: 'name' });
    expect(valuesOf(doc)).toEqual(before);
  });
});

describe('a new moment', () => {
  const exposure = { iso: 6400, fNumber: 1.4, shutterS: 1 / 60 };

  it('[DOC26] begins as the one before it is, or as the one that is named, and goes its own way from then on', () => {
    const { doc, lead } = demoDocument();
    done(setExposure(doc, lead, 'toasts', exposure));
    done(setWish(doc, lead, 'toasts', { subjectStops: 0, backgroundStops: -3, rimStops: 0, groupWidthM: 4 }));
    done(setCameraLight(doc, lead, 'cake', { use: 'card', powerStops: -5 }));
    const { momentId: after } = done(addMoment(doc, lead, 'toasts', { name: 'Reply' }));
    const { momentId: named } = done(addMoment(doc, lead, 'toasts', { name: 'Pie', copyFrom: 'cake' }));
    const { momentId: again } = done(repeatMoment(doc, lead, 'toasts'));
    expect(taken(momentOf(doc, after))).toEqual(taken(momentOf(doc, 'toasts')));
    expect(taken(momentOf(doc, named))).toEqual(taken(momentOf(doc, 'cake')));
    expect(taken(momentOf(doc, again))).toEqual(taken(momentOf(doc, 'toasts')));
    expect(momentOf(doc, again)).toMatchObject({ name: momentOf(doc, 'toasts').name, expected: null });
    const toasts = taken(momentOf(doc, 'toasts'));
    done(setExposure(doc, lead, after, { ...exposure, iso: 800 }));
    done(moveSubject(doc, lead, again, { x: 2, y: 2 }));
    expect(taken(momentOf(doc, 'toasts'))).toEqual(toasts);
    done(setExposure(doc, lead, 'toasts', { ...exposure, iso: 400 }));
    expect(momentOf(doc, after).exposure.iso).toBe(800);
    expect(momentOf(doc, again).exposure.iso).toBe(6400);
  });

  it('[DOC26] before all others it begins as the one that is on', () => {
    const { doc, lead } = demoDocument();
    done(startMoment(doc, lead, 'cake'));
    const { momentId } = done(addMoment(doc, lead, null, { name: 'Doors' }));
    expect(taken(momentOf(doc, momentId))).toEqual(taken(momentOf(doc, 'cake')));
  });

  it('[DOC10 DOC26] takes over what a newer app wrote into its source', () => {
    const { doc, lead } = demoDocument();
    const at = key.momentExposure('toasts');
    rootOf(doc, 'moments').set(at, { ...exposure, nd: 3 });
    const { momentId } = done(repeatMoment(doc, lead, 'toasts'));
    expect(rootOf(doc, 'moments').get(key.momentExposure(momentId))).toEqual({ ...exposure, nd: 3 });
  });

  it('[DOC26] of a pasted timeline all are there, in its order, or none', () => {
    const { doc, lead } = demoDocument();
    const list = [
      { name: 'Dinner', expected: '20:00' },
      { name: 'Quiz', copyFrom: 'cake' },
      { name: 'Lanterns', expected: '23:45' },
    ];
    const before = valuesOf(doc);
    for (const [bad, reason] of [
      [{ name: '' }, 'out-of-range'],
      [{ name: 'Late', expected: '25:00' }, 'out-of-range'],
      [{ name: 'Copy', copyFrom: 'nothing' }, 'no-such-moment'],
    ] as const)
      expect(refusal(addMoments(doc, lead, [...list, bad]))).toBe(reason);
    expect(addMoments(doc, lead, [])).toMatchObject({ reason: 'out-of-range', field: 'moments' });
    const many = Array.from({ length: MOST_MOMENTS - DEMO.length + 1 }, () => ({ name: 'Song' }));
    expect(refusal(addMoments(doc, lead, many))).toBe('too-many-moments');
    expect(valuesOf(doc)).toEqual(before);
    let updates = 0;
    doc.on('update', () => {
      updates += 1;
    });
    const { momentIds } = done(addMoments(doc, lead, list, 'first-dance'));
    expect(updates).toBe(1);
    expect(idsOf(doc)).toEqual([...DEMO.slice(0, 2), ...momentIds, ...DEMO.slice(2)]);
    expect(namesOf(doc).slice(2, 5)).toEqual(['Dinner', 'Quiz', 'Lanterns']);
    const [dinner, quiz, lanterns] = momentIds.map((id) => taken(momentOf(doc, id)));
    expect(dinner).toEqual(taken(momentOf(doc, 'first-dance')));
    expect(quiz).toEqual(taken(momentOf(doc, 'cake')));
    expect(lanterns).toEqual(quiz);
  });

  it('[DOC26] a list that two phones pasted apart is there from both, each in its own order', () => {
    const list = ['Soup', 'Fish', 'Sorbet'].map((name) => ({ name }));
    const { network, lead, assistant } = phonePair();
    network.cut(lead.phone);
    network.cut(assistant.phone);
    const one = done(addMoments(lead.doc, lead.hand, list));
    const other = done(addMoments(assistant.doc, assistant.hand, list));
    network.joinAllAndDrain();
    for (const doc of network.docs)
      for (const { momentIds } of [one, other])
        expect(idsOf(doc).filter((id) => momentIds.some((own) => own === id))).toEqual(momentIds);
    expect(idsOf(lead.doc)).toHaveLength(DEMO.length + 6);
  });
});

describe('a moment that is left out', () => {
  it('[DOC27] skipped, it stays where it is and is not next; that can be undone', () => {
    const { doc, lead } = demoDocument();
    done(startMoment(doc, lead, 'first-dance'));
    done(skipMoment(doc, lead, 'toasts'));
    expect(idsOf(doc)).toEqual(DEMO);
    expect(momentOf(doc, 'toasts').skipped).toBe(true);
    expect(readNight(doc).next?.id).toBe('cake');
    expect(refusal(skipMoment(doc, lead, 'toasts'))).toBe('already');
    done(unskipMoment(doc, lead, 'toasts'));
    expect(readNight(doc).next?.id).toBe('toasts');
    expect(refusal(unskipMoment(doc, lead, 'toasts'))).toBe('nothing-to-undo');
    done(skipMoment(doc, lead, 'toasts'));
    expect(readNight(doc).next?.id).toBe('cake');
  });

  it('[DOC27] skipped, it is not skipped any more once it begins', () => {
    const { doc, lead } = demoDocument();
    done(skipMoment(doc, lead, 'toasts'));
    done(startMoment(doc, lead, 'toasts'));
    expect(readNight(doc).moment).toMatchObject({ id: 'toasts', skipped: false });
  });

  it('[DOC27] after the last, or when all that follow are skipped, none is next', () => {
    const { doc, lead } = demoDocument();
    done(startMoment(doc, lead, 'cake'));
    done(skipMoment(doc, lead, 'open-dancing'));
    expect(readNight(doc).next).toBeNull();
    done(startMoment(doc, lead, 'open-dancing'));
    expect(readNight(doc).next).toBeNull();
  });

  it('[DOC27] removed, it stays in the document and comes back to its place', () => {
    const { doc, lead } = demoDocument();
    const before = momentOf(doc, 'toasts');
    done(removeMoment(doc, lead, 'toasts'));
    expect(idsOf(doc)).toEqual(DEMO.filter((id) => id !== 'toasts'));
    expect(readNight(doc).removedMoments).toEqual([before]);
    expect(refusal(removeMoment(doc, lead, 'toasts'))).toBe('already');
    expect(refusal(startMoment(doc, lead, 'toasts'))).toBe('no-such-moment');
    const { momentId } = done(addMoment(doc, lead, 'first-dance', { name: 'Parents' }));
    done(restoreMoment(doc, lead, 'toasts'));
    expect(idsOf(doc)).toEqual(['entrances', 'first-dance', momentId, 'toasts', 'cake', 'open-dancing']);
    expect(momentOf(doc, 'toasts')).toEqual(before);
    expect(refusal(restoreMoment(doc, lead, 'toasts'))).toBe('nothing-to-undo');
  });

  it('[DOC21 DOC27] removed, its people are brought inside another room too', () => {
    const { doc, lead } = demoDocument();
    done(removeMoment(doc, lead, 'cake'));
    done(newPlan(doc, lead, { ...emptyPlan(5, 4), features: [] }));
    done(restoreMoment(doc, lead, 'cake'));
    const { subject, camera } = momentOf(doc, 'cake').view;
    for (const { x, y } of [subject.spot, camera.spot]) {
      expect(x).toBeLessThanOrEqual(5);
      expect(y).toBeLessThanOrEqual(4);
    }
  });

  it('[DOC27] the one that is on cannot be removed; removed apart from its beginning it stays on until another begins', () => {
    const { doc, lead: hand } = demoDocument();
    done(startMoment(doc, hand, 'toasts'));
    expect(refusal(removeMoment(doc, hand, 'toasts'))).toBe('on-now');
    for (const assistantWinsTies of [true, false]) {
      const { network, lead, assistant } = phonePair({ assistantWinsTies });
      network.cut(lead.phone);
      done(removeMoment(lead.doc, lead.hand, 'toasts'));
      done(startMoment(assistant.doc, assistant.hand, 'toasts'));
      network.joinAllAndDrain();
      for (const joined of network.docs) {
        const { moment, moments, next } = readNight(joined);
        expect(moment?.id).toBe('toasts');
        expect(moments.map(({ id }) => id)).not.toContain('toasts');
        expect(next?.id).toBe('cake');
      }
      done(startMoment(lead.doc, lead.hand, 'cake'));
      expect(readNight(lead.doc)).toMatchObject({ moment: { id: 'cake' }, next: { id: 'open-dancing' } });
    }
  });

  it('[DOC2 DOC27] skipped on one phone and changed on the other apart, it is skipped and changed', () => {
    for (const assistantWinsTies of [true, false]) {
      const { network, lead, assistant } = phonePair({ assistantWinsTies });
      network.cut(lead.phone);
      network.cut(assistant.phone);
      done(skipMoment(lead.doc, lead.hand, 'cake'));
      done(renameMoment(assistant.doc, assistant.hand, 'cake', 'Late cake', '23:10'));
      network.joinAllAndDrain();
      for (const doc of network.docs)
        expect(momentOf(doc, 'cake')).toMatchObject({ skipped: true, name: 'Late cake', expected: '23:10' });
    }
  });
});
