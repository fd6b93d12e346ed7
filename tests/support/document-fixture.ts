// Makes the stored document of the present schema version, once, with the value it must be read as for ever:
//
//     npx tsx tests/support/document-fixture.ts
//
// A fixture is never made anew: it stands for the nights that are stored on somebody's disk by then. When the night gains
// a field, the stated value gains what an old night is read as there; the bytes never change.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as Y from 'yjs';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import { setAmbient, startMoment } from '../../shared/document/commands/change-moment.ts';
import { enterNight, setUnits } from '../../shared/document/commands/enter-night.ts';
import { markSet } from '../../shared/document/commands/mark-set.ts';
import { nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import { stampDelivered, stampSeen, startCarrying } from '../../shared/document/commands/stamp-carry.ts';
import { withdrawCarry } from '../../shared/document/commands/withdraw-carry.ts';
import { rootOf } from '../../shared/document/roots.ts';
import { SCHEMA_VERSION } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { demoDocument, done, markAt, projectPath } from './document-night.ts';
import { nightAsJson } from './document-values.ts';

/** Where the stored document of a schema version lies, and what it must be read as. */
export const fixturePaths = (version: number) => ({
  bytes: projectPath(`tests/fixtures/document-v${version}.bin`),
  value: projectPath(`tests/fixtures/document-v${version}.json`),
});

/** A night with something of everything: calls that were set, withdrawn and replaced by a nudge, and what nobody knows. */
export function workedNight(): Y.Doc {
  const { doc, clock, lead, assistant } = demoDocument(4711);
  done(enterNight(doc, lead, { name: 'Robin', role: 'lead', stepM: 0.75 }));
  done(enterNight(doc, assistant, { name: 'Kim', role: 'assistant', stepM: 0.65 }));
  clock.pass(4000);
  const key = done(callCarry(doc, lead, { standId: 'key', mark: markAt(11.2, 7.9) }));
  done(stampDelivered(doc, assistant, key));
  clock.pass(900);
  done(stampSeen(doc, assistant, key, markAt(11.2, 7.9)));
  done(startCarrying(doc, assistant, key));
  clock.pass(12_000);
  done(markSet(doc, assistant, key, markAt(11.4, 8.1)));
  const nudge = { kind: 'move', way: 'camera-left', byM: 0.5 } as const;
  const nudged = done(nudgeCarry(doc, lead, { standId: 'key', nudge }));
  done(stampDelivered(doc, assistant, nudged));
  const back = done(callCarry(doc, lead, { standId: 'back', mark: markAt(6, 3) }));
  done(withdrawCarry(doc, lead, back.carryId));
  done(startMoment(doc, lead, 'toasts'));
  done(setAmbient(doc, lead, 3.5));
  done(setUnits(doc, assistant, 'imperial'));
  doc.transact(() => {
    rootOf(doc, 'features').set('blurred', { kind: 'fog' });
    rootOf(doc, 'room').set('from-later', { walls: 0.4 });
  });
  return doc;
}

/** Writes the fixture of the present schema version; a fixture that is there stays as it is. */
function makeFixture(): void {
  const paths = fixturePaths(SCHEMA_VERSION);
  if (existsSync(paths.bytes)) throw new Error(`version ${SCHEMA_VERSION} has its fixture already`);
  const doc = workedNight();
  mkdirSync(projectPath('tests/fixtures'), { recursive: true });
  writeFileSync(paths.bytes, Y.encodeStateAsUpdate(doc));
  writeFileSync(paths.value, `${JSON.stringify(nightAsJson(readNight(doc)), null, 2)}\n`);
}

export const readFixture = (version: number): { bytes: Uint8Array; value: unknown } => {
  const paths = fixturePaths(version);
  return {
    bytes: new Uint8Array(readFileSync(paths.bytes)),
    value: JSON.parse(readFileSync(paths.value, 'utf8')),
  };
};

if (process.argv[1] === fileURLToPath(import.meta.url)) makeFixture();
