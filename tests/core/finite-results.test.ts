import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CALLS } from './finite-calls.ts';
import { sheetInput } from './finite-inputs.ts';

/** stepNominal needs one of core's own lists, and createMemo keeps what it is given; they have tests of their own. */
const ELSEWHERE = ['stepNominal', 'createMemo'];

const CORE = new URL('../../core/', import.meta.url);
const MODULES = readdirSync(CORE, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);

async function functionsOfCore(): Promise<Map<string, (...given: unknown[]) => unknown>> {
  const found = new Map<string, (...given: unknown[]) => unknown>();
  for (const name of MODULES) {
    const module = (await import(new URL(name, CORE).href)) as Record<string, unknown>;
    for (const [key, value] of Object.entries(module)) {
      if (typeof value === 'function') found.set(key, value as (...given: unknown[]) => unknown);
    }
  }
  return found;
}

/** Paths at which a result holds NaN, ±∞ or the words for them. */
function unfinished(value: unknown, path = 'result'): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (typeof value === 'string') return /NaN|Infinity|undefined/.test(value) ? [`${path} = ${value}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => unfinished(inner, `${path}.${key}`));
}

const FUNCTIONS = await functionsOfCore();

describe('no NaN and no ±∞ leaves core for finite input', () => {
  it('every public function is called here', () => {
    const missing = [...FUNCTIONS.keys()].filter((name) => !(name in CALLS) && !ELSEWHERE.includes(name));
    expect(missing).toEqual([]);
    expect(Object.keys(CALLS).filter((name) => !FUNCTIONS.has(name))).toEqual([]);
  });

  it.each(Object.entries(CALLS))('%s', (name, given) => {
    fc.assert(
      fc.property(given, (values) => {
        const made = FUNCTIONS.get(name)?.(...values);
        // createView gives a function: what that gives counts too.
        const result = typeof made === 'function' ? made({ spot: { x: 1, y: 2 }, heightM: 3 }) : made;
        // A string argument may hold such words itself; only the code's own numbers matter.
        const words = values.filter((value) => typeof value === 'string').join(' ');
        if (!/NaN|Infinity|undefined/.test(words)) expect(unfinished(result)).toEqual([]);
      }),
      // What works on a whole room is called as often as fits; the rest two hundred times.
      { numRuns: 200, interruptAfterTimeLimit: 1200, markInterruptAsFailure: false },
    );
  });

  it('a sheet or a reason comes out of a light sheet even for NaN', () => {
    fc.assert(
      fc.property(sheetInput, fc.constantFrom('targetStops', 'ambientEv100'), (input, field) => {
        const result = FUNCTIONS.get('lightSheet')?.({ ...input, [field]: Number.NaN });
        expect(result).toMatchObject({ kind: 'cannot' });
      }),
    );
  });
});
