import type * as Y from 'yjs';
import type { Carry, Revision } from './carry.ts';
import { entryAt } from './entries.ts';
import type { RefusedBecause } from './outcome.ts';
import type { Stand } from './parts.ts';
import { SCHEMA_VERSION } from './schema.ts';
import { type Night, readNight } from './snapshot.ts';
import type { Hand } from './transact.ts';

/** A document of a newer app is read and never written (SPEC DOC10). */
export const isNewer = (doc: Y.Doc): boolean =>
  (entryAt(doc, 'about', 'schema', 'about/schema') ?? SCHEMA_VERSION) > SCHEMA_VERSION;

export const standOf = (night: Night, standId: string): Stand | null =>
  night.stands.find((stand) => stand.id === standId) ?? null;

/** The carry a stand was last called on, whatever became of it; a replaced one does not count. */
export function latestCarry(night: Night, standId: string): Carry | null {
  const carries = night.carries.filter((carry) => carry.standId === standId && carry.state !== 'replaced');
  return carries.at(-1) ?? null;
}

/**
 * When a new carry of a stand begins, in server milliseconds: after the last one this phone knows, whatever its
 * clock says. A carry that began before another, by a slow clock or in the same millisecond, would be *replaced*
 * by the one it follows, and the assistant would never see the call (SPEC DOC8).
 */
export const beginsAt = (hand: Hand, last: Carry | null): number => Math.max(hand.now(), (last?.at ?? 0) + 1);

export interface RevisionAt {
  readonly night: Night;
  readonly carry: Carry;
  readonly revision: Revision;
}

/** A revision by its ids, if a stamp may still be put on it; else the reason why not. */
export function currentRevision(
  doc: Y.Doc,
  carryId: string,
  revisionId: string,
): RevisionAt | RefusedBecause {
  if (isNewer(doc)) return 'newer-app';
  const night = readNight(doc);
  const carry = night.carries.find((known) => known.id === carryId);
  if (!carry) return 'no-such-carry';
  if (carry.state === 'withdrawn') return 'withdrawn';
  if (carry.state === 'replaced') return 'replaced';
  if (carry.current.id !== revisionId) return 'older-revision';
  return { night, carry, revision: carry.current };
}
