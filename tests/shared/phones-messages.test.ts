import { describe, expect, it } from 'vitest';
import { CLOSE_REASONS, closeReason } from '../../shared/messages/close-reasons.ts';
import { API, facePath, pairFragment, tokenCookie } from '../../shared/messages/http.ts';
import { SIGNALS_PATH, SYNC_MESSAGE, SYNC_PATH } from '../../shared/messages/sync-codes.ts';
import {
  type Literal,
  literalsOf,
  membersOf,
  readSource,
  sourcesUnder,
} from '../support/document-literals.ts';

const SIGNALS = 'shared/messages/signals.ts';
const TO_SERVER = membersOf(SIGNALS, 'ToServer');
const TO_PHONE = membersOf(SIGNALS, 'ToPhone');
/** What socket.io and Node's HTTP server themselves emit; not ours to name. */
const BUILT_IN = [
  'connect',
  'connection',
  'connect_error',
  'disconnect',
  'disconnecting',
  'error',
  'upgrade',
];

/** Codes of our own: those of the y-websocket protocol (0, 1, 3) are numbers like any other. */
const OWN_CODES: readonly number[] = [
  ...Object.values(CLOSE_REASONS),
  SYNC_MESSAGE.durable,
  SYNC_MESSAGE.heartbeat,
];
/** Beginnings of the texts that both ends must spell alike, taken from the definitions themselves. */
const cookieStart = tokenCookie('', 'lead').slice(0, tokenCookie('', 'lead').indexOf('lead'));
const TEXTS: readonly string[] = [
  ...Object.values(API),
  SYNC_PATH,
  SIGNALS_PATH,
  SYNC_PATH.slice(0, -1),
  SIGNALS_PATH.slice(0, -1),
  cookieStart,
  pairFragment('').slice(0, -1),
];

/** Begins like a cookie and is none: the format that a venue's file says it has, and the ending of its name. */
const NO_COOKIE = 'hushmark-venue';

/** Whether a text spells one of these: alone, as the beginning of a path, or after the name of a host. */
function copies(text: string): boolean {
  const spelled = text.replaceAll(NO_COOKIE, '');
  return TEXTS.some((known) => {
    const from = spelled.indexOf(known);
    if (from < 0) return false;
    const after = spelled.charAt(from + known.length);
    return known === cookieStart || !/[\w-]/.test(after) || known.endsWith('/');
  });
}

/** The literals that repeat what shared/messages defines. */
const copiesAmong = (literals: readonly Literal[]): string[] =>
  literals
    .filter(({ value }) => (typeof value === 'number' ? OWN_CODES.includes(value) : copies(value)))
    .map(({ file, line, value }) => `${file}:${line} ${value}`);

const literalsIn = (folders: readonly string[]): Literal[] =>
  folders.flatMap(sourcesUnder).flatMap((file) => literalsOf(file, readSource(file)));

/** Files that hold a socket of the signals channel. */
const signalFiles = ['client', 'server']
  .flatMap(sourcesUnder)
  .filter((file) => /from 'socket\.io(-client)?'/.test(readSource(file)));

describe('names, shapes and paths of messages', () => {
  it('[MSG2] no path, cookie name or code of shared/messages is written out again in server or client', () => {
    const literals = literalsIn(['server', 'client']);
    expect(literals.length).toBeGreaterThan(500);
    expect(copiesAmong(literals)).toEqual([]);
  });

  it('[MSG2] nor elsewhere in shared, and in shared/messages each is written once', () => {
    const elsewhere = literalsIn(['shared']).filter(({ file }) => !file.startsWith('shared/messages/'));
    expect(copiesAmong(elsewhere)).toEqual([]);
    const written = literalsIn(['shared/messages']).map(({ value }) => value);
    for (const value of [
      ...OWN_CODES,
      ...Object.values(API),
      SYNC_PATH,
      SIGNALS_PATH,
      cookieStart,
      pairFragment(''),
    ])
      expect(
        written.filter((known) => known === value),
        `${value}`,
      ).toHaveLength(1);
  });

  it('[MSG2] the search finds a copy when there is one', () => {
    const source = `
      import { x } from '/api/pair';
      fetch('/api/pair'); fetch(\`\${host}/api/invite?as=lead\`); const url = 'ws://host/y/demo';
      io({ path: '/sio' }); jar[\`hushmark-\${role}-\${night}\`]; socket.close(4401);
      encoding.writeVarUint(encoder, 101); location.hash.startsWith('#pair=');
      const fine = ['/apiary', '/yes', 'hushmark', 4400.5, 1, 'say /years'];`;
    expect(copiesAmong(literalsOf('made-up.ts', source)).map((found) => found.split(' ')[1])).toEqual([
      '/api/pair',
      '/api/invite?as=lead',
      'ws://host/y/demo',
      '/sio',
      'hushmark-',
      '4401',
      '101',
      '#pair=',
    ]);
  });

  it('[MSG2] codes, paths and cookie names are told apart from each other', () => {
    const codes = [...Object.values(CLOSE_REASONS), ...Object.values(SYNC_MESSAGE)];
    expect(new Set(codes).size).toBe(codes.length);
    const paths = [
      ...Object.values(API),
      SYNC_PATH,
      SIGNALS_PATH,
      facePath('lead', 'n'),
      facePath('assistant', 'n'),
    ];
    for (const path of paths)
      expect(
        paths.filter((other) => other.startsWith(path)),
        path,
      ).toEqual([path]);
    const cookies = [
      tokenCookie('a', 'lead'),
      tokenCookie('b', 'lead'),
      tokenCookie('a', 'assistant'),
      tokenCookie('a', 'looker-on'),
    ];
    expect(new Set(cookies).size).toBe(cookies.length);
  });

  it('[MSG2] every close code names its reason, and any other code asks to try again', () => {
    for (const [reason, code] of Object.entries(CLOSE_REASONS)) {
      expect(closeReason(code)).toBe(reason);
      expect(code).toBeGreaterThanOrEqual(4400);
      expect(code).toBeLessThanOrEqual(4499);
    }
    for (const code of [1000, 1001, 1006, 1012, 1013, 4499]) expect(closeReason(code)).toBeNull();
  });

  it('[MSG2] every socket of the signals channel is typed by the one contract', () => {
    expect(signalFiles.some((file) => file.startsWith('client/'))).toBe(true);
    expect(signalFiles.some((file) => file.startsWith('server/'))).toBe(true);
    for (const folder of ['client', 'server']) {
      const sources = signalFiles.filter((file) => file.startsWith(`${folder}/`)).map(readSource);
      const typed = sources.flatMap((source) => source.match(/\b(Socket|Server)<[^>]*>/g) ?? []);
      expect(typed.length, folder).toBeGreaterThan(0);
      for (const type of typed) expect(type, folder).toMatch(/ToServer|ToPhone/);
      // A socket without the contract in its type would take any name.
      for (const source of sources) expect(source, folder).not.toMatch(/:\s*(Socket|Server)\b(?!<)/);
    }
  });

  it('[MSG2] what is sent and listened to on it is of the contract, and all of the contract is used', () => {
    const literals = signalLiterals();
    const sent = literals.filter(({ firstOf }) => firstOf === 'emit' || firstOf === 'emitWithAck');
    const listened = literals.filter(({ firstOf }) => firstOf === 'on' || firstOf === 'once');
    for (const { file, line, value } of [...sent, ...listened])
      expect([...TO_SERVER, ...TO_PHONE, ...BUILT_IN], `${file}:${line}`).toContain(value);
    const by = (some: readonly Literal[], folder: string) =>
      new Set(some.filter(({ file }) => file.startsWith(`${folder}/`)).map(({ value }) => value));
    expect(TO_SERVER.filter((name) => !by(sent, 'client').has(name))).toEqual([]);
    expect(TO_SERVER.filter((name) => !by(listened, 'server').has(name))).toEqual([]);
    expect(TO_PHONE.filter((name) => !by(sent, 'server').has(name))).toEqual([]);
    expect(TO_PHONE.filter((name) => !by(listened, 'client').has(name))).toEqual([]);
  });

  it('[MSG2] no other file declares a contract of signals', () => {
    const declares = /interface\s+\w*(ToServer|ToPhone|ServerToClient|ClientToServer)\w*/;
    const files = ['shared', 'server', 'client']
      .flatMap(sourcesUnder)
      .filter((file) => declares.test(readSource(file)));
    expect(files).toEqual([SIGNALS]);
  });
});

/** The literals of the code that speaks on the signals channel, on either end. */
function signalLiterals(): Literal[] {
  return [...new Set([...signalFiles, ...sourcesUnder('server/signals')])].flatMap((file) =>
    literalsOf(file, readSource(file)),
  );
}
