import type { NetworkInterfaceInfo } from 'node:os';
import { expect, test } from 'vitest';
import { likeliestFirst, machineAddresses } from '../../../server/network/addresses.ts';
import { hostsToOffer } from '../../../server/network/links.ts';
import { isLocalHost, isLoopback, isSameOrigin } from '../../../server/network/own-host.ts';

const entry = (address: string, family: 'IPv4' | 'IPv6' = 'IPv4', internal = false) =>
  ({ address, family, internal }) as NetworkInterfaceInfo;

test('the addresses of the machine: IPv4, not the loopback, one entry for each', () => {
  const found = machineAddresses({
    lo: [entry('127.0.0.1', 'IPv4', true), entry('::1', 'IPv6', true)],
    eth0: [entry('10.0.0.7'), entry('fe80::1', 'IPv6')],
    docker0: [entry('172.17.0.1')],
    wlan0: [entry('192.168.4.1'), entry('192.168.5.1')],
    gone: undefined,
  });
  expect(found).toEqual([
    { card: 'wlan0', ip: '192.168.4.1' },
    { card: 'wlan0', ip: '192.168.5.1' },
    { card: 'eth0', ip: '10.0.0.7' },
    { card: 'docker0', ip: '172.17.0.1' },
  ]);
});

test('a wireless card with an address that hotspots hand out comes first, virtual cards and unaddressed ones last', () => {
  const order = likeliestFirst([
    { card: 'tailscale0', ip: '100.101.1.1' },
    { card: 'eth1', ip: '169.254.3.3' },
    { card: 'veth12', ip: '192.168.9.9' },
    { card: 'eth0', ip: '192.168.1.5' },
    { card: 'en0', ip: '172.20.10.2' },
  ]);
  expect(order.map(({ card }) => card)).toEqual(['en0', 'eth0', 'eth1', 'veth12', 'tailscale0']);
});

test('another phone is offered the host that is known to work first, but never the loopback before another', () => {
  const addresses = [{ card: 'wlan0', ip: '192.168.4.1' }];
  expect(hostsToOffer('10.0.0.7:8080', addresses, 8080)).toEqual(['10.0.0.7:8080', '192.168.4.1:8080']);
  expect(hostsToOffer('192.168.4.1:8080', addresses, 8080)).toEqual(['192.168.4.1:8080']);
  expect(hostsToOffer('localhost:8080', addresses, 8080)).toEqual(['192.168.4.1:8080', 'localhost:8080']);
  expect(hostsToOffer('127.0.0.1:8080', [], 8080)).toEqual(['127.0.0.1:8080']);
});

test.each(['192.168.4.1:8080', '[fe80::1]:8080', 'localhost', 'pocket:8080', 'pocket.local', 'PC.lan:80'])(
  'a host that a local network may have: %s',
  (host) => expect(isLocalHost(host)).toBe(true),
);

test.each([
  'rebind.example.com:8080',
  'evil.com',
  '',
  undefined,
  'a b',
  'x.local;script-src *',
  '::1',
  'local.evil.com',
])('a host that no local network has: %s', (host) => expect(isLocalHost(host)).toBe(false));

test('loopback hosts', () => {
  for (const host of ['localhost:1', '127.0.0.1:8080', '[::1]:8080']) expect(isLoopback(host)).toBe(true);
  for (const host of ['192.168.4.1:8080', 'pocket.local', '128.0.0.1', undefined])
    expect(isLoopback(host)).toBe(false);
});

test('[AUT5] an origin has to be this very host and port; none at all comes from no browser', () => {
  const host = '192.168.4.1:8080';
  expect(isSameOrigin({ host, origin: `http://${host}` })).toBe(true);
  expect(isSameOrigin({ host, origin: `https://${host}` })).toBe(true);
  expect(isSameOrigin({ host: 'Pocket.local:8080', origin: 'http://pocket.local:8080' })).toBe(true);
  expect(isSameOrigin({ host })).toBe(true);
  for (const origin of [
    'http://192.168.4.1',
    'http://192.168.4.1:8081',
    'http://elsewhere.example',
    'null',
    'garbage',
    '',
  ])
    expect(isSameOrigin({ host, origin })).toBe(false);
  expect(isSameOrigin({ host: 'rebind.example.com', origin: 'http://rebind.example.com' })).toBe(false);
  expect(isSameOrigin({ origin: 'http://x' })).toBe(false);
});
