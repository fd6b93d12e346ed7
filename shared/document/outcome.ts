/** Why a command did nothing. The screen words it; nothing was written (SPEC DOC6). */
export type RefusedBecause =
  | 'no-such-stand'
  | 'no-such-carry'
  | 'no-such-moment'
  | 'older-revision'
  | 'already'
  | 'nothing-to-undo'
  | 'withdrawn'
  | 'replaced'
  | 'held'
  | 'out-of-range'
  | 'no-camera-sense'
  | 'newer-app';

export type Outcome<Done = object> =
  | ({ readonly ok: true } & Done)
  | { readonly ok: false; readonly reason: RefusedBecause };

export const refuse = (reason: RefusedBecause): { readonly ok: false; readonly reason: RefusedBecause } => ({
  ok: false,
  reason,
});
