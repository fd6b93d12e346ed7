import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { helpText } from '../../server/config.ts';
import { lostCommands } from '../support/rules-doc-commands.ts';
import { looseFigures } from '../support/rules-doc-figures.ts';
import { looksLikePath, lostPaths } from '../support/rules-doc-paths.ts';
import { wrongVersions } from '../support/rules-doc-versions.ts';
import { TIES } from '../support/rules-figure-table.ts';
import { figuresIn } from '../support/rules-figures.ts';
import { filesOf, projectFiles, ROOT, SOURCE_FOLDERS, textOf } from '../support/rules-tree.ts';

const DOCUMENTS = ['README.md', 'DEVELOPERS.md', 'shared/SPEC.md', 'core/NOMENCLATURE.md'];
/** Commands that people and CI type. */
const WANTED_SCRIPTS = ['start', 'test', 'check', 'build', 'bench', 'format'];

function scripts(): Set<string> {
  const { scripts: named }: { scripts: Record<string, string> } = JSON.parse(textOf('package.json'));
  return new Set(Object.keys(named));
}

/** Package → pinned version, and Node → the oldest that the engines allow. */
function pinned(): Map<string, string> {
  const read: {
    dependencies: Record<string, string>;
    devDependencies: Record<string, string>;
    engines: { node: string };
  } = JSON.parse(textOf('package.json'));
  const node = /\d+(?:\.\d+)*/.exec(read.engines.node)?.[0] ?? '';
  return new Map([...Object.entries({ ...read.dependencies, ...read.devDependencies }), ['Node', node]]);
}

/** Every variable of ours that a program reads or sets. */
function variables(): Set<string> {
  const programs = filesOf([...SOURCE_FOLDERS, 'tests'], ['.ts', '.mjs']).filter(
    (path) => !/\/rules/.test(path),
  );
  return new Set(programs.flatMap((path) => textOf(path).match(/\bHUSHMARK_[A-Z_]+/g) ?? []));
}

function documentText(document: string): string {
  if (!existsSync(join(ROOT, document))) throw new Error(`${document} is not written yet.`);
  return textOf(document);
}

describe.each(DOCUMENTS)('%s', (document) => {
  it('names only paths that exist', () => {
    expect(lostPaths(document, documentText(document), projectFiles())).toEqual([]);
  });

  it('names only commands, settings and variables that exist', () => {
    const options = new Set(helpText().match(/--[a-z-]+/g) ?? []);
    const known = { scripts: scripts(), options, variables: variables() };
    expect(lostCommands(document, documentText(document), known)).toEqual([]);
  });

  it('gives the versions that are installed', () => {
    expect(wrongVersions(document, documentText(document), pinned())).toEqual([]);
  });

  it('states only figures that the code has', () => {
    expect(looseFigures(document, documentText(document))).toEqual([]);
  });
});

describe('package.json', () => {
  it('has the commands that people and CI type', () => {
    expect(WANTED_SCRIPTS.filter((name) => !scripts().has(name))).toEqual([]);
  });
});

describe('the table of figures', () => {
  it('finds every number that it points at', () => {
    expect(TIES.filter((tie) => !Number.isFinite(tie.is().value)).map(({ from }) => from)).toEqual([]);
  });
});

describe('the check on paths', () => {
  const files = [
    'README.md',
    'core/light/power.ts',
    'core/NOMENCLATURE.md',
    'shared/document/commands/mark-set.ts',
    '.ci/run',
  ];
  const lost = (markdown: string, document = 'DEVELOPERS.md') =>
    lostPaths(document, markdown, files).map((line) => line.split(' ')[2]?.replace(',', ''));

  it('would notice what is not there', () => {
    const text =
      'See `core/light/gone.ts`, [this](shared/gone.md#part), `gone/`, `gone.ts` and `npx tool core/gone`.';
    expect(lost(text)).toEqual(['core/light/gone.ts', 'gone/', 'gone.ts', 'core/gone', 'shared/gone.md']);
    expect(lost('`core/{light,dark}/*.css`, `shared/<part>/none-<x>.ts`, `core/**/*.css`')).toHaveLength(3);
    expect(lost('```\ncore/\n  light/  laws\n    power.ts  one\n    gone.ts  two\n  dark/\n```\n')).toEqual([
      'gone.ts',
      'dark/',
    ]);
  });

  it('takes folders, globs, stand-ins, neighbours and what is built', () => {
    const text =
      '`core/`, `core/light`, `power.ts`, `core/*/power.ts`, `core/**`, `shared/document/commands/<verb-noun>.ts`, `core/light/NAME.ts`, `{core,shared}/`, `.build/client`, `.ci/run`, [a](README.md#x)';
    expect(lost(text)).toEqual([]);
    expect(lost('`light/power.ts`', 'core/NOMENCLATURE.md')).toEqual([]);
  });

  it('leaves alone what is no path', () => {
    const words = [
      '1/64',
      '/y/<night>',
      'https://host/a.md',
      '~/.local/share',
      '@scope/name',
      'call(a/b)',
      '.ts',
      'markSet',
      'N²/S',
    ];
    expect(words.filter(looksLikePath)).toEqual([]);
  });
});

describe('the check on commands', () => {
  it('would notice a script, a setting and a variable that is not there, and takes those that are', () => {
    const known = {
      scripts: new Set(['start', 'check']),
      options: new Set(['--port']),
      variables: new Set(['HUSHMARK_A']),
    };
    const wrong =
      '`npm run gone`, `npm gone`, `npm start -- --gone 1`, `--lost`, `HUSHMARK_B`\n\n```\nnpm run lost\n```\n';
    expect(lostCommands('a.md', wrong, known)).toHaveLength(6);
    const right =
      '`npm ci`, `npm start`, `npm run check`, `npm start -- --port 1`, `npx tool --other`, `HUSHMARK_A=1 npm start`';
    expect(lostCommands('a.md', right, known)).toEqual([]);
  });
});

describe('the check on versions', () => {
  it('would notice one that is not installed', () => {
    const versions = new Map([
      ['vitest', '4.1.12'],
      ['ws', '8.23.0'],
      ['Node', '20.19'],
    ]);
    expect(
      wrongVersions(
        'a.md',
        'Node 20 and Node 20.19 run vitest 4, vitest 4.1.12, ws 8; socket-ws 3.',
        versions,
      ),
    ).toEqual([]);
    expect(wrongVersions('a.md', 'Node 2 runs vitest 3,\nws 8.2 and `ws` 9.', versions)).toHaveLength(4);
  });
});

describe('the check on figures', () => {
  it('finds figures however they are written', () => {
    const text =
      'Every 2.5 s, ten minutes, 60-second, over a minute, port 8080, 12.5, 390 × 844, at 90 kB, 7 °, 128 bits.';
    expect(figuresIn(text).map(({ value, unit }) => `${value} ${unit}`)).toEqual([
      '2.5 s',
      '600 s',
      '60 s',
      '60 s',
      '8080 ',
      '12.5 ',
      '390 × 844',
      '90000 bytes',
      '7 °',
      '128 bits',
    ]);
    expect(
      figuresIn(
        'twice a minute, ISO 12232, 1/8000, v1.2.3, 127.0.0.1, 2026-01-02, f/2.8, DOC12, one phone, `a/2048`',
      ),
    ).toEqual([]);
  });

  it('would notice a wrong one, one that nothing ties, and two that changed places', () => {
    const ties = [
      { near: /\blive\b/, from: 'LIVE', is: () => ({ value: 6, unit: 's' }) },
      { near: /\bweak\b/, from: 'WEAK', is: () => ({ value: 15, unit: 's' }) },
    ];
    const loose = (text: string) => looseFigures('a.md', text, ties, []);
    expect(loose('It is live up to 6 s after the beat, weak up to 15 s, then lost.')).toEqual([]);
    expect(loose('It is live up to 15 s after the beat, weak up to 6 s, then lost.')).toHaveLength(1);
    expect(loose('It is live\nup to 7 s.')).toEqual([
      'a.md:2 "7 s" is not tied to the code. Beside these words the code has 6 s (LIVE). If it is another fact, tie it to its constant in tests/support/rules-figure-table.ts; if it is none of ours, say why in tests/support/rules-figures-outside.ts.',
    ]);
    expect(loose('A new fact of 6 s.')).toHaveLength(1);
    expect(loose('- live\n- for 6 s')).toHaveLength(1);
  });
});
