import { describe, expect, it } from 'vitest';
import { lineAt } from '../support/rules-code.ts';
import { quietSwitches } from '../support/rules-quiet-switches.ts';
import { projectFiles, textOf } from '../support/rules-tree.ts';

const CODE = /\.(?:ts|tsx|mts|mjs|cjs|js)$/;
/** What is read as text; drawings and stored documents are not. */
const TEXT = /\.(?:ts|tsx|mts|mjs|cjs|js|json|md|css|html|svg)$|^\.[a-z]+$|^\.ci\//;

/** Words and places that belong to a maker's machine, not to the project. */
const FOREIGN: readonly (readonly [RegExp, string])[] = [
  [
    /(?<![\w.~>)}\]-])\/(?:work|tmp|root)\//g,
    "a path of one machine: use a path in the project, or the system's folder for such files",
  ],
  [/transcrip[t]/gi, 'a word of a source that is not cited'],
];
const UNDONE: readonly (readonly [RegExp, string])[] = [
  [/\b(?:TODO|FIXME|XXX|HACK)\b/g, 'do it, or write an issue'],
];

function foreignIn(path: string, text: string): string[] {
  const rules = CODE.test(path) ? FOREIGN : [...FOREIGN, ...UNDONE];
  return rules.flatMap(([pattern, why]) =>
    [...text.matchAll(pattern)].map((match) => `${path}:${lineAt(text, match.index)} ${match[0]}: ${why}`),
  );
}

/** Lines of a lock file or of npm's settings that tie the project to one registry. */
function registryLines(text: string): string[] {
  return text.split('\n').filter((line) => /"resolved":\s*"\w+:|^\s*(?:@\w+:)?registry\s*=|_auth/.test(line));
}

const files = projectFiles().filter((path) => TEXT.test(path) && path !== 'package-lock.json');

describe('nothing is switched off on the quiet', () => {
  it('in any program of the tree', () => {
    const programs = files.filter((path) => CODE.test(path));
    expect(programs.length).toBeGreaterThan(100);
    expect(programs.flatMap((path) => quietSwitches(path, textOf(path)))).toEqual([]);
  });

  it('would notice each way of doing it', () => {
    const wrong = [
      `it.${'skip'}('a', f);`,
      `describe.${'only'}('a', f);`,
      `it.${'todo'}('a');`,
      `${'xit'}('a', f);`,
      `test('a', { ${'skip'}: true }, f);`,
      `test.${'fixme'}('a', f);`,
      `const maybe = there ? it : it.${'skip'};`,
      `// @ts-${'ignore'}`,
      `// @ts-${'expect-error'}`,
      `// @ts-${'expect-error'} wrong`,
      `// ${'biome'}-ignore lint: no`,
      `/* ${'eslint'}-disable */`,
      `const a = b as ${'any'};`,
      `function f(a: ${'any'}[]) {}`,
      `// ${'TO'}${'DO'}: later`,
      `await new Promise((go) => setTimeout(go, 50));`,
      `await new Promise<void>((go) => { setTimeout(() => go(), 50); });`,
      `await page.${'waitForTimeout'}(50);`,
      `await ${'sleep'}(ms);`,
      `import { setTimeout } from 'node:timers/${'promises'}';`,
    ];
    expect(wrong.filter((line) => quietSwitches('tests/sample.test.ts', line).length === 0)).toEqual([]);
  });

  it('would not mistake talk for a switch', () => {
    const right = [
      `const title = 'it.${'skip'}( is forbidden, as ${'any'} ${'TO'}${'DO'} is';`,
      '// as any phone would: any number of them, skipped ones too',
      'const { skipped } = snapshot; snapshot.skipped.length;',
      `// @ts-${'expect-error'} a bare number is no length here`,
      'const timer = setTimeout(() => reject(new Error("late")), 1000);',
      'await new Promise((go, fail) => { socket.once("open", go); setTimeout(() => fail(new Error("late")), 1000); });',
    ];
    expect(right.flatMap((line) => quietSwitches('tests/sample.test.ts', line))).toEqual([]);
  });
});

describe("nothing of a maker's machine is in the project", () => {
  it('in any text of the tree', () => {
    expect(files.flatMap((path) => foreignIn(path, textOf(path)))).toEqual([]);
    expect([...registryLines(textOf('package-lock.json')), ...registryLines(textOf('.npmrc'))]).toEqual([]);
  });

  it('would notice it', () => {
    const wrong = [
      `see /${'work'}/a`,
      `'/${'tmp'}/a'`,
      `cd /${'root'}/a`,
      `a ${'Trans'}${'cript'} of it`,
      `${'FIX'}${'ME'} soon`,
    ];
    expect(wrong.filter((text) => foreignIn('a.md', text).length === 0)).toEqual([]);
    expect(foreignIn('a.md', `docs/${'work'}/a and https://host/${'tmp'}/a and <root>/${'root'}/x`)).toEqual(
      [],
    );
    expect(registryLines('  "resolved": "https://host/a.tgz",')).toHaveLength(1);
    expect(registryLines('registry=https://host/')).toHaveLength(1);
    expect(registryLines('"version": "1.0.0"\nsave-exact=true')).toEqual([]);
  });
});
