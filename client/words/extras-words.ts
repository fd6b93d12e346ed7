import type { Voice } from '../device/speech.ts';
import type { TurnSense } from '../device/turn-sense.ts';

/** What the phone can tell of its turning, and what to do about it. */
export const TURN_WORDS: Record<TurnSense, string> = {
  off: 'Off: the arrow turns when you press what you face.',
  'not-secure':
    'Not here: over plain http a browser gives no page its sensors. It needs https, or the server’s own machine.',
  none: 'Not here: this phone tells of no turning.',
  refused: 'Not here: this browser was told not to give its sensors to this page.',
  listening: 'Waiting for the phone to tell how it is held.',
  ready: 'On: press what you face, then hold the phone before you.',
};

/** What such an arrow is worth, said before it is switched on. */
export const TURN_ERROR =
  'A wide arrow, as sure as 15° to either side. It counts no steps: press what you face again after three metres. ' +
  'It ends by itself after a minute. It is no compass.';

/** Whether sentences can be spoken. */
export const VOICE_WORDS: Record<Voice, string> = {
  ready:
    'Each new card is read into the ear, once. Put an earpiece in: the room is loud, and guests need not hear.',
  'no-english': 'It cannot be spoken: the cards are English, and this phone has no English voice.',
  none: 'It cannot be spoken: this browser has no voice.',
};
