import type { CarryId, RevisionId, StandId } from '../ids.ts';
import type { Entry, Mark, StampKind } from './schema.ts';

export type Stamp = Entry<'carry/stamp'>;

/** One version of a called mark. A stamp belongs to one revision and never speaks for the next (SPEC DOC7). */
export interface Revision {
  readonly id: RevisionId;
  readonly number: number;
  readonly mark: Mark;
  readonly why: 'call' | 'nudge';
  readonly change: string | null;
  readonly by: string;
  readonly at: number;
  /** For a nudge: the mark that it, and all that it folds, changed. */
  readonly from?: Mark;
  /** The nudge before it that this one speaks for too (SPEC DOC23). */
  readonly folds?: string;
  /** Only stamps that were not taken back. */
  readonly stamps: Readonly<Partial<Record<StampKind, Stamp>>>;
}

export type CarryState =
  | 'called'
  | 'held'
  | 'delivered'
  | 'seen'
  | 'carrying'
  | 'cant'
  | 'set'
  | 'withdrawn'
  | 'replaced';

export interface Carry {
  readonly id: CarryId;
  readonly standId: StandId;
  readonly from: Mark;
  readonly by: string;
  readonly at: number;
  /** Oldest first; never empty. */
  readonly revisions: readonly Revision[];
  readonly current: Revision;
  readonly state: CarryState;
  /** When the state was reached, in server milliseconds. */
  readonly since: number;
  readonly withdrawnAt: number | null;
  readonly withdrawalSeen: boolean;
  /** The lead withdrew it, but the stand had been set by then: it stands there (SPEC DOC9). */
  readonly withdrawnTooLate: boolean;
}

/** A carry that still asks something of the assistant. */
export const isOpen = (carry: Carry): boolean =>
  carry.state !== 'set' && carry.state !== 'withdrawn' && carry.state !== 'replaced';

/**
 * What became of a revision, from its stamps alone. The furthest stamp speaks; "can't" and "carrying" go by
 * which came later, since an assistant may give up on the way and may find a way after giving up.
 */
export function revisionState(revision: Revision): { state: CarryState; since: number } {
  const { held, delivered, seen, carrying, cant, set } = revision.stamps;
  if (set) return { state: 'set', since: set.at };
  if (cant && !(carrying && carrying.at > cant.at)) return { state: 'cant', since: cant.at };
  if (carrying) return { state: 'carrying', since: carrying.at };
  if (seen) return { state: 'seen', since: seen.at };
  if (delivered) return { state: 'delivered', since: delivered.at };
  if (held) return { state: 'held', since: held.at };
  return { state: 'called', since: revision.at };
}

/** The later of two revisions: greater number, and of two with one number (both made apart) the greater id. */
export const laterRevision = (a: Revision, b: Revision): Revision => {
  if (a.number !== b.number) return a.number > b.number ? a : b;
  return a.id > b.id ? a : b;
};

/**
 * The revisions that somebody has been told of as one each, oldest first: a nudge that a later one folded is not among
 * them, since the later one speaks for both. How often a call changed is one less than how many these are.
 */
export function toldRevisions(carry: Pick<Carry, 'revisions'>): readonly Revision[] {
  const folded = new Set(carry.revisions.flatMap(({ folds }) => folds ?? []));
  return carry.revisions.filter(({ id }) => !folded.has(id));
}

export interface CarryParts {
  readonly id: CarryId;
  readonly of: Entry<'carry/of'>;
  readonly revisions: readonly Revision[];
  readonly withdrawn: Entry<'carry/withdrawn'> | null;
  readonly withdrawnSeen: Entry<'carry/withdrawn-seen'> | null;
}

/** Puts a carry together from its entries; null while no revision of it has arrived. */
export function assembleCarry(parts: CarryParts): Carry | null {
  const revisions = [...parts.revisions].sort((a, b) => (laterRevision(a, b) === a ? 1 : -1));
  const current = revisions.at(-1);
  if (!current) return null;
  const reached = revisionState(current);
  const withdrawnAt = parts.withdrawn && parts.withdrawn.undoneAt === null ? parts.withdrawn.at : null;
  const withdrawn = withdrawnAt !== null && reached.state !== 'set';
  return {
    id: parts.id,
    standId: parts.of.standId as StandId,
    from: parts.of.from,
    by: parts.of.by,
    at: parts.of.at,
    revisions,
    current,
    state: withdrawn ? 'withdrawn' : reached.state,
    since: withdrawn ? (withdrawnAt ?? reached.since) : reached.since,
    withdrawnAt,
    // An acknowledgement speaks for the withdrawals before it, not for one that came after an undo.
    withdrawalSeen: withdrawnAt !== null && (parts.withdrawnSeen?.at ?? -1) >= withdrawnAt,
    withdrawnTooLate: withdrawnAt !== null && reached.state === 'set',
  };
}

/**
 * Of several open carries of one stand (called on two phones that could not see each other) the last called
 * stays open and the others are marked as replaced; nothing is thrown away (SPEC DOC8).
 */
export function settleReplaced(carries: readonly Carry[]): Carry[] {
  const last = new Map<StandId, Carry>();
  for (const carry of carries) {
    const rival = last.get(carry.standId);
    if (!rival || carry.at > rival.at || (carry.at === rival.at && carry.id > rival.id))
      last.set(carry.standId, carry);
  }
  return carries.map((carry) => {
    const winner = last.get(carry.standId);
    if (!winner || winner === carry || !isOpen(carry)) return carry;
    return { ...carry, state: 'replaced', since: winner.at };
  });
}
