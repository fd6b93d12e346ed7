import { latestCarry } from '../../../shared/document/ask.ts';
import type { Stand } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { elsewhereOf } from '../../state/elsewhere.ts';
import { elsewhereWords } from '../../words/elsewhere-words.ts';
import type { LeadState } from './lead-state.ts';

/** "K set 1 m short: guests"; null for a stand that is on its mark. */
export function standElsewhere(night: Night, stand: Stand): string | null {
  const carry = latestCarry(night, stand.id);
  const elsewhere = carry && elsewhereOf(night, carry);
  return elsewhere && elsewhereWords(stand.kit.letter, elsewhere, night.units);
}

/** Whether the chosen stand was set elsewhere than called; stays until the next call or nudge. */
export function ElsewhereLine({ state }: { state: LeadState }) {
  const [night, stand] = [state.session.night.value, state.stand.value];
  const words = night && stand && !state.draft.value ? standElsewhere(night, stand) : null;
  if (words === null) return null;
  return (
    <p class="elsewhere-line" role="status">
      {words}
    </p>
  );
}
