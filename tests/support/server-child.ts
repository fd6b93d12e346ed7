import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const ROOT = join(import.meta.dirname, '..', '..');

/** The server as a process of its own, as a person runs it. */
export interface ChildServer {
  readonly process: ChildProcess;
  /** All that it has said so far. */
  readonly output: () => string;
  /** Resolves with the first match, past or coming; rejects when the process ends without one. */
  says(pattern: RegExp): Promise<RegExpExecArray>;
  type(text: string): void;
  /** Sends a signal and resolves with exit code and signal. */
  kill(signal: NodeJS.Signals): Promise<{ code: number | null; signal: NodeJS.Signals | null }>;
  /** Resolves when it has ended. */
  readonly ended: Promise<{ code: number | null; signal: NodeJS.Signals | null }>;
}

/** Runs `server/main.ts`; ended with the test. */
export function runServer(args: readonly string[], environment: NodeJS.ProcessEnv = {}): ChildServer {
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts', ...args], {
    cwd: ROOT,
    env: { ...process.env, ...environment },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let output = '';
  const looks = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      for (const look of [...looks]) look();
    });
  const ended = new Promise<{ code: number | null; signal: NodeJS.Signals | null }>((resolve) =>
    // "close", not "exit": then all that it said has been read too.
    child.once('close', (code, signal) => resolve({ code, signal })),
  );
  onTestFinished(async () => {
    child.kill('SIGKILL');
    await ended;
  });
  return {
    process: child,
    output: () => output,
    ended,
    says: (pattern) =>
      new Promise((resolve, reject) => {
        const look = () => {
          const match = pattern.exec(output);
          if (!match) return;
          looks.delete(look);
          resolve(match);
        };
        looks.add(look);
        look();
        void ended.then(() => reject(new Error(`it ended without saying ${pattern}:\n${output}`)));
      }),
    type: (text) => void child.stdin.write(text),
    kill: (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}

const LINK = /(http:\/\/localhost:\d+)\/#pair=([0-9a-z]+)/;

/** Waits until it runs, and takes the lead's link for this machine from what it says. */
export async function leadLink(server: ChildServer): Promise<{ url: string; secret: string }> {
  await server.says(/Press Enter/);
  const [, url = '', secret = ''] = LINK.exec(server.output()) ?? [];
  return { url, secret };
}
