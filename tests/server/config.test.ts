import { homedir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { helpText, readConfig } from '../../server/config.ts';
import { StartFailure } from '../../server/start-failure.ts';

test("without arguments: port 8080, the newest night, data where the system keeps a program's data", () => {
  const usual = join(homedir(), '.local', 'share', 'hushmark');
  expect(readConfig([], {})).toEqual({
    port: 8080,
    dataDirectory: usual,
    newNight: null,
    night: null,
    log: false,
    help: false,
  });
  expect(readConfig([], { XDG_DATA_HOME: '/somewhere/data' }).dataDirectory).toBe('/somewhere/data/hushmark');
  expect(readConfig([], { XDG_DATA_HOME: 'relative' }).dataDirectory).toBe(usual);
});

test('the data folder: the argument wins over the environment; a relative one is of the folder npm was called in', () => {
  const environment = { HUSHMARK_DATA: '/from/environment', INIT_CWD: '/called/in' };
  expect(readConfig([], environment).dataDirectory).toBe('/from/environment');
  expect(readConfig(['--data', '/from/argument'], environment).dataDirectory).toBe('/from/argument');
  expect(readConfig(['--data', 'here'], environment).dataDirectory).toBe('/called/in/here');
});

test('every setting is read', () => {
  expect(
    readConfig(['--port', '9000', '--new', ' Boat house ', '--night', 'n1', '--log', '--help'], {}),
  ).toMatchObject({
    port: 9000,
    newNight: 'Boat house',
    night: 'n1',
    log: true,
    help: true,
  });
});

const wrong: [string, string[]][] = [
  ['--port', ['--port', '65536']],
  ['--port', ['--port', '-1']],
  ['--port', ['--port', '80a']],
  ['--port', ['--port', '']],
  ['--night', ['--night', 'a/b']],
  ['--new', ['--new', '  ']],
  ['--new', ['--new', 'x'.repeat(81)]],
  ['--prot', ['--prot', '80']],
  ['extra', ['extra']],
];
test.each(wrong)('what does not fit is named, in plain words: %s %j', (name, args) => {
  expect(() => readConfig(args, {})).toThrow(StartFailure);
  expect(() => readConfig(args, {})).toThrow(name);
});

test('an unknown setting gets the list of those there are', () => {
  expect(() => readConfig(['--prot', '80'], {})).toThrow('--port NUMBER');
});

test('whatever is typed, the settings are in range or refused', () => {
  fc.assert(
    fc.property(
      fc.array(fc.oneof(fc.constantFrom('--port', '--data', '--log'), fc.string()), { maxLength: 5 }),
      (args) => {
        try {
          const { port } = readConfig(args, {});
          expect(Number.isInteger(port) && port >= 0 && port <= 65535).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(StartFailure);
        }
      },
    ),
  );
});

test('the help has a line for every setting', () => {
  for (const setting of ['--port', '--data', '--new', '--night', '--log', '--help'])
    expect(helpText()).toMatch(new RegExp(`^ {2}${setting}.* .+`, 'm'));
});
