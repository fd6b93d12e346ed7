import { expect, test } from 'vitest';
import { Attempts } from '../../../server/access/attempts.ts';
import { cookieValue } from '../../../server/access/cookies.ts';
import { type Admission, Secrets } from '../../../server/access/secrets.ts';
import { TokenBucket } from '../../../server/access/token-bucket.ts';
import { asId, ID_PATTERN, type NightId } from '../../../shared/ids.ts';
import { heldTime } from '../../support/server-time.ts';

const admission: Admission = { night: asId<NightId>('n1'), role: 'lead', by: 'terminal' };

test('[AUT2] a secret works once', () => {
  const secrets = new Secrets(heldTime().now);
  const { secret } = secrets.mint(admission, 1000);
  expect(secrets.take(secret)).toEqual(admission);
  expect(secrets.take(secret)).toBeNull();
});

test('[AUT2] a secret works up to its end and not after it', () => {
  const time = heldTime();
  const secrets = new Secrets(time.now);
  const [first, second] = [secrets.mint(admission, 1000), secrets.mint(admission, 1000)];
  expect(first.expiresAt).toBe(time.now() + 1000);
  time.advance(999);
  expect(secrets.take(first.secret)).toEqual(admission);
  time.advance(1);
  expect(secrets.take(second.secret)).toBeNull();
});

test('[AUT2] a secret has 128 bits and more, and no two are alike', () => {
  const secrets = new Secrets(heldTime().now);
  const all = [...Array(500).keys()].map(() => secrets.mint(admission, 1000).secret);
  expect(new Set(all).size).toBe(500);
  const signs = new Set(all.join('')).size;
  for (const secret of all) {
    expect(secret).toMatch(ID_PATTERN);
    expect(secret.length * Math.log2(signs)).toBeGreaterThanOrEqual(128);
  }
});

test('of very many unused secrets the newest work', () => {
  const secrets = new Secrets(heldTime().now);
  const all = [...Array(1000).keys()].map(() => secrets.mint(admission, 1000).secret);
  expect(secrets.take(all[0] ?? '')).toBeNull();
  expect(secrets.take(all.at(-1) ?? '')).toEqual(admission);
  expect(secrets.take(all.at(-100) ?? '')).toEqual(admission);
});

test('a bucket gives its burst, then its rate, and a clock set back gives nothing', () => {
  const time = heldTime();
  let now = time.now();
  const bucket = new TokenBucket({ perSecond: 2, burst: 3 }, () => now);
  const takes = (count: number) => [...Array(count).keys()].filter(() => bucket.take()).length;
  expect(takes(10)).toBe(3);
  now += 1000;
  expect(takes(10)).toBe(2);
  now -= 60_000;
  expect(takes(10)).toBe(0);
  now += 60_000 * 10;
  expect(takes(10)).toBe(3);
});

test('[AUT7] each address has attempts of its own, and rested ones are forgotten without gaining any', () => {
  const time = heldTime();
  const attempts = new Attempts({ perSecond: 0.1, burst: 2 }, time.now);
  expect([attempts.allow('a'), attempts.allow('a'), attempts.allow('a'), attempts.allow('b')]).toEqual([
    true,
    true,
    false,
    true,
  ]);
  for (let count = 0; count < 1000; count += 1) attempts.allow(`other ${count}`);
  expect(attempts.allow('a')).toBe(false);
  time.advance(10_000);
  expect(attempts.allow('a')).toBe(true);
});

test('a cookie is found by its whole name', () => {
  const header = 'xhushmark-a=1; hushmark-a=two=2;hushmark-ab=3; bare';
  expect(cookieValue(header, 'hushmark-a')).toBe('two=2');
  expect(cookieValue(header, 'hushmark-ab')).toBe('3');
  expect(cookieValue(header, 'bare')).toBeNull();
  expect(cookieValue(undefined, 'hushmark-a')).toBeNull();
});
