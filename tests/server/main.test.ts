import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import jsQr from 'jsqr';
import { expect, onTestFinished, test } from 'vitest';
import { machineAddresses } from '../../server/network/addresses.ts';
import { leadLink, runServer } from '../support/server-child.ts';
import { ownFolder } from '../support/server-folder.ts';
import { healthOf } from '../support/server-health.ts';
import { terminalPixels } from '../support/server-qr.ts';
import { callApi, pairWith } from '../support/server-scene.ts';

test('it prints its addresses, the nights, where they are stored, and a code that scans to a link that works', async () => {
  const folder = join(ownFolder(), 'data');
  const server = runServer(['--port', '0', '--data', folder]);
  const { url, secret } = await leadLink(server);
  const output = server.output();
  expect(output).not.toContain('already imported'); // one copy of Yjs: of two, each would not know the other's types
  const { port } = new URL(url);
  for (const { ip, card } of machineAddresses(networkInterfaces()))
    expect(output).toContain(`http://${ip}:${port}  (${card})`);
  const [, where = ''] = /stored in (.*)/.exec(output) ?? [];
  expect(where.startsWith(folder)).toBe(true);
  expect(existsSync(where)).toBe(true);
  const { data, width, height } = terminalPixels(output);
  const scanned = jsQr(data, width, height)?.data ?? '';
  expect(scanned).toMatch(new RegExp(`^http://[^/]+:${port}/#pair=${secret}$`));
  const lead = await pairWith(url, scanned.split('#pair=')[1] ?? '', 'Noor');
  expect(lead.role).toBe('lead');
  await server.says(/lead joined: Noor/);
  expect(output).toContain(`(${lead.night})`);
}, 20_000);

test('Enter gives a fresh lead code, and the one before works still', async () => {
  const server = runServer(['--port', '0', '--data', ownFolder()]);
  const first = await leadLink(server);
  const seen = server.output().length;
  server.type('\n');
  await server.says(/Press Enter[\s\S]*Press Enter/);
  const [, second = ''] = /localhost:\d+\/#pair=([0-9a-z]+)/.exec(server.output().slice(seen)) ?? [];
  expect(second).not.toBe(first.secret);
  expect((await pairWith(first.url, second, 'Noor')).role).toBe('lead');
  expect((await pairWith(first.url, first.secret, 'Kim')).role).toBe('lead');
}, 20_000);

test('another night is made by its title and stays; the lead code is for the night that is named', async () => {
  const folder = ownFolder();
  const first = runServer(['--port', '0', '--data', folder]);
  await leadLink(first);
  const [, oldest = ''] = /\(([0-9a-z]{26})\)/.exec(first.output()) ?? [];
  await first.kill('SIGTERM');
  const second = runServer(['--port', '0', '--data', folder, '--new', 'Boat house']);
  const link = await leadLink(second);
  expect(second.output()).toContain('Lead of "Boat house"');
  expect((await healthOf(link)).health.nights).toBe(2);
  await second.kill('SIGTERM');
  const third = runServer(['--port', '0', '--data', folder, '--night', oldest]);
  const { url, secret } = await leadLink(third);
  expect(third.output()).toContain('Boat house');
  expect((await pairWith(url, secret, 'Noor')).night).toBe(oldest);
}, 30_000);

test('a port that is taken, a folder that is in use, an unknown setting: plain words and exit code 1', async () => {
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(0, resolve));
  onTestFinished(() => void other.close());
  const address = other.address();
  const port = typeof address === 'object' && address ? String(address.port) : '';
  const folder = ownFolder();
  const running = runServer(['--port', '0', '--data', folder]);
  await leadLink(running);
  const failures: [string[], RegExp][] = [
    [['--port', port, '--data', ownFolder()], new RegExp(`^Port ${port} is taken .* --port 8081\n$`)],
    [['--port', '0', '--data', folder], /^Another Hushmark server is using .* --data FOLDER\n$/],
    [['--prot', '1'], /^Unknown option '--prot'/],
    [['--port', '0', '--data', ownFolder(), '--night', 'nowhere'], /^There is no night nowhere in .*\n$/],
  ];
  for (const [args, words] of failures) {
    const failing = runServer(args);
    expect(await failing.ended).toEqual({ code: 1, signal: null });
    expect(failing.output()).toMatch(words);
    expect(failing.output()).not.toContain('    at '); // no stack
  }
}, 30_000);

test('--help says what there is and starts nothing', async () => {
  const folder = join(ownFolder(), 'never');
  const server = runServer(['--help', '--data', folder]);
  expect(await server.ended).toEqual({ code: 0, signal: null });
  expect(server.output()).toContain('--data FOLDER');
  expect(existsSync(folder)).toBe(false);
}, 20_000);

test('without a terminal, its input at an end, it runs on', async () => {
  const server = runServer(['--port', '0', '--data', ownFolder()]);
  server.process.stdin?.end();
  const { url } = await leadLink(server);
  expect(await healthOf(url ? { url } : { url: '' })).toMatchObject({ status: 200 });
  expect(await server.kill('SIGTERM')).toEqual({ code: 0, signal: null });
}, 20_000);

test('[AUT8] the log has a line for each event, and neither secret nor token nor link', async () => {
  const folder = ownFolder();
  const server = runServer(['--port', '0', '--data', folder, '--log']);
  const { url, secret } = await leadLink(server);
  const lead = await pairWith(url, secret, 'Noor');
  await callApi({ url }, 'pair', { secret, name: 'Kim' });
  await callApi(
    { url },
    'invite',
    { night: lead.night, as: 'lead', role: 'assistant' },
    { cookie: lead.cookie },
  );
  await server.kill('SIGTERM');
  const log = readFileSync(join(folder, 'hushmark.log'), 'utf8');
  const events = log
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { msg: string; reason?: string });
  expect(events.map(({ msg }) => msg)).toEqual([
    'night made',
    'night loaded',
    'started',
    'paired',
    'refused',
    'invited',
    'stopped',
  ]);
  expect(events.find(({ msg }) => msg === 'refused')?.reason).toBe('bad-secret');
  for (const hidden of [secret, lead.cookie.split('=')[1] ?? '?', 'pair=', 'cookie', 'http:'])
    expect(log).not.toContain(hidden);
  expect(server.output()).toContain('"msg":"paired"');
}, 20_000);
