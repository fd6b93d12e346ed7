import { accessSync, constants, mkdirSync } from 'node:fs';
import { StartFailure } from '../start-failure.ts';

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : String(error);

/**
 * Makes the data directory, for this user only: it holds the nights and the hashes of the phones' tokens.
 *
 * @throws StartFailure if it cannot be made or written to
 */
export function prepareDataDirectory(path: string): void {
  try {
    mkdirSync(path, { recursive: true, mode: 0o700 });
    accessSync(path, constants.R_OK | constants.W_OK | constants.X_OK);
  } catch (error) {
    throw new StartFailure(
      `The nights cannot be stored in ${path} (${codeOf(error)}). ` +
        'Make it a folder that you may write to, or choose another: npm start -- --data FOLDER',
    );
  }
}
