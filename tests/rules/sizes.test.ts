import { describe, expect, it } from 'vitest';
import { codeLines } from '../support/rules-code.ts';
import { filesOf, SOURCE_FOLDERS, textOf } from '../support/rules-tree.ts';

const MOST_LINES = 300;
const MOST_COMPONENT_LINES = 200;
const MEDIAN_UNDER = 80;

type Sized = { readonly path: string; readonly lines: number };

function tooLong(files: readonly Sized[]): string[] {
  return files.flatMap(({ path, lines }) => {
    const most = path.endsWith('.tsx') ? MOST_COMPONENT_LINES : MOST_LINES;
    return lines > most
      ? [`${path} has ${lines} lines of code; at most ${most}: take an idea out of it`]
      : [];
  });
}

function medianOf(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

const tree = filesOf(SOURCE_FOLDERS, ['.ts', '.tsx', '.mjs', '.mts', '.css']).map((path) => ({
  path,
  lines: codeLines(path, textOf(path)),
}));

describe('sizes of source files, blank and comment lines not counted', () => {
  it('keeps every file under its limit', () => {
    expect(tree.length).toBeGreaterThan(50);
    expect(tooLong(tree)).toEqual([]);
  });

  it('keeps the median small', () => {
    expect(medianOf(tree.map(({ lines }) => lines))).toBeLessThan(MEDIAN_UNDER);
  });

  it('would notice: counts code only, and names what is too long', () => {
    const sample =
      '/** Why.\n\n * More. */\nconst a = 1; // one\n\n  // two\nconst b = `x\n\n  // text`;\n/* c */ a + b;\n';
    expect(codeLines('sample.ts', sample)).toBe(4);
    expect(codeLines('sample.css', '/* a\n b */\n.c {\n\n}\n')).toBe(2);
    expect(tooLong([{ path: 'core/a.ts', lines: 301 }])).toHaveLength(1);
    expect(tooLong([{ path: 'client/a.tsx', lines: 201 }])).toHaveLength(1);
    expect(
      tooLong([
        { path: 'core/a.ts', lines: 300 },
        { path: 'client/a.tsx', lines: 200 },
      ]),
    ).toEqual([]);
    expect(medianOf([500, 1, 90, 2, 100])).toBe(90);
  });
});
