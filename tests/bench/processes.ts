import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..', '..');

export interface Running {
  readonly match: RegExpExecArray;
  stop(): Promise<void>;
}

/** Runs a script of the project as a process of its own and waits until it has said something that fits. */
export function runUntil(
  args: readonly string[],
  pattern: RegExp,
  ready: RegExp = pattern,
): Promise<Running> {
  const child: ChildProcess = spawn(process.execPath, ['--import', 'tsx', ...args], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return new Promise((resolve, reject) => {
    let said = '';
    child.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const match = pattern.exec(said);
      if (match && ready.test(said))
        resolve({
          match,
          stop: async () => {
            child.kill('SIGTERM');
            await ended;
          },
        });
    });
    void ended.then(() => reject(new Error(`${args[0]} ended:\n${said}`)));
  });
}
