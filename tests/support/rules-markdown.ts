/** A piece of a document that means something to the machine: code between backticks, a line of a block, a link. */
export type Piece = {
  readonly kind: 'code' | 'block' | 'link';
  readonly text: string;
  readonly line: number;
};

const FENCE = /^\s*(```|~~~)/;

/** A document with its blocks of code blanked, and the lines of those blocks with their numbers. */
function withoutBlocks(markdown: string): { readonly prose: string; readonly blocks: Piece[] } {
  const blocks: Piece[] = [];
  let inside = false;
  const prose = markdown.split('\n').map((text, at) => {
    const fence = FENCE.test(text);
    if (inside && !fence) blocks.push({ kind: 'block', text, line: at + 1 });
    const hidden = inside || fence;
    if (fence) inside = !inside;
    return hidden ? '' : text;
  });
  return { prose: prose.join('\n'), blocks };
}

/** Every piece of a Markdown document that may name a file, a command or a setting, with the line it stands in. */
export function piecesOf(markdown: string): Piece[] {
  const { prose, blocks } = withoutBlocks(markdown);
  const lineOf = (offset: number) => prose.slice(0, offset).split('\n').length;
  const code = [...prose.matchAll(/(`+)([^`]+)\1/g)].map((match): Piece => {
    return { kind: 'code', text: (match[2] ?? '').trim().replace(/\s+/g, ' '), line: lineOf(match.index) };
  });
  const links = [...prose.matchAll(/\]\(([^)\s]+)[^)]*\)/g)].map((match): Piece => {
    return { kind: 'link', text: (match[1] ?? '').replace(/#.*$/, ''), line: lineOf(match.index) };
  });
  return [...code, ...links, ...blocks].filter(({ text }) => text !== '').sort((a, b) => a.line - b.line);
}
