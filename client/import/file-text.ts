/** A byte-order mark at the start says which encoding follows (Unicode Standard, section 23.8). */
const MARKS: readonly (readonly [bytes: readonly number[], encoding: string])[] = [
  [[0xef, 0xbb, 0xbf], 'utf-8'],
  [[0xff, 0xfe], 'utf-16le'],
  [[0xfe, 0xff], 'utf-16be'],
];

/** @returns a file's bytes as text: by its mark, else UTF-8, else (older drawings) windows-1252, which takes any byte */
export function fileText(bytes: Uint8Array): string {
  const marked = MARKS.find(([mark]) => mark.every((byte, index) => bytes[index] === byte));
  if (marked) return new TextDecoder(marked[1]).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
