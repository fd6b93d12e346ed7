import ts from 'typescript';
import { treeOf } from './rules-code.ts';

/** What a call is a call of, at the very left: `it` of `it.each(list)(title, act)`. */
function rootOf(expression: ts.Expression): string {
  if (ts.isIdentifier(expression)) return expression.text;
  if (ts.isPropertyAccessExpression(expression) || ts.isCallExpression(expression))
    return rootOf(expression.expression);
  return ts.isTaggedTemplateExpression(expression) ? rootOf(expression.tag) : '';
}

function wordsOf(title: ts.Expression | undefined): string | null {
  if (!title) return null;
  if (ts.isStringLiteralLike(title)) return title.text;
  return ts.isTemplateExpression(title) ? title.head.text : null;
}

/** The titles of all tests, and of all groups of tests, in a test file; of a computed title its beginning. */
export function titlesIn(path: string, text: string): string[] {
  const titles: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isCallExpression(node) && /^(?:it|test|describe)$/.test(rootOf(node.expression))) {
      const title = wordsOf(node.arguments[0]);
      if (title !== null && node.arguments.length > 1) titles.push(title);
    }
    ts.forEachChild(node, visit);
  };
  visit(treeOf(path, text));
  return titles;
}
