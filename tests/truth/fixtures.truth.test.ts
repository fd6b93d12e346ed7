import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isToleranceName, TOLERANCES } from './tolerances.ts';

const FOLDER = new URL('./fixtures/', import.meta.url);
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));

function read(file: string): Record<string, unknown> {
  return JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Record<string, unknown>;
}

/** Every tolerance that a fixture names, at any depth. */
function tolerancesIn(value: unknown, key = ''): string[] {
  if (typeof value === 'string') return /tolerance$/i.test(key) ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => tolerancesIn(inner, name));
}

describe('fixtures say where they come from', () => {
  it('there are fixtures', () => {
    expect(FILES.length).toBeGreaterThan(10);
  });

  it.each(FILES)('%s has source, note and the reason for its tolerance', (file) => {
    const fixture = read(file);
    for (const field of ['source', 'note', 'toleranceWhy']) {
      expect(typeof fixture[field], field).toBe('string');
      expect(String(fixture[field]).length, field).toBeGreaterThan(10);
    }
  });

  it.each(FILES)('%s names tolerances of the table only', (file) => {
    expect(tolerancesIn(read(file)).filter((name) => !isToleranceName(name))).toEqual([]);
  });

  it('every tolerance is above zero and says why', () => {
    for (const { within, why } of Object.values(TOLERANCES)) {
      expect(within).toBeGreaterThan(0);
      expect(why.length).toBeGreaterThan(20);
    }
  });
});
