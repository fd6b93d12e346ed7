import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of the test's own, gone with the test. */
export function ownFolder(): string {
  const path = mkdtempSync(join(tmpdir(), 'hushmark-test-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}
