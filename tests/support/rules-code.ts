import ts from 'typescript';

/** One token of a program: where it stands, and whether it is quoted text (string, template, JSX text, pattern). */
type Token = { readonly start: number; readonly end: number; readonly quoted: boolean };

const QUOTED = new Set([
  ts.SyntaxKind.StringLiteral,
  ts.SyntaxKind.NoSubstitutionTemplateLiteral,
  ts.SyntaxKind.TemplateHead,
  ts.SyntaxKind.TemplateMiddle,
  ts.SyntaxKind.TemplateTail,
  ts.SyntaxKind.RegularExpressionLiteral,
  ts.SyntaxKind.JsxText,
]);

function parse(path: string, text: string): ts.SourceFile {
  return ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
}

function tokensOf(source: ts.SourceFile): Token[] {
  const tokens: Token[] = [];
  const visit = (node: ts.Node) => {
    if (node.kind >= ts.SyntaxKind.FirstJSDocNode && node.kind <= ts.SyntaxKind.LastJSDocNode) return;
    const children = node.getChildren(source);
    if (children.length > 0) return children.forEach(visit);
    const start = node.kind === ts.SyntaxKind.JsxText ? node.pos : node.getStart(source);
    if (node.end > start) tokens.push({ start, end: node.end, quoted: QUOTED.has(node.kind) });
  };
  visit(source);
  return tokens;
}

function blank(text: string): string {
  return text.replace(/[^\n]/g, ' ');
}

/** Three readings of one program, each with every line at its own number. */
type Reading = {
  readonly source: ts.SourceFile;
  /** Without comments */
  readonly code: string;
  /** Without comments and without what stands in quotes */
  readonly bare: string;
};

/** Programs that were read already: several rules look at the same file, and reading is what costs. */
const readings = new Map<string, Reading>();

function read(path: string, text: string): Reading {
  const key = `${path}\n${text}`;
  const known = readings.get(key);
  if (known) return known;
  const source = parse(path, text);
  const code: string[] = [];
  const bare: string[] = [];
  let at = 0;
  for (const token of tokensOf(source)) {
    const between = blank(text.slice(at, token.start));
    const piece = text.slice(token.start, token.end);
    code.push(between, piece);
    bare.push(between, token.quoted ? blank(piece) : piece);
    at = token.end;
  }
  const rest = blank(text.slice(at));
  const reading = { source, code: code.join('') + rest, bare: bare.join('') + rest };
  readings.set(key, reading);
  return reading;
}

/** A program as a tree; the ending of the path says which language it is in. */
export function treeOf(path: string, text: string): ts.SourceFile {
  return read(path, text).source;
}

/** A program without its comments; every line keeps its number. */
export function withoutComments(path: string, text: string): string {
  return read(path, text).code;
}

/** A program without comments and without what stands in quotes; every line keeps its number. */
export function bareCode(path: string, text: string): string {
  return read(path, text).bare;
}

/** The comments alone; every line keeps its number. */
export function commentsOf(path: string, text: string): string {
  const code = withoutComments(path, text);
  return text.replace(/[^\n]/g, (sign, at: number) => (code[at] === ' ' ? sign : ' '));
}

/** Lines that hold code: neither blank nor comment alone. */
export function codeLines(path: string, text: string): number {
  const code = path.endsWith('.css') ? text.replace(/\/\*[\s\S]*?\*\//g, blank) : withoutComments(path, text);
  return code.split('\n').filter((line) => line.trim() !== '').length;
}

/** The number of the line, from 1, in which a place of a text lies. */
export function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}
