import { join } from 'node:path';
import ts from 'typescript';
import { ROOT } from './rules-tree.ts';

/**
 * What TypeScript says of samples that lie in a folder of the project, under that folder's own settings. The samples
 * are never written to disk.
 *
 * @param folder `core`, `shared`, `server` or `client`
 * @param samples name of the sample → its text
 * @returns name of the sample → its errors, as TypeScript words them
 */
export function complaints(
  folder: string,
  samples: Readonly<Record<string, string>>,
): Record<string, string[]> {
  const home = join(ROOT, folder);
  const settings = ts.readConfigFile(join(home, 'tsconfig.json'), ts.sys.readFile);
  const parsed = ts.parseJsonConfigFileContent(settings.config, ts.sys, home);
  const options: ts.CompilerOptions = {
    ...parsed.options,
    noEmit: true,
    composite: false,
    incremental: false,
    emitDeclarationOnly: false,
  };
  const virtual = new Map(
    Object.entries(samples).map(
      ([name, text]) => [join(home, `${name}.rules-sample.ts`), { name, text }] as const,
    ),
  );
  const host = ts.createCompilerHost(options);
  const { readFile, fileExists, getSourceFile } = host;
  host.readFile = (path) => virtual.get(path)?.text ?? readFile(path);
  host.fileExists = (path) => virtual.has(path) || fileExists(path);
  host.getSourceFile = (path, ...rest) => {
    const sample = virtual.get(path);
    return sample
      ? ts.createSourceFile(path, sample.text, ts.ScriptTarget.Latest, true)
      : getSourceFile(path, ...rest);
  };
  const program = ts.createProgram([...virtual.keys()], options, host);
  return Object.fromEntries(
    [...virtual].map(([path, { name }]) => {
      const source = program.getSourceFile(path);
      const all = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
      return [name, all.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'))];
    }),
  );
}
