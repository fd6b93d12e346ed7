import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { projectPath } from './document-night.ts';

/** A value written out in the source: text of a string or of a piece of a template, or a number. */
export interface Literal {
  readonly file: string;
  readonly line: number;
  readonly value: string | number;
  /** The name of the function or method it is the first argument of, if it is one. */
  readonly firstOf: string | null;
}

const calledName = (call: ts.CallExpression): string | null => {
  if (ts.isPropertyAccessExpression(call.expression)) return call.expression.name.text;
  return ts.isIdentifier(call.expression) ? call.expression.text : null;
};

function spelledBy(node: ts.Node): string | number | null {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node)) return node.text;
  if (ts.isJsxText(node)) return node.text;
  return ts.isNumericLiteral(node) ? Number(node.text) : null;
}

/** Every literal of a source text, import paths and types left out. */
export function literalsOf(file: string, text: string): Literal[] {
  const kind = file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, kind);
  const found: Literal[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    const value = spelledBy(node);
    if (value !== null) {
      const { parent } = node;
      const firstOf = ts.isCallExpression(parent) && parent.arguments[0] === node ? calledName(parent) : null;
      const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      found.push({ file, line, value, firstOf });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The names of what an exported interface of a file declares. */
export function membersOf(path: string, name: string): string[] {
  const source = ts.createSourceFile(
    path,
    readFileSync(projectPath(path), 'utf8'),
    ts.ScriptTarget.Latest,
    true,
  );
  const found = source.statements.find(
    (statement): statement is ts.InterfaceDeclaration =>
      ts.isInterfaceDeclaration(statement) && statement.name.text === name,
  );
  if (!found) throw new Error(`no interface ${name} in ${path}`);
  return found.members.flatMap(({ name: member }) =>
    member && (ts.isIdentifier(member) || ts.isStringLiteral(member)) ? [member.text] : [],
  );
}

/** The TypeScript files under a folder of the project, as paths from its root. */
export const sourcesUnder = (folder: string): string[] =>
  readdirSync(projectPath(folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
    .map((file) => `${folder}/${file}`);

export const readSource = (path: string): string => readFileSync(projectPath(path), 'utf8');
