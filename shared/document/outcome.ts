/** Why a command did nothing. The screen words it; nothing was written (SPEC DOC6). */
export type RefusedBecause =
  | 'no-such-stand'
  | 'no-such-carry'
  | 'no-such-moment'
  | 'no-such-announcement'
  | 'no-such-frame'
  | 'no-such-reading'
  | 'no-such-gear'
  | 'no-such-room'
  | 'no-such-feature'
  | 'crossing-outline'
  | 'too-many-features'
  | 'too-many-moments'
  | 'no-moment-to-copy'
  | 'on-now'
  | 'nothing-to-settle'
  | 'older-revision'
  | 'already'
  | 'nothing-to-undo'
  | 'withdrawn'
  | 'replaced'
  | 'held'
  | 'out-of-range'
  | 'no-camera-sense'
  | 'newer-app';

export type Outcome<Done = object> = ({ readonly ok: true } & Done) | Refused;

export interface Refused {
  readonly ok: false;
  readonly reason: RefusedBecause;
  /** The field that does not fit ("lossStops", "lights.0.mark.powerStops"), where there is one. */
  readonly field?: string;
}

export const refuse = (reason: RefusedBecause): Refused => ({ ok: false, reason });

/** A value does not fit its schema: names the first field that does not. */
export function refuseField(error: {
  readonly issues: readonly { readonly path: readonly PropertyKey[] }[];
}): Refused {
  const path = error.issues[0]?.path ?? [];
  return path.length > 0
    ? { ok: false, reason: 'out-of-range', field: path.map(String).join('.') }
    : refuse('out-of-range');
}
