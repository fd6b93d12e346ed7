import { latestCarry } from '../../../shared/document/ask.ts';
import type { Stand } from '../../../shared/document/parts.ts';
import { everySecond } from '../../device/ticking.ts';
import { ageWords } from '../../words/ages.ts';
import { REACH_SIGN, reachOf, reachWords } from '../../words/carry-words.ts';
import type { LeadState } from './lead-state.ts';

const JOB = { key: 'key', back: 'back' } as const;

/** What became of the last call of a stand, in words with its age. */
function standWords(state: LeadState, stand: Stand): { sign: string; words: string; reach: string } {
  const { session } = state;
  const now = everySecond.value + (session.signals.clock.value?.offsetMs ?? 0);
  const night = session.night.value;
  const carry = night ? latestCarry(night, stand.id) : null;
  if (!carry || carry.state === 'withdrawn') {
    const was = carry ? 'withdrawn; ' : '';
    return { sign: '■', reach: 'stands', words: `${was}stands, ${ageWords(now - stand.place.at)}` };
  }
  const sent = state.isSent(carry);
  const reach = reachOf(carry, sent);
  return { sign: REACH_SIGN[reach], reach, words: reachWords(carry, sent, now) };
}

/** One key for each stand: chooses it, and says how far its call got. */
export function StandKeys({ state }: { state: LeadState }) {
  const stands = state.session.night.value?.stands ?? [];
  // The durable state is read here so that "sent" appears when it is true, not a second later.
  void state.session.sync.durable.value;
  return (
    <fieldset class="stand-keys">
      <legend class="said-only">Stand to place</legend>
      {stands.map((stand) => {
        const { sign, words, reach } = standWords(state, stand);
        const chosen = state.standId.value === stand.id;
        const choose = () => {
          state.standId.value = stand.id;
          state.dropDraft();
        };
        return (
          <button
            key={stand.id}
            type="button"
            aria-pressed={chosen}
            class={`stand-key tape-${stand.kit.job}`}
            data-reach={reach}
            onClick={choose}
          >
            <b>{`${stand.kit.letter} ${JOB[stand.kit.job]}`}</b>
            <span class={`reach is-${reach}`}>{`${sign} ${words}`}</span>
          </button>
        );
      })}
    </fieldset>
  );
}
