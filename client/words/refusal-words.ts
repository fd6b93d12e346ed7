import type { RefusedBecause } from '../../shared/document/outcome.ts';
import type { CloseReason } from '../../shared/messages/close-reasons.ts';
import type { HttpRefusal } from '../../shared/messages/http.ts';

/** Why a press did nothing. */
export const REFUSED: Record<RefusedBecause, string> = {
  'no-such-stand': 'That stand is not in this night any more.',
  'no-such-carry': 'That call is not in this night any more.',
  'no-such-moment': 'That moment is not in this night any more.',
  'no-such-announcement': 'That announcement was taken back.',
  'no-such-frame': 'That test frame is not in this night any more.',
  'no-such-reading': 'That reading is not in this night any more.',
  'no-such-gear': 'That is not in the gear list of this night.',
  'no-such-room': 'This night has no room yet.',
  'no-such-feature': 'That is not on the plan any more.',
  'crossing-outline': 'An outline may not cross or touch itself.',
  'too-many-features': 'The plan is full: take something away first.',
  'too-many-moments': 'The running order is full: take a moment out first.',
  'no-moment-to-copy': 'There is no moment yet that a new one could begin from.',
  'on-now': 'That moment is on now: begin another one first.',
  'nothing-to-settle': 'That is settled already.',
  'older-revision': 'The call has changed since: look again.',
  already: 'That was done already.',
  'nothing-to-undo': 'There is nothing to undo.',
  withdrawn: 'The lead has withdrawn this call.',
  replaced: 'A later call for this stand has taken its place.',
  held: 'The lead holds this call back.',
  'out-of-range': 'That is beyond what a stand or a camera can do.',
  'no-camera-sense': 'The camera stands on the subject: there is no left or right from there.',
  'newer-app': 'This night was made by a newer Hushmark. It can be read here, not changed.',
};

/** Why the server closed the link for good, and what to do. */
export const CLOSED: Record<CloseReason, string> = {
  garbage: 'The server could not read what this phone sent. Load the page again.',
  unpaired: 'This phone is not in the night. Scan a new code.',
  'not-allowed': 'This phone may look on, not change anything.',
  'no-such-night': 'The server does not hold this night. It may run with another folder of nights.',
  'other-version': 'The app on this phone and the server differ. Load the page again.',
  'too-large': 'What this phone wanted to send is too large for the server.',
  'too-many': 'This phone sent too much at once. Load the page again.',
};

/** Why a request was not granted. */
export const ASKED: Record<HttpRefusal | 'no-answer', string> = {
  malformed: 'The server and this app do not understand each other. Load the page again.',
  unpaired: 'This phone is not in the night. Scan a new code.',
  'not-allowed': 'Only the lead may do that.',
  'bad-secret': 'This code has been used or is too old. Ask for a new one.',
  'no-such-night': 'The server does not hold this night.',
  'no-such-venue': 'That room is not in the library any more.',
  'library-full': 'The library is full.',
  'too-many': 'Too many tries. Wait a minute.',
  failed: 'The server could not do it. Its log says why.',
  'no-answer': 'The server does not answer. Is this phone on its Wi-Fi?',
};
