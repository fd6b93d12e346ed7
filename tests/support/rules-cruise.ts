import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { ROOT } from './rules-tree.ts';

/** Files of a tree: path → text. */
export type Tree = Readonly<Record<string, string>>;

type Report = {
  readonly summary: {
    readonly totalCruised: number;
    readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[];
  };
};

function isReport(value: unknown): value is Report {
  return typeof value === 'object' && value !== null && 'summary' in value;
}

/** Packages of our own making, so that nothing depends on where the real ones are. */
function installPretend(folder: string, names: readonly string[]): void {
  for (const name of names) {
    const home = join(folder, 'node_modules', name);
    mkdirSync(home, { recursive: true });
    writeFileSync(join(home, 'package.json'), JSON.stringify({ name, version: '1.0.0', main: 'index.js' }));
    writeFileSync(join(home, 'index.js'), 'exports.it = 1;\n');
  }
}

/**
 * Runs dependency-cruiser with the project's own rules over a tree of samples.
 *
 * @param tree files below core, shared, server, client and tests
 * @param packages names that are installed there; only those in the project's package.json are listed
 * @returns for each file that breaks rules, the names of the rules, sorted; and how many modules were looked at
 * @throws with the tool's words when it does not give a report
 */
export function cruise(
  tree: Tree,
  packages: readonly string[],
): { readonly broken: Record<string, string[]>; readonly modules: number } {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'hushmark-imports-')));
  try {
    for (const [path, text] of Object.entries(tree)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    for (const name of ['package.json', '.dependency-cruiser.cjs'])
      cpSync(join(ROOT, name), join(folder, name));
    installPretend(folder, packages);
    const folders = [...new Set(Object.keys(tree).map((path) => path.split('/')[0] ?? ''))];
    const tool = join(ROOT, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
    const { stdout, stderr } = spawnSync(
      process.execPath,
      [tool, '--config', '.dependency-cruiser.cjs', '--output-type', 'json', ...folders],
      { cwd: folder, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 },
    );
    const report: unknown = stdout.startsWith('{') ? JSON.parse(stdout) : null;
    if (!isReport(report)) throw new Error(`dependency-cruiser gave no report: ${stderr || stdout}`);
    const broken: Record<string, string[]> = {};
    for (const { from, rule } of report.summary.violations) {
      broken[from] = [...new Set([...(broken[from] ?? []), rule.name])].sort();
    }
    return { broken, modules: report.summary.totalCruised };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The names of the rules that forbid something, from the project's own settings. */
export async function ruleNames(): Promise<string[]> {
  const settings: { default: { forbidden: { name: string }[] } } = await import(
    `${ROOT}/.dependency-cruiser.cjs`
  );
  return settings.default.forbidden.map(({ name }) => name);
}
