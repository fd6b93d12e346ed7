import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import { setAmbient, setExposure, startMoment } from '../../shared/document/commands/change-moment.ts';
import { enterNight } from '../../shared/document/commands/enter-night.ts';
import { markSet, undoStamp } from '../../shared/document/commands/mark-set.ts';
import { holdCall, releaseCall, stampSeen } from '../../shared/document/commands/stamp-carry.ts';
import { restoreCarry, withdrawCarry } from '../../shared/document/commands/withdraw-carry.ts';
import { readKey } from '../../shared/document/keys.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { entrySchemas, ROOTS, type Root, STAMPS } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { callKey, carryOf, demoDocument, done, markAt } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';

interface Junk {
  readonly root: Root;
  readonly key: string;
  readonly value: unknown;
}

/** Keys that this version knows, none of them of the demo night's own entries. */
const KNOWN: Readonly<Record<Root, readonly string[]>> = {
  about: [],
  room: ['ambient/junk'],
  features: ['junk', 'a-9'],
  gear: ['junk', 'B_2'],
  stands: ['junk/kit', 'junk/at'],
  moments: [
    'junk/name',
    'junk/place',
    'junk/view',
    'junk/exposure',
    'junk/wish',
    'junk/camera-light',
    'junk/skipped',
    'junk/removed',
    'junk/announced/a1',
    'junk/heard/a1/p1',
  ],
  carries: [
    'junk/of',
    'junk/withdrawn',
    'junk/withdrawn-seen',
    'junk/rev/r1',
    ...STAMPS.map((stamp) => `junk/stamp/r1/${stamp}`),
  ],
  people: ['junk'],
  frames: ['junk/of', 'junk/removed'],
  log: ['junk'],
};

/** Keys that some later version may have; this one must leave them alone. */
const UNKNOWN: Readonly<Record<Root, readonly string[]>> = {
  about: ['weather', 'night/more', ''],
  room: ['walls', 'shape/2', 'ambient/a/b', 'ambient/'],
  features: ['bar/photo', 'two words', '', 'ü'],
  gear: ['a/b/c', '.'],
  stands: ['key/battery', 'key', 'key/at/x', '/at'],
  moments: [
    'toasts/people',
    'toasts',
    'toasts/announced',
    'toasts/announced/a1/x',
    'toasts/heard/a1',
    'toasts/heard/a1/p1/x',
    'toasts/shown/a1',
    '__proto__',
  ],
  carries: ['c1', 'c1/of/x', 'c1/rev', 'c1/rev/r1/x', 'c1/stamp/r1/flown', 'c1/stamp/r1', 'c1/photo'],
  people: ['lead/face', ' '],
  frames: ['f1', 'f1/of/x', 'f1/picture', '/of'],
  log: ['a/b', '?'],
};

const value = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom(null, '', 0, -1, true, [], {}, { spot: { x: 'far', y: 2 } }, { at: -5 }, { mark: null }),
);
const junkUnder = (keys: Readonly<Record<Root, readonly string[]>>): fc.Arbitrary<Junk[]> => {
  const places = ROOTS.flatMap((root) => keys[root].map((key) => ({ root, key })));
  return fc.uniqueArray(
    fc
      .record({ place: fc.constantFrom(...places), value })
      .map(({ place, ...rest }) => ({ ...place, ...rest })),
    { minLength: 1, maxLength: 12, selector: ({ root, key }) => `${root} ${key}` },
  );
};

/** A fresh copy of each value, as another phone's would be: the reader looks at an object once. */
const put = (doc: Y.Doc, junk: readonly Junk[]) =>
  doc.transact(() => {
    for (const { root, key, value: raw } of junk) rootOf(doc, root).set(key, structuredClone(raw));
  });

const fits = ({ root, key, value: raw }: Junk): boolean => {
  const parts = readKey(root, key);
  return parts !== null && entrySchemas[parts.kind].safeParse(raw).success;
};

describe('entries that do not fit', () => {
  it('[DOC3] each is left out and named with key and reason, stays, and the rest is read as without it', () => {
    let skippedInAll = 0;
    fc.assert(
      fc.property(junkUnder(KNOWN), (some) => {
        const junk = some.filter((one) => !fits(one));
        const { doc, lead } = demoDocument();
        callKey(doc, lead);
        const without = readNight(doc);
        put(doc, junk);
        const { skipped, ...rest } = readNight(doc);
        expect({ ...rest, skipped: [] }).toEqual(without);
        // The log is not part of the snapshot: nothing is left out of what is not read.
        const wanted = junk.filter(({ root }) => root !== 'log').map(({ root, key }) => `${root} ${key}`);
        expect(skipped.map(({ root, key }) => `${root} ${key}`).sort()).toEqual(wanted.sort());
        for (const { reason } of skipped) expect(reason).toMatch(/\w/);
        const values = valuesOf(doc);
        for (const { root, key, value: raw } of junk) expect(values[root]?.[key]).toEqual(raw);
        skippedInAll += skipped.length;
      }),
      { numRuns: 100 },
    );
    expect(skippedInAll).toBeGreaterThan(100);
  });

  it('[DOC3] an entry of the night itself that is spoilt is named, and only what needs it is missing', () => {
    const spoil: readonly (readonly [
      Root,
      string,
      (night: ReturnType<typeof readNight>) => unknown,
      unknown,
    ])[] = [
      ['about', 'night', ({ about }) => about, null],
      ['about', 'now', ({ now }) => now, null],
      ['about', 'units', ({ units }) => units, 'metric'],
      ['room', 'shape', ({ room }) => room, null],
      ['room', 'ambient', ({ ambientEv100 }) => ambientEv100, null],
      ['room', 'finishes', ({ finishes }) => finishes, { ceiling: 0.7, walls: 0.5, floor: 0.2 }],
      ['about', 'camera', ({ cameraKit }) => cameraKit, null],
      ['stands', 'key/at', ({ stands }) => stands.map(({ id }) => id), ['back']],
      ['moments', 'toasts/view', ({ moments }) => moments.some(({ id }) => id === 'toasts'), false],
      ['features', 'bar', ({ features }) => features.some(({ id }) => id === 'bar'), false],
      ['gear', 'head-k', ({ gear }) => [...gear.keys()].some((id) => id === 'head-k'), false],
    ];
    for (const [root, key, look, wanted] of spoil) {
      const { doc } = demoDocument();
      expect(look(readNight(doc))).toBeTruthy();
      put(doc, [{ root, key, value: { far: 'from it' } }]);
      const night = readNight(doc);
      expect(night.skipped.map((skipped) => skipped.key)).toEqual([key]);
      expect(look(night)).toEqual(wanted);
    }
  });

  it('[DOC3] a spoilt stamp or revision leaves the other revisions of its carry readable', () => {
    const { doc, lead, assistant } = demoDocument();
    const first = callKey(doc, lead);
    done(stampSeen(doc, assistant, first, markAt(9, 6)));
    const second = callKey(doc, lead, markAt(8, 6));
    put(doc, [
      { root: 'carries', key: `${first.carryId}/stamp/${first.revisionId}/seen`, value: { at: 'soon' } },
      { root: 'carries', key: `${first.carryId}/rev/${second.revisionId}`, value: 7 },
    ]);
    const carry = carryOf(doc, first);
    expect(carry.current.id).toBe(first.revisionId);
    expect(carry.state).toBe('called');
    expect(readNight(doc).skipped).toHaveLength(2);
    expect(readNight(doc).skipped.find(({ key }) => key.endsWith('seen'))?.reason).toMatch(/^(by|at)/);
  });

  it('[DOC3] commands work beside them, and none of them is touched', () => {
    fc.assert(
      fc.property(junkUnder(KNOWN), junkUnder(UNKNOWN), (known, unknown) => {
        const junk = [...known.filter((one) => !fits(one)), ...unknown];
        const { doc, lead, assistant } = demoDocument();
        put(doc, junk);
        const on = done(callCarry(doc, lead, { standId: 'key', mark: markAt(9, 6) }));
        done(markSet(doc, assistant, on));
        done(startMoment(doc, lead, 'toasts'));
        done(setAmbient(doc, lead, 2));
        expect(carryOf(doc, on).state).toBe('set');
        const values = valuesOf(doc);
        for (const { root, key, value: raw } of junk) expect(values[root]?.[key]).toEqual(raw);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what a later version may add', () => {
  it('[DOC10] keys that this version does not know are passed over in silence and kept', () => {
    fc.assert(
      fc.property(junkUnder(UNKNOWN), (junk) => {
        const { doc } = demoDocument();
        const without = readNight(doc);
        put(doc, junk);
        expect(readNight(doc)).toEqual(without);
        const values = valuesOf(doc);
        for (const { root, key, value: raw } of junk)
          expect(Object.entries(values[root] ?? {})).toContainEqual([key, raw]);
      }),
      { numRuns: 60 },
    );
  });

  it('[DOC10] fields that this version does not know survive the commands that write their entry anew', () => {
    const { doc, lead, assistant } = demoDocument();
    const on = callKey(doc, lead);
    done(enterNight(doc, lead, { name: 'Robin', role: 'lead', stepM: 0.7 }));
    done(stampSeen(doc, assistant, on, markAt(9, 6)));
    done(holdCall(doc, lead, on));
    done(withdrawCarry(doc, lead, on.carryId));
    const touched: readonly (readonly [Root, string])[] = [
      ['stands', 'key/at'],
      ['moments', 'toasts/exposure'],
      ['about', 'now'],
      ['room', 'ambient'],
      ['people', 'lead'],
      ['carries', `${on.carryId}/withdrawn`],
      ['carries', `${on.carryId}/stamp/${on.revisionId}/held`],
    ];
    for (const [root, key] of touched) {
      const old = rootOf(doc, root).get(key);
      if (typeof old !== 'object' || old === null) throw new Error(`nothing under ${root} ${key}`);
      rootOf(doc, root).set(key, { ...old, fromLater: { root, key } });
    }
    const before = valuesOf(doc);
    done(restoreCarry(doc, lead, on.carryId));
    done(releaseCall(doc, lead, on));
    done(markSet(doc, assistant, on));
    done(undoStamp(doc, assistant, on, 'set'));
    done(setExposure(doc, lead, 'toasts', { iso: 800, fNumber: 4, shutterS: 1 / 60 }));
    done(startMoment(doc, lead, 'toasts'));
    done(setAmbient(doc, lead, 1));
    done(enterNight(doc, lead, { name: 'Robin', role: 'lead', stepM: 0.8 }));
    const after = valuesOf(doc);
    for (const [root, key] of touched) {
      expect(after[root]?.[key], `${root} ${key}`).toMatchObject({ fromLater: { root, key } });
      expect(after[root]?.[key], 'the command did write it').not.toEqual(before[root]?.[key]);
    }
  });
});
