import { piecesOf } from './rules-markdown.ts';

/** What npm does by itself, without a script. */
const NPM_OWN = new Set(['ci', 'install', 'run', 'exec', 'ls', 'outdated', 'update']);

/** What a document may call: the scripts of package.json, the settings of the server, variables that code reads. */
export type Known = {
  readonly scripts: ReadonlySet<string>;
  readonly options: ReadonlySet<string>;
  readonly variables: ReadonlySet<string>;
};

function npmNames(text: string): string[] {
  return [...text.matchAll(/\bnpm (?:run ([\w:-]+)|([a-z][\w:-]*))/g)]
    .map((match) => match[1] ?? match[2] ?? '')
    .filter((name) => !NPM_OWN.has(name));
}

/** Settings in a piece that is `npm start …`, the server itself, or a setting alone; other tools have their own. */
function optionsIn(text: string): string[] {
  if (
    !/^(?:\$ )?(?:HUSHMARK_\w+=\S+ )?(?:npm (?:start|run (?:start|dev))|node \S*server\/|--)/.test(
      text.trim(),
    )
  )
    return [];
  return text.match(/(?<=^|\s|\[)--[a-z][\w-]*/g) ?? [];
}

/**
 * Commands, settings and variables that a document names and the project does not have.
 *
 * @returns one sentence for each
 */
export function lostCommands(document: string, markdown: string, known: Known): string[] {
  return piecesOf(markdown).flatMap(({ text, line }) => {
    const at = `${document}:${line}`;
    const variables = text.match(/\bHUSHMARK_[A-Z_]+/g) ?? [];
    return [
      ...npmNames(text)
        .filter((name) => !known.scripts.has(name))
        .map((name) => `${at} says npm ${name}, which is no script of package.json`),
      ...optionsIn(text)
        .filter((option) => !known.options.has(option))
        .map((option) => `${at} names ${option}, which server/config.ts does not have`),
      ...variables
        .filter((name) => !known.variables.has(name))
        .map((name) => `${at} names ${name}, which no program reads`),
    ];
  });
}
