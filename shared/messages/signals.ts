import * as z from 'zod/mini';
import { ID_PATTERN } from '../ids.ts';
import { ROLES } from '../roles.ts';

const id = z.string().check(z.regex(ID_PATTERN));
const instant = z.number().check(z.gte(0), z.lte(8.64e15));

/** Said at the handshake of the signals socket; the device token itself travels as a cookie. */
export const handshakeSchema = z.object({ night: id, as: z.enum(ROLES) });

/**
 * "Look at your phone now." It carries no state: what it announces is in the document already (SPEC MSG1).
 * After `expiresAt` (server milliseconds) it is not delivered any more.
 */
export const headsUpSchema = z.object({
  id,
  kind: z.enum(['call', 'change', 'withdrawn', 'look']),
  carryId: z.nullable(id),
  expiresAt: instant,
});
export type HeadsUp = z.infer<typeof headsUpSchema>;

/** How far a heads-up got: taken by the server, acknowledged by the other phone's app, heard by its person. */
export type HeadsUpReach = 'taken' | 'rang' | 'heard' | 'expired';
export interface HeadsUpNews {
  readonly id: string;
  readonly reach: HeadsUpReach;
  readonly at: number;
}

export const beatSchema = z.object({ visible: z.boolean() });
export type Beat = z.infer<typeof beatSchema>;

export const heardSchema = z.object({ id });

/** One phone of the night as the server last knew it. */
export interface PresentPhone {
  readonly personId: string;
  readonly name: string;
  readonly role: (typeof ROLES)[number];
  /** The page was visible at the last beat. */
  readonly visible: boolean;
  /** Milliseconds since the last beat, when this was sent. */
  readonly agoMs: number;
  readonly connected: boolean;
}

/** Why the server did not take a signal. */
export type Refusal = 'malformed' | 'not-allowed' | 'too-many';
export type Receipt =
  | { readonly ok: true; readonly at: number }
  | { readonly ok: false; readonly reason: Refusal };

/** The signals contract, each way; the only definition of these names (SPEC MSG2). */
export interface ToServer {
  'heads-up': (headsUp: HeadsUp, receipt: (receipt: Receipt) => void) => void;
  heard: (heard: { id: string }, receipt: (receipt: Receipt) => void) => void;
  beat: (beat: Beat) => void;
  clock: (answer: (serverMs: number) => void) => void;
}
export interface ToPhone {
  'heads-up': (headsUp: HeadsUp, rang: () => void) => void;
  'heads-up-news': (news: HeadsUpNews) => void;
  presence: (phones: readonly PresentPhone[]) => void;
}

/** How often a phone sends a beat. */
export const BEAT_MS = 2500;
