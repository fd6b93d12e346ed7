import { describe, expect, it } from 'vitest';
import { titlesIn } from '../support/rules-titles.ts';
import { projectFiles, textOf } from '../support/rules-tree.ts';

type TestFile = { readonly path: string; readonly text: string };

/** Where a number is defined: in bold at the head of a list item. */
const DEFINED = /^\s*- \*\*([A-Z]+\d+)\*\*/gm;
/** How a title begins: [DOC4], [DOC4 DOC7] or [DOC4][DOC7]. */
const NUMBERED = /^(?:\[[A-Z]+\d+(?:[ ,]+[A-Z]+\d+)*\] ?)+/;

function numbersIn(spec: string): string[] {
  return [...spec.matchAll(DEFINED)].map((match) => match[1] ?? '');
}

function titledIn({ path, text }: TestFile): string[] {
  return titlesIn(path, text).flatMap((title) => NUMBERED.exec(title)?.[0].match(/[A-Z]+\d+/g) ?? []);
}

/** Everything that is wrong between a specification and its tests, one sentence each. */
function quarrels(spec: string, tests: readonly TestFile[]): string[] {
  const numbers = numbersIn(spec);
  const known = new Set(numbers);
  const tested = new Set(tests.flatMap(titledIn));
  return [
    ...numbers
      .filter((number, at) => numbers.indexOf(number) !== at)
      .map((number) => `${number} stands twice in shared/SPEC.md`),
    ...[...known]
      .filter((number) => !tested.has(number))
      .map((number) => `${number} has no test with [${number}] in its title`),
    ...tests.flatMap((test) =>
      [...new Set(titledIn(test))]
        .filter((number) => !known.has(number))
        .map((number) => `${test.path} tests [${number}], which shared/SPEC.md does not have`),
    ),
  ];
}

const tests = projectFiles()
  .filter((path) => /^tests\/(?!rules\/).*\.test\.ts$|^tests\/e2e\/.*\.spec\.ts$/.test(path))
  .map((path) => ({ path, text: textOf(path) }));

describe('shared/SPEC.md and the tests', () => {
  it('name the same numbers', () => {
    expect(numbersIn(textOf('shared/SPEC.md')).length).toBeGreaterThan(40);
    expect(quarrels(textOf('shared/SPEC.md'), tests)).toEqual([]);
  });

  it('would notice: a number twice, without a test, and without a rule', () => {
    const spec = '- **DOC1** One.\n- **DOC2** Two.\n- **DOC2** Again.\n- **SYN1** Three, see **DOC9**.\n';
    const text = [
      "it('[DOC1 DOC2] a', f);",
      'test.each(list)(`[MSG9][MSG8] b`, f);',
      "// it('[SYN1] in a comment', f);",
      "const talk = '[SYN1] in a string'; it('[SYN1] without an act');",
    ].join('\n');
    expect(quarrels(spec, [{ path: 'a.test.ts', text }])).toEqual([
      'DOC2 stands twice in shared/SPEC.md',
      'SYN1 has no test with [SYN1] in its title',
      'a.test.ts tests [MSG9], which shared/SPEC.md does not have',
      'a.test.ts tests [MSG8], which shared/SPEC.md does not have',
    ]);
  });
});
