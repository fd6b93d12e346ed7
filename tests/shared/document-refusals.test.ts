import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { measureAmbient } from '../../shared/document/commands/ambient-reading.ts';
import { announceMoment } from '../../shared/document/commands/announce-moment.ts';
import { nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import { recordTestFrame } from '../../shared/document/commands/test-frame.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { SCHEMA_VERSION } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { type Asking, COMMANDS, frameOf } from '../support/document-commands.ts';
import { callKey, demoDocument, done, projectPath, refusal } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';

/** Numbers that no screen should send and one day does. */
const WILD = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e308, -1e308] as const;
const STRANGE_TEXT = [
  '',
  'no such',
  '../..',
  'key/at',
  '__proto__',
  'x'.repeat(81),
  'x'.repeat(10_000),
] as const;

/** The commands that take a number, and those that take the id of a stand, a moment or a carry. */
const TAKE_A_NUMBER = [
  'callCarry',
  'nudgeCarry',
  'stampSeen',
  'markSet',
  'setExposure',
  'setView',
  'setAmbient',
  'enterNight',
  'setRoof',
  'setFinishes',
  'setCeiling',
  'measureAmbient',
  'setGear',
  'setWish',
  'setCameraLight',
  'recordTestFrame',
  'markSetElsewhere',
  'setOutline',
  'newPlan',
  'addFeatures',
  'changeFeature',
  'changeFeatures',
  'moveSubject',
  'moveCamera',
];
const TAKE_NO_ID = [
  'setAmbient',
  'enterNight',
  'setUnits',
  'setRoof',
  'setFinishes',
  'setCeiling',
  'measureAmbient',
  'setOutline',
  'newPlan',
  'addFeatures',
  // Gear is added by it, so any id is one; what it makes of a bad one has a test of its own.
  'setGear',
];
const TAKE_AN_ID = Object.keys(COMMANDS).filter((name) => !TAKE_NO_ID.includes(name));

function night() {
  const one = demoDocument();
  const on = callKey(one.doc, one.lead);
  const { frameId } = done(recordTestFrame(one.doc, one.lead, frameOf('toasts', 'key', 0.5)));
  const { readingId } = done(measureAmbient(one.doc, one.lead, { x: 3, y: 3 }, 3));
  const { announcementId } = done(announceMoment(one.doc, one.assistant, 'entrances'));
  const asking: Asking = {
    standId: 'key',
    momentId: 'toasts',
    on,
    frameId,
    readingId,
    featureId: 'cake',
    announcementId,
    text: 'Robin',
    number: 1,
  };
  return { ...one, asking };
}

const everyId = (id: string) => ({
  standId: id,
  momentId: id,
  on: { carryId: id, revisionId: id },
  frameId: id,
  readingId: id,
  featureId: id,
  announcementId: id,
});

function command(name: string): NonNullable<(typeof COMMANDS)[string]> {
  const found = COMMANDS[name];
  if (!found) throw new Error(`no command ${name}`);
  return found;
}

describe('commands that cannot be carried out', () => {
  it('[DOC6] are all of them tried here: the list is what the folder of commands exports', () => {
    const folder = projectPath('shared/document/commands');
    const exported = readdirSync(folder).flatMap((file) =>
      [...readFileSync(`${folder}/${file}`, 'utf8').matchAll(/^export (?:function|const) (\w+)/gm)].map(
        ([, name]) => name,
      ),
    );
    // What a mark becomes is asked without a document by the lead's screen: it is no command.
    expect(exported.filter((name) => name !== 'nudgedMark').sort()).toEqual(Object.keys(COMMANDS).sort());
  });

  for (const name of TAKE_A_NUMBER) {
    it(`[DOC6] ${name} refuses NaN, infinities and enormous numbers, and changes nothing`, () => {
      for (const number of WILD) {
        const { doc, lead, asking } = night();
        const before = valuesOf(doc);
        expect(refusal(command(name)(doc, lead, { ...asking, number })), `${number}`).toBe('out-of-range');
        expect(valuesOf(doc)).toEqual(before);
      }
    });
  }

  it('[DOC6] each kind of nudge refuses NaN, infinities and enormous numbers', () => {
    for (const number of WILD) {
      const { doc, lead } = night();
      const before = Y.encodeStateVector(doc);
      for (const nudge of [
        { kind: 'move', way: 'nearer', byM: number },
        { kind: 'height', byM: number },
        { kind: 'tilt', byDeg: number },
        { kind: 'power', byStops: number },
      ] as const)
        expect(refusal(nudgeCarry(doc, lead, { standId: 'key', nudge }))).toBe('out-of-range');
      expect(Y.encodeStateVector(doc)).toEqual(before);
    }
  });

  it('[DOC6] a negative zero is a zero like another', () => {
    const { doc, lead } = night();
    const outcome = command('setAmbient')(doc, lead, { ...night().asking, number: -0 });
    expect(outcome.ok).toBe(true);
    expect(readNight(doc).ambientEv100).toBeCloseTo(0, 12);
    expect(nudgeCarry(doc, lead, { standId: 'key', nudge: { kind: 'tilt', byDeg: -0 } }).ok).toBe(true);
    expect(readNight(doc).skipped).toEqual([]);
  });

  for (const name of TAKE_AN_ID) {
    it(`[DOC6] ${name} refuses ids that it does not know, the empty one among them`, () => {
      for (const id of STRANGE_TEXT) {
        const { doc, lead, asking } = night();
        const before = Y.encodeStateVector(doc);
        const strange = { ...asking, ...everyId(id), text: id };
        expect(refusal(command(name)(doc, lead, strange))).toMatch(
          /^no-such-(stand|carry|moment|frame|reading|gear|feature|announcement)$/,
        );
        expect(Y.encodeStateVector(doc)).toEqual(before);
      }
    });
  }

  it('[DOC6] a name that is empty or over 80 signs is refused, and so are units that there are not', () => {
    for (const text of ['', 'x'.repeat(81), 'x'.repeat(10_000)]) {
      const { doc, lead, asking } = night();
      const before = Y.encodeStateVector(doc);
      for (const name of ['enterNight', 'setView', 'setUnits'])
        expect(refusal(command(name)(doc, lead, { ...asking, text })), `${name}: ${text.length} signs`).toBe(
          'out-of-range',
        );
      expect(Y.encodeStateVector(doc)).toEqual(before);
    }
  });

  it('[DOC6] a reason that is too long is cut and still said', () => {
    const { doc, lead, asking } = night();
    expect(command('cannotCarry')(doc, lead, { ...asking, text: 'y'.repeat(5000) }).ok).toBe(true);
    const [carry] = readNight(doc).carries;
    expect(carry?.state).toBe('cant');
    expect(carry?.current.stamps.cant?.reason).toBe('y'.repeat(200));
  });

  it('[DOC6] no command throws, whatever it is asked; a refused one changes nothing and an accepted one can be read', () => {
    const number = fc.oneof(fc.double(), fc.constantFrom(...WILD, 0, -0, Number.MIN_VALUE), fc.integer());
    const text = fc.oneof(fc.constantFrom(...STRANGE_TEXT), fc.string({ unit: 'binary' }));
    let accepted = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.keys(COMMANDS)),
        number,
        text,
        fc.boolean(),
        (name, n, words, known) => {
          const { doc, lead, asking } = night();
          const before = Y.encodeStateVector(doc);
          const ids = known ? {} : everyId(words);
          const outcome = command(name)(doc, lead, { ...asking, ...ids, number: n, text: words });
          if (outcome.ok) accepted += 1;
          else refused += 1;
          if (!outcome.ok) expect(Y.encodeStateVector(doc)).toEqual(before);
          expect(readNight(doc).skipped).toEqual([]);
        },
      ),
      { numRuns: 400 },
    );
    expect(accepted).toBeGreaterThan(10);
    expect(refused).toBeGreaterThan(100);
  });
});

describe('a document of a newer app', () => {
  it('[DOC10] is read as far as it is understood', () => {
    const { doc } = night();
    rootOf(doc, 'about').set('schema', SCHEMA_VERSION + 1);
    const read = readNight(doc);
    expect(read).toMatchObject({ schema: SCHEMA_VERSION + 1, fromNewerApp: true, skipped: [] });
    expect(read.stands.map(({ id }) => id)).toEqual(['key', 'back']);
    expect(read.carries).toHaveLength(1);
  });

  for (const name of Object.keys(COMMANDS)) {
    it(`[DOC10] is never written by ${name}`, () => {
      const { doc, lead, asking } = night();
      rootOf(doc, 'about').set('schema', SCHEMA_VERSION + 1);
      const before = valuesOf(doc);
      const usual = { ...asking, text: name === 'setUnits' ? 'metric' : 'Robin' };
      expect(refusal(command(name)(doc, lead, usual))).toBe('newer-app');
      expect(valuesOf(doc)).toEqual(before);
    });
  }
});
