import * as fc from 'fast-check';
import jsQr from 'jsqr';
import { expect, test } from 'vitest';
import { joinedText, leadCodeText, startText } from '../../../server/terminal/banner.ts';
import { terminalQr } from '../../../server/terminal/qr.ts';
import { asId, type NightId } from '../../../shared/ids.ts';
import { terminalPixels } from '../../support/server-qr.ts';

const read = (text: string): string | undefined => {
  const { data, width, height } = terminalPixels(text);
  return jsQr(data, width, height)?.data;
};

const night = { id: asId<NightId>('n1'), title: 'Barn dance', madeAt: 1 };
const addresses = [
  { card: 'wlan0', ip: '192.168.4.1' },
  { card: 'eth0', ip: '10.0.0.7' },
];

test('a QR code in the terminal reads back as its text', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[0-9a-z]{26}$/), fc.ipV4(), (secret, ip) => {
      const link = `http://${ip}:8080/#pair=${secret}`;
      expect(read(terminalQr(link))).toBe(link);
    }),
    { numRuns: 20 },
  );
});

test('every line of the code sets both colours from the fixed table and takes them back, with four light modules around', () => {
  const lines = terminalQr('http://192.168.4.1:8080/').split('\n');
  for (const line of lines) {
    expect(line.startsWith('\u001b[38;5;16;48;5;231m    ')).toBe(true);
    expect(line.endsWith('    \u001b[0m')).toBe(true);
  }
  for (const line of [...lines.slice(0, 2), ...lines.slice(-2)]) expect(line).not.toMatch(/[█▀▄]/);
});

test('the lead code is for the likeliest address, with links for all and for this machine', () => {
  const text = leadCodeText({ night, secret: 'thesecret', addresses, port: 8080 });
  expect(read(text)).toBe('http://192.168.4.1:8080/#pair=thesecret');
  for (const host of ['192.168.4.1', '10.0.0.7', 'localhost'])
    expect(text).toContain(`http://${host}:8080/#pair=thesecret`);
  expect(text).toContain('Barn dance');
});

test('without a network the code is for this machine, and the start says that there is none', () => {
  expect(read(leadCodeText({ night, secret: 's', addresses: [], port: 8081 }))).toBe(
    'http://localhost:8081/#pair=s',
  );
  const facts = { addresses: [], port: 8081, nights: [night], where: '/data/nights', logFile: '/data/log' };
  expect(startText(facts)).toContain('on no network');
  expect(startText({ ...facts, addresses })).not.toContain('on no network');
});

test('the start names addresses, nights, where they are stored, and the log', () => {
  const text = startText({
    addresses,
    port: 8080,
    nights: [night, { ...night, id: asId<NightId>('n2'), title: 'Boat house' }],
    where: '/data/nights',
    logFile: '/data/hushmark.log',
  });
  for (const part of [
    'http://192.168.4.1:8080  (wlan0)',
    'Barn dance  (n1)',
    'Boat house  (n2)',
    '/data/nights',
    '/data/hushmark.log',
  ])
    expect(text).toContain(part);
});

test('a name cannot steer the terminal', () => {
  expect(joinedText('lead', 'No\u001b[2Jor\u0007\u202e')).toBe('lead joined: No[2Jor');
  expect(joinedText('assistant', 'Émile 花')).toBe('assistant joined: Émile 花');
});
