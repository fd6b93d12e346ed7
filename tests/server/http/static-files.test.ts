import { mkdirSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { facePath } from '../../../shared/messages/http.ts';
import { ROLES } from '../../../shared/roles.ts';
import { ownFolder } from '../../support/server-folder.ts';
import { nightOf, startServer } from '../../support/server-scene.ts';

const PAGE = `<!doctype html><title>Hushmark</title>${'<p>night</p>'.repeat(50)}`;
const SCRIPT = `console.log(${JSON.stringify('x'.repeat(2000))})`;

function builtClient(): string {
  const folder = ownFolder();
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), PAGE);
  writeFileSync(join(folder, 'assets', 'main-abc123.js'), SCRIPT);
  writeFileSync(join(folder, 'icon.png'), Uint8Array.of(1, 2, 3));
  return folder;
}

/** fetch unpacks by itself; this shows what really travels. */
function raw(url: string, headers: Record<string, string> = {}) {
  return new Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; body: Buffer }>(
    (resolve, reject) => {
      get(url, { headers }, (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(parts),
          }),
        );
      }).on('error', reject);
    },
  );
}

test('every face gets the one page, fresh each time', async () => {
  const server = await startServer({ clientDirectory: builtClient() });
  for (const path of ['/', ...ROLES.map((role) => facePath(role, nightOf(server)))]) {
    const response = await fetch(`${server.url}${path}`);
    expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(response.headers.get('cache-control')).toBe('no-cache');
    expect(await response.text()).toBe(PAGE);
  }
  for (const path of ['/guest/x', '/lead', '/lead/x/y'])
    expect((await fetch(`${server.url}${path}`)).status).toBe(404);
});

test('a file named by its content is kept for ever and travels squeezed', async () => {
  const server = await startServer({ clientDirectory: builtClient() });
  const path = `${server.url}/assets/main-abc123.js`;
  const squeezed = await raw(path, { 'accept-encoding': 'gzip' });
  expect(squeezed.headers['content-encoding']).toBe('gzip');
  expect(squeezed.headers['cache-control']).toContain('immutable');
  expect(squeezed.headers['content-type']).toContain('javascript');
  expect(gunzipSync(squeezed.body).toString()).toBe(SCRIPT);
  expect(squeezed.body.length).toBeLessThan(SCRIPT.length / 2);
  const plain = await raw(path, { 'accept-encoding': 'identity' });
  expect(plain.headers['content-encoding']).toBeUndefined();
  expect(plain.body.toString()).toBe(SCRIPT);
});

test('a file that the phone has already is not sent again', async () => {
  const server = await startServer({ clientDirectory: builtClient() });
  const first = await raw(`${server.url}/icon.png`);
  expect([...first.body]).toEqual([1, 2, 3]);
  const again = await raw(`${server.url}/icon.png`, { 'if-none-match': String(first.headers.etag) });
  expect([again.status, again.body.length]).toEqual([304, 0]);
});

test('nothing outside the built client can be reached', async () => {
  const server = await startServer({ clientDirectory: builtClient() });
  for (const path of [
    '/../package.json',
    '/%2e%2e/package.json',
    '/assets/..%2f..%2fpackage.json',
    '/.git/config',
    '/assets/',
  ])
    expect((await raw(`${server.url}${path}`)).status, path).toBe(404);
});

test('without a built client the faces say so', async () => {
  const server = await startServer({ clientDirectory: join(ownFolder(), 'none') });
  const response = await fetch(server.url);
  expect(response.status).toBe(503);
  expect(await response.text()).toContain('npm run build');
});

test('a page may load from this server alone, and is led to no https that is not there', async () => {
  const server = await startServer({ clientDirectory: builtClient() });
  const response = await fetch(server.url);
  const policy = new Map(
    (response.headers.get('content-security-policy') ?? '').split(';').map((directive) => {
      const [name = '', ...sources] = directive.trim().split(' ');
      return [name, sources];
    }),
  );
  const host = new URL(server.url).host;
  expect(policy.get('default-src')).toEqual(["'self'"]);
  expect(policy.get('script-src')).toEqual(["'self'"]);
  expect(policy.get('style-src')).toEqual(["'self'"]);
  expect(policy.get('connect-src')).toEqual(["'self'", `ws://${host}`, `wss://${host}`]);
  expect(policy.has('upgrade-insecure-requests')).toBe(false);
  expect(response.headers.has('strict-transport-security')).toBe(false);
  expect(response.headers.has('x-powered-by')).toBe(false);
});

test('a host that is none of this machine gets no say in what a page may load', async () => {
  const server = await startServer({ clientDirectory: builtClient() });
  const { headers } = await raw(server.url, { host: 'evil.example.com' });
  expect(headers['content-security-policy']).not.toContain('evil');
});
