import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../core/sources.ts';
import { citedIn, exportedFunctions, numericNames } from '../support/rules-core.ts';
import { filesOf, textOf } from '../support/rules-tree.ts';

const DOCUMENTED = ['core/light', 'core/cautions', 'core/guidance', 'core/geometry'];
const SOURCED = ['core/light', 'core/cautions'];

/** Functions that compute nothing that a source could be asked about, each with what it does instead. */
const PLUMBING = new Map([
  ['byWorstFirst', 'orders a list'],
  ['notChecked', 'words what is missing'],
  ['metresInWords', 'words a number'],
  ['unusableReason', 'words why an input is refused'],
]);

/** A name that ends in its unit, or is one; the units are those of core/NOMENCLATURE.md and their usual multiples. */
const ENDS_IN_UNIT =
  /[a-z0-9](?:M|M2|Mm|Cm|Deg|Rad|S|Ms|Kg|N|Nm|Px|Lux|Stops|Fraction)$|^(?:metres|feet|degrees|seconds|stops)$/;

type Program = { readonly path: string; readonly text: string };

function undocumented({ path, text }: Program): string[] {
  return exportedFunctions(path, text)
    .filter(({ doc }) => doc.replace(/@\w+|[/*\s]/g, '').length < 10)
    .map(({ name, line }) => `${path}:${line} ${name} has no docstring`);
}

function unsourced({ path, text }: Program): string[] {
  return exportedFunctions(path, text)
    .filter(({ name, doc }) => citedIn(doc).length === 0 && !PLUMBING.has(name))
    .map(({ name, line }) => `${path}:${line} ${name} names no @source`);
}

function unknownSources({ path, text }: Program): string[] {
  return citedIn(text)
    .filter((id) => !(id in SOURCES))
    .map((id) => `${path} cites @source ${id}, which core/sources.ts does not have`);
}

/** Names that the page of symbols gives a meaning and a unit: what its tables hold between backticks, and its axes. */
function namesIn(nomenclature: string): Set<string> {
  const rows = nomenclature.split('\n').filter((line) => line.startsWith('|'));
  const inTables = rows.flatMap((row) => [...row.matchAll(/`(\w+)`/g)].map((match) => match[1] ?? ''));
  const axes = [...nomenclature.matchAll(/\b([xyz]) grows\b/g)].map((match) => match[1] ?? '');
  return new Set([...inTables, ...axes]);
}

function unitless({ path, text }: Program, known: ReadonlySet<string>): string[] {
  return numericNames(path, text)
    .filter(({ name }) => !ENDS_IN_UNIT.test(name) && !known.has(name))
    .map(({ name, line }) => `${path}:${line} ${name} ends in no unit and is not in core/NOMENCLATURE.md`);
}

function programsIn(folders: readonly string[]): Program[] {
  return filesOf(folders, ['.ts']).map((path) => ({ path, text: textOf(path) }));
}

describe('core says where its numbers come from and what they are measured in', () => {
  it('has a docstring on every exported function', () => {
    expect(programsIn(DOCUMENTED).flatMap(undocumented)).toEqual([]);
  });

  it('names a source on every exported function of light and cautions', () => {
    expect(programsIn(SOURCED).flatMap(unsourced)).toEqual([]);
  });

  it('excuses from a source only functions that are there', () => {
    const names = new Set(
      programsIn(SOURCED).flatMap(({ path, text }) => exportedFunctions(path, text).map(({ name }) => name)),
    );
    expect([...PLUMBING.keys()].filter((name) => !names.has(name))).toEqual([]);
  });

  it('cites only sources that it lists', () => {
    const programs = programsIn(['core']).filter(({ path }) => path !== 'core/sources.ts');
    expect(programs.flatMap(({ text }) => citedIn(text)).length).toBeGreaterThan(40);
    expect(programs.flatMap(unknownSources)).toEqual([]);
  });

  it('lists no source that nothing cites', () => {
    const cited = new Set(
      programsIn(['core', 'tests'])
        .filter(({ path }) => path !== 'core/sources.ts')
        .flatMap(({ text }) => citedIn(text)),
    );
    expect(Object.keys(SOURCES).filter((id) => !cited.has(id))).toEqual([]);
  });

  it('ends the name of every number in its unit, or explains the name on the page of symbols', () => {
    const known = namesIn(textOf('core/NOMENCLATURE.md'));
    expect(known.size).toBeGreaterThan(40);
    expect(programsIn(['core']).flatMap((program) => unitless(program, known))).toEqual([]);
  });
});

describe('the checks on core', () => {
  const text = [
    '/** Gives the height of a thing. @source iso2720 */',
    'export function good(heightM: number, iso: number): number { const inner = (a: number) => a; return inner(1); }',
    'export const bad = (height: number, parts: readonly number[], turn = 3) => height;',
    '/** @source no-such */',
    'export type Thing = { readonly wide: number | null; readonly deepM: number; readonly in: { readonly far: number } };',
    'type Hidden = { readonly high: number };',
  ].join('\n');
  const sample = { path: 'core/sample.ts', text };

  it('would notice a function without docstring or source, and a source that is not listed', () => {
    expect(undocumented(sample)).toEqual(['core/sample.ts:3 bad has no docstring']);
    expect(unsourced(sample)).toEqual(['core/sample.ts:3 bad names no @source']);
    expect(unknownSources(sample)).toHaveLength(1);
  });

  it('would notice a number without a unit, in parameters, fields and types inside types', () => {
    const known = namesIn('| S | `iso` | – |\n`notInTable`\n x grows to the right');
    expect([...known]).toEqual(['iso', 'x']);
    expect(unitless(sample, known).map((line) => line.split(' ')[1])).toEqual([
      'height',
      'parts',
      'turn',
      'wide',
      'far',
    ]);
  });
});
