import type { Mark } from '../../../shared/document/schema.ts';

/** A mark in hand: on this phone only, until a press calls it. */
export interface Draft {
  readonly standId: string;
  readonly mark: Mark;
  /** The power follows from the place, until somebody says another. */
  readonly autoPower: boolean;
}
