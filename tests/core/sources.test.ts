import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../core/sources.ts';

const CORE = new URL('../../core/', import.meta.url);
const FILES = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && name !== 'sources.ts')
  .map((name) => ({ name, text: readFileSync(new URL(name, CORE), 'utf8') }));

/** Folders whose public functions are laws or rules, each with a source. */
const SOURCED = /^(light|cautions|guidance)\//;
/** Plumbing inside those folders: no law, nothing to cite. */
const PLUMBING = new Set([
  'byWorstFirst',
  'notChecked',
  'metresInWords',
  'obstacleUnder',
  'middleOf',
  'spokenName',
  'angleBetweenDeg',
  'isClearOf',
  'unusableReason',
]);

function cited(text: string): string[] {
  return [...text.matchAll(/@source ([a-z0-9-]+)/g)].map((match) => match[1] ?? '');
}

/** Public functions with the docstring right above them, if there is one. */
function functionsIn(text: string): { name: string; docstring: string }[] {
  return [...text.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n)?export function (\w+)/g)].map((match) => ({
    name: match[2] ?? '',
    docstring: match[1] ?? '',
  }));
}

describe('sources of core', () => {
  it('every citation is in the list, and every entry of the list is cited', () => {
    const used = new Set(FILES.flatMap(({ text }) => cited(text)));
    expect([...used].filter((id) => !Object.hasOwn(SOURCES, id))).toEqual([]);
    expect(Object.keys(SOURCES).filter((id) => !used.has(id))).toEqual([]);
  });

  it('every public function of light, cautions and guidance names its source', () => {
    const functions = FILES.filter(({ name }) => SOURCED.test(name)).flatMap(({ text }) => functionsIn(text));
    expect(functions.length).toBeGreaterThan(40);
    const bare = functions.filter(
      ({ docstring, name }) => cited(docstring).length === 0 && !PLUMBING.has(name),
    );
    expect(bare.map(({ name }) => name)).toEqual([]);
  });

  it('every public function of core has a docstring', () => {
    const functions = FILES.flatMap(({ text }) => functionsIn(text));
    expect(functions.filter(({ docstring }) => docstring === '').map(({ name }) => name)).toEqual([]);
  });
});
