import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { ID_PATTERN } from '../shared/ids.ts';
import { StartFailure } from './start-failure.ts';

/** What a person may set when starting the server. */
export interface Config {
  readonly port: number;
  readonly dataDirectory: string;
  /** The title of a night to make; null for none. */
  readonly newNight: string | null;
  /** The night whose lead is to be paired; null for the newest. */
  readonly night: string | null;
  /** Show the log on the terminal too. */
  readonly log: boolean;
  readonly help: boolean;
}

export const DEFAULT_PORT = 8080;
const HIGHEST_PORT = 65535;
const LONGEST_TITLE = 80; // what the night document takes for a name

/** Every setting: its form, and one line that says what it does. */
const SETTINGS = [
  ['--port NUMBER', `the port phones reach the server at, 0 to ${HIGHEST_PORT}, 0 for any (${DEFAULT_PORT})`],
  ['--data FOLDER', 'where nights are stored, or set HUSHMARK_DATA (~/.local/share/hushmark)'],
  ['--new TITLE', `make another night, its title up to ${LONGEST_TITLE} signs (no)`],
  ['--night ID', 'whose lead code to show (the newest night)'],
  ['--log', 'show the log here too, one line per event (only in the log file)'],
  ['--help', 'show this and stop'],
] as const;

/** The text of `--help`. */
export function helpText(): string {
  const lines = SETTINGS.map(([form, meaning]) => `  ${form.padEnd(16)} ${meaning}`);
  return ['npm start -- [setting ...]', '', ...lines, ''].join('\n');
}

/** The data directory where none is named: where the system keeps a program's data (XDG Base Directory Specification). */
function defaultDataDirectory(environment: NodeJS.ProcessEnv): string {
  const base = environment.XDG_DATA_HOME;
  // The specification says that a path there which is not absolute is to be ignored.
  return join(base && isAbsolute(base) ? base : join(homedir(), '.local', 'share'), 'hushmark');
}

function readPort(text: string | undefined): number {
  if (text === undefined) return DEFAULT_PORT;
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port >= 0 && port <= HIGHEST_PORT) return port;
  throw new StartFailure(`--port takes a number from 0 to ${HIGHEST_PORT}, not "${text}".`);
}

function readTitle(text: string | undefined): string | null {
  const title = text?.trim() ?? null;
  if (title === null || (title.length > 0 && title.length <= LONGEST_TITLE)) return title;
  throw new StartFailure(`--new takes a title of 1 to ${LONGEST_TITLE} signs.`);
}

function readArguments(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      strict: true,
      allowPositionals: false,
      options: {
        port: { type: 'string' },
        data: { type: 'string' },
        new: { type: 'string' },
        night: { type: 'string' },
        log: { type: 'boolean' },
        help: { type: 'boolean' },
      },
    }).values;
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    throw new StartFailure(`${what}\n\n${helpText()}`);
  }
}

/**
 * Reads the settings from the arguments and the environment.
 *
 * @throws StartFailure naming what is unknown or out of range
 */
export function readConfig(args: readonly string[], environment: NodeJS.ProcessEnv): Config {
  const values = readArguments(args);
  if (values.night !== undefined && !ID_PATTERN.test(values.night))
    throw new StartFailure(`--night takes the id of a night, not "${values.night}".`);
  return {
    port: readPort(values.port),
    // A relative path is one of the folder the command was typed in.
    dataDirectory: resolve(
      environment.INIT_CWD ?? '.',
      values.data || environment.HUSHMARK_DATA || defaultDataDirectory(environment),
    ),
    newNight: readTitle(values.new),
    night: values.night ?? null,
    log: values.log ?? false,
    help: values.help ?? false,
  };
}
