import { everySecond } from '../../device/ticking.ts';
import { TRUSTED_MS, turnFelt, turnSense, turnWanted, turnZero } from '../../device/turn-sense.ts';
import { TURN_WORDS } from '../../words/extras-words.ts';
import type { AssistantState } from './assistant-state.ts';
import type { Way } from './way.ts';

/** How long the arrow still turns by itself, or why it does not. */
function TurnLine() {
  if (!turnWanted.value) return null;
  const felt = turnFelt.value;
  const sense = turnSense.value;
  const leftS = felt
    ? Math.ceil(Math.min(TRUSTED_MS, Math.max(0, felt.untilMs - everySecond.value)) / 1000)
    : 0;
  const words =
    sense === 'off' || (sense === 'ready' && !felt)
      ? 'The arrow stands still: press what you face.'
      : sense === 'ready'
        ? `Turns with you, ${leftS} s. It counts no steps: press again after 3 m.`
        : TURN_WORDS[sense];
  return <p class="turn-line">{words}</p>;
}

/** "I'm facing …": one press turns arrow and plan. */
export function FacingKeys({ state, way }: { state: AssistantState; way: Way }) {
  if (way.facings.length === 0) return null;
  return (
    <div class="facing">
      <fieldset class="facing-keys">
        <legend>I’m facing</legend>
        {way.facings.map((facing) => (
          <button
            key={facing.id}
            type="button"
            aria-pressed={facing.id === way.facing?.id}
            onClick={() => {
              state.facingId.value = facing.id;
              turnZero();
            }}
          >
            {facing.label}
          </button>
        ))}
      </fieldset>
      <TurnLine />
    </div>
  );
}
