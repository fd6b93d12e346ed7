import { type ReadonlySignal, signal } from '@preact/signals';
import { remember, remembered } from '../session/own-settings.ts';

/** Whether this phone can read an English sentence aloud; voices may arrive after the page. */
export type Voice = 'ready' | 'no-english' | 'none';

const KEY = 'hushmark/speech';
const wanted = signal(remembered(KEY));
const speech = (globalThis as { speechSynthesis?: SpeechSynthesis }).speechSynthesis;

const isEnglish = ({ lang }: SpeechSynthesisVoice) => /^en(?![a-z])/i.test(lang);

/** The phone's own language first, where it is English; else any English voice that the phone itself holds. */
function englishVoice(): SpeechSynthesisVoice | null {
  const voices = (speech?.getVoices() ?? []).filter(isEnglish);
  const own = voices.find(({ lang }) => lang.replace('_', '-') === navigator.language);
  // There is no internet at a wedding: a voice that is fetched would stay silent.
  return own ?? voices.find(({ localService }) => localService) ?? voices[0] ?? null;
}

function look(): Voice {
  if (!speech) return 'none';
  return englishVoice() ? 'ready' : 'no-english';
}

const voice = signal<Voice>(look());
speech?.addEventListener?.('voiceschanged', () => {
  voice.value = look();
});

export const speechWanted: ReadonlySignal<boolean> = wanted;
export const speechVoice: ReadonlySignal<Voice> = voice;

/** Stops what is being said. */
export function hush(): void {
  speech?.cancel();
}

/** Says a sentence, in place of whatever is being said; nothing where that is switched off or there is no voice. */
export function say(text: string): void {
  hush();
  const known = englishVoice();
  if (!wanted.peek() || !speech || !known) return;
  const sentence = new SpeechSynthesisUtterance(text);
  sentence.voice = known;
  sentence.lang = known.lang;
  speech.speak(sentence);
}

/** Switches it on or off; in a tap, since phones speak only after one. */
export function wantSpeech(on: boolean): void {
  wanted.value = on;
  remember(KEY, on);
  if (on) say('I will say it here.');
  else hush();
}
