import type { LightInput } from '../../../core/light/report/light-input.ts';
import type { LightReport } from '../../../core/light/report/light-report.ts';
import type { RoomModel } from '../../../core/light/room/room-model.ts';
import type { IsoLine } from '../../parts/light-map/iso-lines.ts';

/** What the page asks of the worker that knows the room's light. */
export type ToRoomLight =
  | { readonly kind: 'room'; readonly room: RoomModel }
  | { readonly kind: 'light'; readonly number: number; readonly input: LightInput };

/** A report with what is drawn of it; lines are found here too, since that is work. */
export interface Lit {
  readonly report: LightReport;
  readonly lines: readonly IsoLine[];
}

export type FromRoomLight =
  | { readonly kind: 'progress'; readonly part: number }
  | { readonly kind: 'ready' }
  | { readonly kind: 'lit'; readonly number: number; readonly lit: Lit }
  /** What was asked cannot be worked out, in plain words; what was there before still holds. */
  | { readonly kind: 'trouble'; readonly number: number | null; readonly reason: string };

/** Either end of the way between page and worker. */
export interface Port<Out> {
  postMessage: (message: Out) => void;
  onmessage: ((event: MessageEvent) => void) | null;
}
