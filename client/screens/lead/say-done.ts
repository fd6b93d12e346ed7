import type { Outcome } from '../../../shared/document/outcome.ts';
import { REFUSED } from '../../words/refusal-words.ts';
import type { LeadState } from './lead-state.ts';

/** Says what a press did, with the way back; or why it did nothing. */
export function sayDone(
  state: LeadState,
  outcome: Outcome,
  text: string,
  undo: (() => Outcome) | null,
): void {
  if (!outcome.ok) {
    state.notice.value = { text: REFUSED[outcome.reason], undo: null };
    return;
  }
  const back = () => {
    const undone = undo?.();
    state.notice.value = {
      text: undone && !undone.ok ? REFUSED[undone.reason] : 'Put back as it was.',
      undo: null,
    };
  };
  state.notice.value = { text, undo: undo ? back : null };
}
