/**
 * The server cannot start, for a reason that a person can mend. The message is a whole sentence for the terminal;
 * it unwinds the start because nothing can go on without what failed.
 */
export class StartFailure extends Error {
  override readonly name = 'StartFailure';
}
