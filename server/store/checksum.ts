import { crc32 } from 'node:zlib';

const HEAD_BYTES = 4;

/** The update with its CRC-32 before it, so that bytes that rotted on the disk are known for what they are. */
export function sealed(update: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(HEAD_BYTES + update.length);
  new DataView(bytes.buffer).setUint32(0, crc32(update));
  bytes.set(update, HEAD_BYTES);
  return bytes;
}

/** The update inside; null where the bytes are not those that were sealed. An empty update is never sealed, so a row of zeros is not one. */
export function unsealed(bytes: Uint8Array): Uint8Array | null {
  if (bytes.length <= HEAD_BYTES) return null;
  // Stores hand out Buffers; a plain array does not surprise whoever compares or copies it.
  const update = new Uint8Array(bytes.buffer, bytes.byteOffset + HEAD_BYTES, bytes.length - HEAD_BYTES);
  const expected = new DataView(bytes.buffer, bytes.byteOffset, HEAD_BYTES).getUint32(0);
  return crc32(update) === expected ? update : null;
}
