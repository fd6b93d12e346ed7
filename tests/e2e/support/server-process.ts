import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';

const ROOT = join(import.meta.dirname, '..', '..', '..');

/** The server as people run it: a process of its own with its nights in a folder, which can be killed and started again. */
export interface ServerProcess {
  /** Starts it, the first time on a free port, then always on that one; gives the lead's link for this machine. */
  start(): Promise<string>;
  /** Ends it as a power cut would. */
  kill(): Promise<void>;
}

const LINK = /http:\/\/localhost:(\d+)\/#pair=[0-9a-z]+/;

function linkFrom(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const listen = (chunk: Buffer) => {
      said += chunk.toString();
      const link = LINK.exec(said)?.[0];
      // The last line comes when it listens: the link alone might be printed by half.
      if (link && said.includes('Press Enter')) resolve(link);
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', listen);
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}:\n${said}`)));
  });
}

export const test = base.extend<{ serverProcess: ServerProcess }>({
  serverProcess: async ({ browserName: _ }, use) => {
    const folder = await mkdtemp(join(tmpdir(), 'hushmark-'));
    let child: ChildProcess | null = null;
    let port = '0';
    const kill = async () => {
      const running = child;
      child = null;
      if (!running || running.exitCode !== null) return;
      const ended = new Promise((resolve) => running.once('exit', resolve));
      running.kill('SIGKILL');
      await ended;
    };
    await use({
      start: async () => {
        child = spawn(
          process.execPath,
          ['--import', 'tsx', 'server/main.ts', '--port', port, '--data', folder],
          {
            cwd: ROOT,
            stdio: ['ignore', 'pipe', 'pipe'],
          },
        );
        const link = await linkFrom(child);
        port = new URL(link).port;
        return link;
      },
      kill,
    });
    await kill();
    await rm(folder, { recursive: true, force: true });
  },
});
