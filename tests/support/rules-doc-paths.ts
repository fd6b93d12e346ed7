import { posix } from 'node:path';
import { piecesOf } from './rules-markdown.ts';

/** Endings by which a name without a folder is known for a file. */
const ENDING = /\.(?:ts|tsx|mts|mjs|cjs|js|json|md|css|html|svg|bin)$/;
/** What may stand in a path or its pattern; a formula, a call or a sentence holds other signs. */
const PATH_SIGNS = /^[\w.@/*<>{},-]+$/;
/** What is made, not written, and so may be absent: see .gitignore. */
const MADE = /^(?:\.\/)?(?:node_modules|\.build|\.cache|\.hushmark)(?:\/|$)/;
/** A word in capitals that stands for a name of the reader's choice. */
const STAND_IN = /\b(?:NAME|TOPIC|ID)\b/g;

/**
 * Does a word look like a path of the tree? A scheme, a leading slash (a route), a leading `~` or `@` (a home, a
 * package), or a number on both sides of the slash (a fraction) say that it is something else.
 */
export function looksLikePath(word: string): boolean {
  if (!PATH_SIGNS.test(word) || /^[/~@<-]|:\/\/|^[\d./]+$|^<|\.\.\./.test(word)) return false;
  return ENDING.test(word) ? !/^\.\w+$/.test(word) && !/^\*\.\w+$/.test(word) : /[\w>*}]\/|^\.ci/.test(word);
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** The pattern of a path that may hold `*`, `**`, `<a placeholder>`, `{one,other}` and NAME. */
function patternOf(path: string): RegExp {
  const pattern = path
    .replace(STAND_IN, '<name>')
    .split(/(\*\*\/?|\*|<[^>]*>|\{[^}]*\})/)
    .map((part) => {
      if (part.startsWith('**')) return '.*';
      if (part === '*' || part.startsWith('<')) return '[^/]+';
      if (part.startsWith('{')) return `(?:${part.slice(1, -1).split(',').map(escaped).join('|')})`;
      return escaped(part);
    });
  return new RegExp(`^${pattern.join('')}$`);
}

function withFolders(files: readonly string[]): Set<string> {
  const all = new Set(files);
  for (const file of files) {
    for (let up = posix.dirname(file); up !== '.'; up = posix.dirname(up)) all.add(up);
  }
  return all;
}

/** Where a path may be meant to begin: the top, the folder of the document, or for a bare name of a file anywhere. */
function candidates(path: string, document: string): RegExp[] {
  const plain = path.replace(/^\.\//, '').replace(/\/$/, '');
  const here = posix.join(posix.dirname(document), plain);
  const bare = plain.includes('/') ? [] : [`**/${plain}`];
  return [plain, here, ...(ENDING.test(plain) ? bare : [])].map(patternOf);
}

/** A drawing of the tree in a block of a document: folders that are set in less hold what is set in more. */
class Drawing {
  #open: { readonly indent: number; readonly path: string }[] = [];

  /** Begins a line: folders that are not set in less are left. */
  line(text: string): void {
    const indent = text.search(/\S/);
    this.#open = this.#open.filter((folder) => folder.indent < indent);
  }

  /** Where a name of this line may lie, the innermost folder first, the top last. */
  places(name: string): string[] {
    return [...this.#open.map(({ path }) => `${path}${name}`), name].sort((a, b) => b.length - a.length);
  }

  /** What follows in this line, and below it set in more, may lie in this folder. */
  enter(text: string, path: string): void {
    this.#open.push({ indent: text.search(/\S/), path });
  }
}

/** In a picture there is room for the end of a path only. */
const BOXED = /[│┌└├]/;

function wordsOf(text: string): string[] {
  return text
    .split(/[\s();]+|,(?![^{}\s]*\})/)
    .map((word) => word.replace(/:$/, ''))
    .filter(looksLikePath);
}

/**
 * Paths that a document names and the tree does not have.
 *
 * @param document its own path, for paths that begin beside it
 * @param files every file of the tree
 * @returns one sentence for each
 */
export function lostPaths(document: string, markdown: string, files: readonly string[]): string[] {
  const tree = [...withFolders(files)];
  const exists = (path: string) =>
    MADE.test(path) ||
    candidates(path, document).some((pattern) => tree.some((known) => pattern.test(known)));
  const drawing = new Drawing();
  const lost: string[] = [];
  for (const { kind, text, line } of piecesOf(markdown)) {
    if (kind === 'block') drawing.line(text);
    for (const word of wordsOf(text)) {
      const places =
        kind !== 'block' ? [word] : BOXED.test(text) ? [`**/${word}`, word] : drawing.places(word);
      const place = places.find(exists);
      if (place === undefined) {
        lost.push(`${document}:${line} names ${word}, which is not in the tree (write a stand-in as <name>)`);
      } else if (kind === 'block' && word.endsWith('/')) drawing.enter(text, place);
    }
  }
  return lost;
}
