import { createDecoder, type Decoder, readVarUint, readVarUint8Array } from 'lib0/decoding';
import { createEncoder, type Encoder, toUint8Array, writeVarUint, writeVarUint8Array } from 'lib0/encoding';
import { SYNC_MESSAGE, SYNC_STEP } from '../../shared/messages/sync-codes.ts';

/** What a phone can say on the sync socket. The bytes in it are views of the frame it came in. */
export type SyncFrame =
  | { readonly kind: 'ask'; readonly stateVector: Uint8Array }
  /** `frame` is what the others are sent: the same bytes, as an update. `answers`: it is all the phone had. */
  | {
      readonly kind: 'update';
      readonly update: Uint8Array;
      readonly frame: Uint8Array;
      readonly answers: boolean;
    }
  | { readonly kind: 'awareness'; readonly update: Uint8Array }
  | { readonly kind: 'query-awareness' }
  | { readonly kind: 'heartbeat' };

function lastPart(decoder: Decoder): Uint8Array | null {
  const bytes = readVarUint8Array(decoder);
  return decoder.pos === decoder.arr.length ? bytes : null;
}

/** An answer is passed on as an update; both type numbers take one byte, so one byte is changed in a copy. */
function asUpdate(frame: Uint8Array): Uint8Array {
  const copy = Uint8Array.from(frame);
  copy[1] = SYNC_STEP.update;
  return copy;
}

function readSync(decoder: Decoder, frame: Uint8Array): SyncFrame | null {
  const step = readVarUint(decoder);
  const bytes = lastPart(decoder);
  if (!bytes) return null;
  if (step === SYNC_STEP.askWithVector) return { kind: 'ask', stateVector: bytes };
  if (step === SYNC_STEP.update) return { kind: 'update', update: bytes, frame, answers: false };
  if (step === SYNC_STEP.answer)
    return { kind: 'update', update: bytes, frame: asUpdate(frame), answers: true };
  return null;
}

/** Reads a frame; null when it is none of ours, cut off, or longer than it says. Never throws. */
export function readFrame(frame: Uint8Array): SyncFrame | null {
  try {
    const decoder = createDecoder(frame);
    switch (readVarUint(decoder)) {
      case SYNC_MESSAGE.sync:
        return readSync(decoder, frame);
      case SYNC_MESSAGE.awareness: {
        const update = lastPart(decoder);
        return update && { kind: 'awareness', update };
      }
      case SYNC_MESSAGE.queryAwareness:
        return { kind: 'query-awareness' };
      case SYNC_MESSAGE.heartbeat:
        return { kind: 'heartbeat' };
      default:
        return null;
    }
  } catch {
    return null; // the decoder throws where the bytes end too early
  }
}

function frameOf(types: readonly number[], bytes: Uint8Array): Uint8Array {
  const encoder: Encoder = createEncoder();
  for (const type of types) writeVarUint(encoder, type);
  writeVarUint8Array(encoder, bytes);
  return toUint8Array(encoder);
}

/** "This is what I have: send me the rest." */
export const askFrame = (stateVector: Uint8Array): Uint8Array =>
  frameOf([SYNC_MESSAGE.sync, SYNC_STEP.askWithVector], stateVector);
/** The rest that was asked for. */
export const answerFrame = (update: Uint8Array): Uint8Array =>
  frameOf([SYNC_MESSAGE.sync, SYNC_STEP.answer], update);
/** "This is on the disk." */
export const durableFrame = (stateVector: Uint8Array): Uint8Array =>
  frameOf([SYNC_MESSAGE.durable], stateVector);
export const awarenessFrame = (update: Uint8Array): Uint8Array => frameOf([SYNC_MESSAGE.awareness], update);
