import ts from 'typescript';
import { lineAt, treeOf } from './rules-code.ts';

/** A function that a file of core gives to others. */
type Exported = { readonly name: string; readonly line: number; readonly doc: string };
/** A name that holds a number, somewhere that others see it. */
type Numeric = { readonly name: string; readonly line: number };

function isExported(node: ts.Node): boolean {
  return (
    ts.canHaveModifiers(node) &&
    (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
  );
}

function docOf(node: ts.Node): string {
  return ts
    .getJSDocCommentsAndTags(node)
    .filter(ts.isJSDoc)
    .map((doc) => doc.getText())
    .join('\n');
}

function functionOf(node: ts.Expression | undefined): node is ts.ArrowFunction | ts.FunctionExpression {
  return node !== undefined && (ts.isArrowFunction(node) || ts.isFunctionExpression(node));
}

/** The exported functions of a file with what is written above them. */
export function exportedFunctions(path: string, text: string): Exported[] {
  const source = treeOf(path, text);
  return source.statements.filter(isExported).flatMap((statement): Exported[] => {
    const line = lineAt(text, statement.getStart());
    if (ts.isFunctionDeclaration(statement))
      return [{ name: statement.name?.text ?? 'default', line, doc: docOf(statement) }];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations
      .filter(({ initializer }) => functionOf(initializer))
      .map(({ name }) => ({ name: name.getText(), line, doc: docOf(statement) }));
  });
}

/** Every source id that a text cites. */
export function citedIn(text: string): string[] {
  return [...text.matchAll(/@source\s+([\w-]+)/g)].map((match) => match[1] ?? '');
}

/** Is a type a number, a list of numbers, or one of these or nothing? */
function holdsNumber(type: ts.TypeNode | undefined): boolean {
  if (!type) return false;
  if (type.kind === ts.SyntaxKind.NumberKeyword) return true;
  if (ts.isUnionTypeNode(type)) return type.types.some(holdsNumber);
  if (ts.isParenthesizedTypeNode(type) || ts.isTypeOperatorNode(type)) return holdsNumber(type.type);
  return ts.isArrayTypeNode(type) && holdsNumber(type.elementType);
}

function isNumeric(node: ts.ParameterDeclaration | ts.PropertySignature): boolean {
  if (holdsNumber(node.type)) return true;
  const initial = ts.isParameter(node) ? node.initializer : undefined;
  return node.type === undefined && initial !== undefined && /^-?[\d.]/.test(initial.getText());
}

/**
 * The names of all numeric parameters of exported functions and all numeric fields of exported types of a file,
 * those of types written out inside them too.
 */
export function numericNames(path: string, text: string): Numeric[] {
  const names: Numeric[] = [];
  const visit = (node: ts.Node) => {
    // What happens inside a function is its own business.
    if (ts.isBlock(node)) return;
    if (
      (ts.isParameter(node) || ts.isPropertySignature(node)) &&
      isNumeric(node) &&
      !ts.isObjectBindingPattern(node.name)
    ) {
      names.push({ name: node.name.getText(), line: lineAt(text, node.getStart()) });
    }
    ts.forEachChild(node, visit);
  };
  for (const statement of treeOf(path, text).statements.filter(isExported)) {
    if (ts.isVariableStatement(statement)) {
      for (const { initializer } of statement.declarationList.declarations) {
        if (functionOf(initializer)) initializer.parameters.forEach(visit);
      }
    } else if (
      ts.isFunctionDeclaration(statement) ||
      ts.isTypeAliasDeclaration(statement) ||
      ts.isInterfaceDeclaration(statement)
    ) {
      ts.forEachChild(statement, visit);
    }
  }
  return names;
}
