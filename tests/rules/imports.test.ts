import { describe, expect, it } from 'vitest';
import { complaints } from '../support/rules-compile.ts';
import { cruise, ruleNames } from '../support/rules-cruise.ts';

const PACKAGES = ['yjs', 'zod', 'express', 'preact', 'vitest', 'not-listed'];

const CLEAN = {
  'core/a.ts': 'export const a = 1;\n',
  'core/b.ts': "import { a } from './a.ts';\nexport const b = a;\n",
  'shared/a.ts': "import * as Y from 'yjs';\nimport { b } from '../core/b.ts';\nexport const c = [Y, b];\n",
  'server/a.ts':
    "import { readFileSync } from 'node:fs';\nimport express from 'express';\nimport { c } from '../shared/a.ts';\nexport const d = [readFileSync, express, c];\n",
  'client/a.ts':
    "import { h } from 'preact';\nimport { c } from '../shared/a.ts';\nimport { a } from '../core/a.ts';\nexport const e = [h, c, a];\n",
  'tests/a.test.ts':
    "import { it } from 'vitest';\nimport { d } from '../server/a.ts';\nimport { e } from '../client/a.ts';\nit('a', () => [d, e]);\n",
};

/**
 * Wrong files: what each holds, and the rules that it must break. Of a cycle the tool names one file only, so the
 * other half of each pair has no rule.
 */
const WRONG: readonly (readonly [path: string, text: string, rules: readonly string[]])[] = [
  [
    'core/from-shared.ts',
    "import { c } from '../shared/a.ts';\nexport const x = c;\n",
    ['core-imports-nothing'],
  ],
  [
    'core/type-from-shared.ts',
    "import type { c } from '../shared/a.ts';\nexport type X = typeof c;\n",
    ['core-imports-nothing'],
  ],
  ['core/from-package.ts', "import * as Y from 'yjs';\nexport const x = Y;\n", ['core-imports-nothing']],
  [
    'core/from-node.ts',
    "import { readFileSync } from 'node:fs';\nexport const x = readFileSync;\n",
    ['core-imports-nothing'],
  ],
  [
    'shared/from-package.ts',
    "import express from 'express';\nexport const x = express;\n",
    ['shared-imports-core-at-most'],
  ],
  [
    'shared/from-client.ts',
    "import { e } from '../client/a.ts';\nexport const x = e;\n",
    ['shared-imports-core-at-most'],
  ],
  [
    'server/from-client.ts',
    "import { e } from '../client/a.ts';\nexport const x = e;\n",
    ['server-never-imports-client'],
  ],
  [
    'client/from-server.ts',
    "import { d } from '../server/a.ts';\nexport const x = d;\n",
    ['client-never-imports-server'],
  ],
  [
    'client/from-node.ts',
    "import { join } from 'node:path';\nexport const x = join;\n",
    ['client-has-no-node'],
  ],
  ['core/cycle-a.ts', "import { b } from './cycle-b.ts';\nexport const a = () => b;\n", ['no-cycles']],
  ['core/cycle-b.ts', "import { a } from './cycle-a.ts';\nexport const b = () => a;\n", []],
  [
    'core/type-cycle-a.ts',
    "import type { B } from './type-cycle-b.ts';\nexport type A = { b?: B };\n",
    ['no-cycles'],
  ],
  ['core/type-cycle-b.ts', "import type { A } from './type-cycle-a.ts';\nexport type B = { a?: A };\n", []],
  [
    'server/not-listed.ts',
    "import { it } from 'not-listed';\nexport const x = it;\n",
    ['only-what-package-json-lists'],
  ],
  [
    'client/for-tests.ts',
    "import { it } from 'vitest';\nexport const x = it;\n",
    ['only-what-package-json-lists'],
  ],
  [
    'server/nowhere.ts',
    "import { x } from './not-there.ts';\nexport const y = x;\n",
    ['everything-resolves'],
  ],
];

describe('imports run one way', () => {
  it('and each forbidden one is refused by the rule made for it', async () => {
    const tree = { ...CLEAN, ...Object.fromEntries(WRONG.map(([path, text]) => [path, text])) };
    const { broken } = cruise(tree, PACKAGES);
    const missed = WRONG.filter(([path, , rules]) => !rules.every((rule) => broken[path]?.includes(rule)));
    expect(
      missed.map(([path, , rules]) => `${path} should break ${rules}, broke ${broken[path] ?? 'none'}`),
    ).toEqual([]);
    expect(Object.keys(broken).filter((path) => path in CLEAN)).toEqual([]);
    const tried = new Set(WRONG.flatMap(([, , rules]) => rules));
    expect((await ruleNames()).filter((name) => !tried.has(name))).toEqual([]);
  });

  it('and allowed ones pass', () => {
    const { broken, modules } = cruise(CLEAN, PACKAGES);
    expect(modules).toBeGreaterThanOrEqual(Object.keys(CLEAN).length);
    expect(broken).toEqual({});
  });
});

/** Names that a folder does not have; each must be refused by its name. */
const REFUSED: readonly (readonly [folder: string, names: Readonly<Record<string, string>>])[] = [
  [
    'core',
    {
      window: 'export const x = window;',
      document: 'export const x = document;',
      process: 'export const x = process.argv;',
      setTimeout: 'setTimeout(() => undefined, 1);',
      console: "console.log('a');",
      'node:fs': "import { readFileSync } from 'node:fs';\nexport const x = readFileSync;",
    },
  ],
  [
    'shared',
    {
      document: 'export const x = document.body;',
      process: 'export const x = process.argv;',
      'node:fs': "import { readFileSync } from 'node:fs';\nexport const x = readFileSync;",
    },
  ],
  ['server', { document: 'export const x = document.body;', window: 'export const x = window;' }],
  [
    'client',
    {
      process: 'export const x = process.env;',
      Buffer: "export const x = Buffer.from('');",
      'node:fs': "import { readFileSync } from 'node:fs';\nexport const x = readFileSync;",
    },
  ],
];

const ALLOWED: Readonly<Record<string, string>> = {
  core: 'export const x: number = Math.hypot(3, 4);',
  shared: "import * as Y from 'yjs';\nexport const x = new Y.Doc();",
  server: "import { readFileSync } from 'node:fs';\nexport const x = [readFileSync, process.argv];",
  client: 'export const x = document.body;',
};

describe('the compiler knows what each folder may use', () => {
  it.each(REFUSED)('%s', (folder, names) => {
    const said = complaints(folder, { ...names, clean: ALLOWED[folder] ?? '' });
    const accepted = Object.keys(names).filter(
      (name) => !said[name]?.some((sentence) => sentence.includes(name)),
    );
    expect(accepted).toEqual([]);
    expect(said.clean).toEqual([]);
  });

  it('refuses numbers that may be missing, and fields that may be undefined, in every folder', () => {
    const said = complaints('core', {
      list: 'export const first = (all: readonly number[]): number => all[0];',
      field: 'export const x: { readonly a?: number } = { a: undefined };',
    });
    expect(said.list).toHaveLength(1);
    expect(said.field).toHaveLength(1);
  });
});
