import { lineAt } from './rules-code.ts';

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/**
 * Versions that a document gives behind a package's name and that are not the pinned ones; "4" stands for any 4.x.
 *
 * @param pinned name → version
 * @returns one sentence for each
 */
export function wrongVersions(
  document: string,
  markdown: string,
  pinned: ReadonlyMap<string, string>,
): string[] {
  return [...pinned].flatMap(([name, version]) => {
    const given = new RegExp(`(?<![\\w@/.-])${escaped(name)}[\`*_]* (\\d+(?:\\.\\d+)*)(?![\\w%])`, 'g');
    return [...markdown.matchAll(given)]
      .filter((match) => !`${version}.`.startsWith(`${match[1]}.`))
      .map(
        (match) =>
          `${document}:${lineAt(markdown, match.index)} says ${match[0]}; package.json has ${version}`,
      );
  });
}
