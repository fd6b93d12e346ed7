import ts from 'typescript';
import { bareCode, commentsOf, lineAt, treeOf } from './rules-code.ts';

/** A bench is no test: it sends at a pace of its own. */
const BENCH = 'tests/bench/';

/** Something that switches a check off, or waits instead of looking: where, and what. */
type Find = { readonly offset: number; readonly what: string };

function matches(text: string, pattern: RegExp, what: string): Find[] {
  return [...text.matchAll(pattern)].map((match) => ({
    offset: match.index,
    what: `${match[0].trim()}: ${what}`,
  }));
}

function inCode(path: string, text: string): Find[] {
  const code = bareCode(path, text);
  return [
    ...matches(code, /\.(?:skip|only|todo|skipIf|runIf|fixme|fails)\b(?=\s*[(.`])/g, 'every test runs'),
    ...matches(
      code,
      /\b(?:it|test|describe|suite|bench)(?:\.\w+)*\.(?:skip|only|todo|skipIf|runIf|fixme|fails)\b/g,
      'every test runs',
    ),
    ...matches(code, /\b(?:xit|xtest|xdescribe|fit|fdescribe)\s*\(/g, 'every test runs'),
    ...matches(code, /\b(?:skip|only|todo|fails):\s*true\b/g, 'every test runs'),
  ];
}

function inComments(path: string, text: string): Find[] {
  const comments = commentsOf(path, text);
  return [
    ...matches(comments, /@ts-(?:ignore|nocheck)\b/g, 'mend the type'),
    // A reason is at least three words on the same line.
    ...matches(comments, /@ts-expect-error(?!\W+\w[^\n]*\s\S+\s+\S+)/g, 'say why, in three words or more'),
    ...matches(
      comments,
      /biome-ignore|eslint-disable|prettier-ignore|c8 ignore|v8 ignore/g,
      'mend what lint says',
    ),
    ...matches(comments, /\b(?:TODO|FIXME|XXX|HACK)\b/g, 'do it, or write an issue'),
  ];
}

function anyTypes(source: ts.SourceFile): Find[] {
  const finds: Find[] = [];
  const visit = (node: ts.Node) => {
    if (node.kind === ts.SyntaxKind.AnyKeyword)
      finds.push({ offset: node.getStart(source), what: 'any: name the type, or unknown' });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return finds;
}

/** Does this call of setTimeout do nothing but let its promise go on? Then the promise is a sleep. */
function onlyResolves(call: ts.CallExpression, resolve: string): boolean {
  const [act] = call.arguments;
  if (!act) return false;
  if (ts.isIdentifier(act)) return act.text === resolve;
  if (!ts.isArrowFunction(act) && !ts.isFunctionExpression(act)) return false;
  const only = ts.isBlock(act.body) ? act.body.statements[0] : act.body;
  const made = only && ts.isExpressionStatement(only) ? only.expression : only;
  return made !== undefined && ts.isCallExpression(made) && made.expression.getText() === resolve;
}

function sleepingPromises(source: ts.SourceFile): Find[] {
  const finds: Find[] = [];
  const visit = (node: ts.Node, resolve: string | null) => {
    let inner = resolve;
    const act =
      ts.isNewExpression(node) && node.expression.getText() === 'Promise' ? node.arguments?.[0] : undefined;
    if (act && (ts.isArrowFunction(act) || ts.isFunctionExpression(act)))
      inner = act.parameters[0]?.name.getText() ?? null;
    if (
      ts.isCallExpression(node) &&
      resolve !== null &&
      /^(?:globalThis\.)?set(?:Timeout|Immediate)$/.test(node.expression.getText())
    ) {
      if (onlyResolves(node, resolve))
        finds.push({
          offset: node.getStart(source),
          what: 'a promise that only waits: wait for a condition',
        });
    }
    ts.forEachChild(node, (child) => visit(child, inner));
  };
  visit(source, null);
  return finds;
}

function sleeps(path: string, text: string): Find[] {
  const code = bareCode(path, text);
  const wait = 'wait for a condition';
  return [
    ...sleepingPromises(treeOf(path, text)),
    ...matches(code, /\bwaitForTimeout\b/g, wait),
    ...matches(code, /\b(?:sleep|pause|delay|wait)\s*\(\s*\d/g, wait),
    ...matches(code, /\bsleep\s*\(/g, wait),
    ...matches(text, /from ['"](?:node:)?timers\/promises['"]/g, wait),
  ];
}

/**
 * Everything in a program that switches a check off without being seen, or that in a test sleeps.
 *
 * @param path its ending gives the language; below `tests/` sleeps are looked for too
 * @returns one line per find, with its place
 */
export function quietSwitches(path: string, text: string): string[] {
  const finds = [
    ...inCode(path, text),
    ...inComments(path, text),
    ...anyTypes(treeOf(path, text)),
    ...(path.startsWith('tests/') && !path.startsWith(BENCH) ? sleeps(path, text) : []),
  ];
  return finds.map(({ offset, what }) => `${path}:${lineAt(text, offset)} ${what}`);
}
