import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { demoNight } from '../../server/nights/demo-night.ts';
import { measureAmbient } from '../../shared/document/commands/ambient-reading.ts';
import { announceMoment } from '../../shared/document/commands/announce-moment.ts';
import { recordTestFrame } from '../../shared/document/commands/test-frame.ts';
import { createNight } from '../../shared/document/create-night.ts';
import { readKey } from '../../shared/document/keys.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { entrySchemas, ROOTS } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { LOCAL, SEED } from '../../shared/document/transact.ts';
import { asId } from '../../shared/ids.ts';
import { COMMANDS, frameOf } from '../support/document-commands.ts';
import { callKey, demoDocument, done } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';
import { HeldClock, heldHand } from '../support/phone-hand.ts';
import { openDoc } from '../support/phone-network.ts';

/** For each command: what must have been done for it to be accepted, in order. */
const LEADS_TO: Readonly<Record<string, readonly string[]>> = {
  restoreCarry: ['withdrawCarry'],
  acknowledgeWithdrawal: ['withdrawCarry'],
  releaseCall: ['holdCall'],
  undoStamp: ['markSet'],
  restoreAmbient: ['removeAmbient'],
  restoreTestFrame: ['removeTestFrame'],
  unskipMoment: ['skipMoment'],
  restoreMoment: ['removeMoment'],
  settleAnnouncement: ['announceMoment'],
};

/** What a new moment is written as; the one it copies has neither wish nor flash of its own. */
const ADDED = ['name', 'place', 'view', 'exposure'].map((part) => new RegExp(`^moments \\w{26}/${part}$`));

/** A night in which a command has just become possible, and the command ready to be given. */
function readyFor(name: string) {
  const one = demoDocument();
  const on = callKey(one.doc, one.lead);
  const { frameId } = done(recordTestFrame(one.doc, one.lead, frameOf('toasts', 'key', 0.5)));
  const { readingId } = done(measureAmbient(one.doc, one.lead, { x: 3, y: 3 }, 3));
  const { announcementId } = done(announceMoment(one.doc, one.assistant, 'cake'));
  const text = name === 'setUnits' ? 'imperial' : 'Robin';
  const give = (command: string) => {
    const found = COMMANDS[command];
    if (!found) throw new Error(`no command ${command}`);
    return found(one.doc, one.lead, {
      standId: 'key',
      momentId: 'toasts',
      on,
      frameId,
      readingId,
      featureId: 'cake',
      announcementId,
      text,
      number: 1,
    });
  };
  return { ...one, give };
}

describe('the shape of the document', () => {
  it('[DOC1] every root is a flat map of plain JSON values, in a new night and in one that was worked in', () => {
    const { doc, lead } = demoDocument();
    callKey(doc, lead);
    let entries = 0;
    for (const root of ROOTS) {
      for (const [key, value] of rootOf(doc, root)) {
        entries += 1;
        expect(value, `${root} ${key}`).not.toBeInstanceOf(Y.AbstractType);
        expect(JSON.parse(JSON.stringify(value)), `${root} ${key}`).toEqual(value);
      }
    }
    expect(entries).toBeGreaterThan(50);
    expect([...doc.share.keys()].sort()).toEqual([...ROOTS].sort());
  });

  it('[DOC1] every key of it is one that this version knows, with a value that fits', () => {
    const { doc, lead } = demoDocument();
    callKey(doc, lead);
    for (const root of ROOTS) {
      for (const [key, value] of rootOf(doc, root)) {
        const parts = readKey(root, key);
        expect(parts, `${root} ${key}`).not.toBeNull();
        if (parts) expect(entrySchemas[parts.kind].safeParse(value).success, `${root} ${key}`).toBe(true);
      }
    }
    expect(readNight(doc).skipped).toEqual([]);
  });

  it('[DOC2] a command writes no key but those of what it changes, and one entry of the log', () => {
    const written: Readonly<Record<string, readonly RegExp[]>> = {
      callCarry: [/^carries \w+\/rev\/\w+$/],
      nudgeCarry: [/^carries \w+\/rev\/\w+$/],
      withdrawCarry: [/^carries \w+\/withdrawn$/],
      restoreCarry: [/^carries \w+\/withdrawn$/],
      acknowledgeWithdrawal: [/^carries \w+\/withdrawn-seen$/],
      stampDelivered: [/^carries \w+\/stamp\/\w+\/delivered$/],
      stampSeen: [/^carries \w+\/stamp\/\w+\/seen$/],
      stampHeard: [/^carries \w+\/stamp\/\w+\/heard$/],
      holdCall: [/^carries \w+\/stamp\/\w+\/held$/],
      releaseCall: [/^carries \w+\/stamp\/\w+\/held$/],
      startCarrying: [/^carries \w+\/stamp\/\w+\/carrying$/],
      cannotCarry: [/^carries \w+\/stamp\/\w+\/cant$/],
      markSet: [/^carries \w+\/stamp\/\w+\/set$/, /^stands key\/at$/],
      undoStamp: [/^carries \w+\/stamp\/\w+\/set$/, /^stands key\/at$/],
      startMoment: [/^about now$/],
      setExposure: [/^moments toasts\/exposure$/],
      setView: [/^moments toasts\/view$/],
      setAmbient: [/^room ambient$/],
      enterNight: [/^people lead$/],
      setUnits: [/^about units$/],
      setRoof: [/^room roof$/],
      setFinishes: [/^room finishes$/],
      setCeiling: [/^room shape$/],
      measureAmbient: [/^room ambient\/\w+$/],
      removeAmbient: [/^room ambient\/\w+$/],
      restoreAmbient: [/^room ambient\/\w+$/],
      setGear: [/^gear card-1$/],
      setCameraKit: [/^about camera$/],
      setWish: [/^moments toasts\/wish$/],
      setCameraLight: [/^moments toasts\/camera-light$/],
      recordTestFrame: [/^frames \w+\/of$/],
      removeTestFrame: [/^frames \w+\/removed$/],
      restoreTestFrame: [/^frames \w+\/removed$/],
      markSetElsewhere: [/^carries \w+\/stamp\/\w+\/set$/, /^stands key\/at$/],
      setOutline: [/^room shape$/],
      // Everything that was on the plan, what is put on it, and what would be outside a room of 14 × 9 m.
      newPlan: [
        /^room shape$/,
        /^room roof$/,
        /^room finishes$/,
        ...Object.keys(demoNight('2026-05-16').features).map((id) => new RegExp(`^features ${id}$`)),
        /^features \w{26}$/,
        /^stands key\/at$/,
        /^moments entrances\/view$/,
        /^moments first-dance\/view$/,
        /^moments cake\/view$/,
        /^moments open-dancing\/view$/,
      ],
      addFeatures: [/^features \w{26}$/],
      changeFeature: [/^features cake$/],
      changeFeatures: [/^features bar$/, /^features cake$/],
      removeFeatures: [/^features bar$/, /^features cake$/],
      moveSubject: [/^moments toasts\/view$/],
      moveCamera: [/^moments toasts\/view$/],
      addMoment: ADDED,
      addMoments: ADDED,
      repeatMoment: ADDED,
      renameMoment: [/^moments toasts\/name$/],
      moveMoment: [/^moments toasts\/place$/],
      skipMoment: [/^moments toasts\/skipped$/],
      unskipMoment: [/^moments toasts\/skipped$/],
      removeMoment: [/^moments toasts\/removed$/],
      restoreMoment: [/^moments toasts\/removed$/],
      announceMoment: [/^about now$/, /^moments toasts\/announced\/\w+$/],
      hearAnnouncement: [/^moments cake\/heard\/\w+\/lead$/],
      undoAnnouncement: [/^about now$/, /^moments cake\/announced\/\w+$/],
      settleAnnouncement: [
        /^about now$/,
        /^moments cake\/heard\/\w+\/lead$/,
        /^moments toasts\/heard\/\w+\/assistant$/,
      ],
    };
    expect(Object.keys(written).sort()).toEqual(Object.keys(COMMANDS).sort());
    for (const [name, patterns] of Object.entries(written)) {
      const { doc, give } = readyFor(name);
      for (const before of LEADS_TO[name] ?? []) done(give(before));
      const changed: string[] = [];
      doc.on('afterTransaction', (transaction) => {
        for (const root of ROOTS)
          for (const [type, keys] of transaction.changed)
            if (Object.is(type, rootOf(doc, root))) for (const key of keys) changed.push(`${root} ${key}`);
      });
      done(give(name));
      for (const pattern of [...patterns, /^log \w+$/])
        expect(
          changed.filter((key) => pattern.test(key)),
          `${name}: ${pattern}`,
        ).toHaveLength(1);
      expect(changed, name).toHaveLength(patterns.length + 1);
    }
  });
});

describe('changes of the document', () => {
  for (const name of Object.keys(COMMANDS)) {
    it(`[DOC4] ${name} is one transaction with the origin of this phone's person`, () => {
      const { doc, give } = readyFor(name);
      for (const before of LEADS_TO[name] ?? []) done(give(before));
      const origins: unknown[] = [];
      doc.on('update', (_update: Uint8Array, origin: unknown) => origins.push(origin));
      done(give(name));
      expect(origins).toHaveLength(1);
      expect(origins[0]).toBe(LOCAL);
    });
  }

  it('[DOC5] the beginning is one transaction of its own origin, and doing it twice throws and changes nothing', () => {
    const doc = openDoc(3);
    const origins: unknown[] = [];
    doc.on('update', (_update: Uint8Array, origin: unknown) => origins.push(origin));
    const hand = heldHand('server', new HeldClock(), { idSeed: 1 });
    const begin = () => createNight(doc, hand, asId('demo'), demoNight('2026-05-16'));
    begin();
    expect(origins).toEqual([SEED]);
    const before = valuesOf(doc);
    expect(begin).toThrow('document already holds a night: demo');
    expect(valuesOf(doc)).toEqual(before);
    expect(origins).toHaveLength(1);
  });

  it('[DOC5] a document in which anything is known of a night is not empty, however little that is', () => {
    const doc = openDoc(3);
    rootOf(doc, 'about').set('units', 'imperial');
    const hand = heldHand('server', new HeldClock(), { idSeed: 1 });
    expect(() => createNight(doc, hand, asId('demo'), demoNight('2026-05-16'))).toThrow(
      'already holds a night',
    );
    expect(readNight(doc).stands).toEqual([]);
  });
});
