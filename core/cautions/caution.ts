type CautionLevel = 'info' | 'caution' | 'stop';

/**
 * One note on what may go wrong. It never says that anything is all right: no caution means only that
 * this check raised none. What could not be looked at is an 'info' whose detail begins "Not checked".
 */
export type Caution = {
  readonly id: string;
  readonly level: CautionLevel;
  readonly title: string;
  /** Number and limit in words */
  readonly detail: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  /** Family of the source, as a person would look for it */
  readonly source: string;
};

const RANK: Readonly<Record<CautionLevel, number>> = { stop: 0, caution: 1, info: 2 };

/** Order for a list of cautions: stop, caution, info; equal levels keep their order. */
export function byWorstFirst(a: Caution, b: Caution): number {
  return RANK[a.level] - RANK[b.level];
}

/**
 * A check that could not be made.
 *
 * @param why what is missing, as the end of the sentence "Not checked: …"
 */
export function notChecked(id: string, title: string, why: string, source: string): Caution {
  return {
    id,
    level: 'info',
    title,
    detail: `Not checked: ${why}.`,
    value: null,
    limit: null,
    unit: '',
    source,
  };
}

/** A length in a caution's words: metres to the centimetre, since limits are that fine. */
export function metresInWords(lengthM: number): string {
  return `${Math.abs(lengthM) < 1e6 ? lengthM.toFixed(2) : 'over a million'} m`;
}
