import { speechVoice, speechWanted, wantSpeech } from '../../device/speech.ts';
import { turnSense, turnWanted, wantTurn } from '../../device/turn-sense.ts';
import { TURN_ERROR, TURN_WORDS, VOICE_WORDS } from '../../words/extras-words.ts';

function Switch(props: { name: string; on: boolean; change: (on: boolean) => void }) {
  const { name, on, change } = props;
  return (
    <button type="button" class="switch-key" aria-pressed={on} onClick={() => change(!on)}>
      {`${name}: ${on ? 'on' : 'off'}`}
    </button>
  );
}

/** What may help and can be done without: off at first, and honest about itself. */
export function ExtrasSetting() {
  return (
    <>
      <Switch name="Arrow turns with the phone" on={turnWanted.value} change={wantTurn} />
      <p class="quiet">{TURN_ERROR}</p>
      {turnWanted.value && <p role="status">{TURN_WORDS[turnSense.value]}</p>}
      <Switch name="Sentence into the ear" on={speechWanted.value} change={wantSpeech} />
      <p class="quiet" role="status">
        {VOICE_WORDS[speechVoice.value]}
      </p>
    </>
  );
}
