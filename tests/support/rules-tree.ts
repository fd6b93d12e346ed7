import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Top of the project. */
export const ROOT = join(import.meta.dirname, '..', '..');

/** The folders whose code runs on the night; tests are code about that code. */
export const SOURCE_FOLDERS = ['core', 'shared', 'server', 'client'] as const;

/** What is made, not written: the same as in .gitignore, and what git itself keeps. */
const MADE = new Set(['node_modules', '.build', '.cache', '.hushmark', '.git']);

function walk(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    if (MADE.has(entry.name) || entry.name.endsWith('.log')) return [];
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    return entry.isDirectory() ? walk(path) : [path];
  });
}

/** Every written file of the project, as paths from its top with forward slashes, sorted. */
export function projectFiles(): string[] {
  return walk('').sort();
}

/** The files of some folders with some endings (`.ts`), as paths from the top. */
export function filesOf(folders: readonly string[], endings: readonly string[]): string[] {
  return projectFiles().filter(
    (path) =>
      folders.some((folder) => path.startsWith(`${folder}/`)) && endings.some((end) => path.endsWith(end)),
  );
}

/** The text of a project file. */
export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}
