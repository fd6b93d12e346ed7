/** What a file is, by what it begins with. */
export type FileKind = 'picture' | 'pdf' | 'svg' | 'dxf' | 'dxf-binary' | 'dwg' | 'unknown';

/** How much of a file is looked at to tell its kind, bytes. */
export const HEAD_BYTES = 4096;

const PICTURES: readonly (readonly [at: number, signature: string])[] = [
  [0, '\x89PNG\r\n\x1a\n'],
  [0, '\xff\xd8\xff'],
  [0, 'GIF8'],
  [0, 'BM'],
  [8, 'WEBP'],
  [4, 'ftypavif'],
  [4, 'ftypheic'],
  [4, 'ftypmif1'],
];

/** The mark of the binary form, after a word of its maker. */
const BINARY_DXF = ' Binary DXF\r\n\x1a\0';

/** The pairs that a DXF text may begin with: comments first, then a section. Spaces and line ends never overlap: quick. */
const DXF_START =
  /^(?:[ \t]*999[ \t]*(?:\r\n|\r|\n)[^\r\n]*(?:\r\n|\r|\n))*[ \t]*0[ \t]*(?:\r\n|\r|\n)[ \t]*SECTION\b/;

/** The head of a file as text, one character per byte; two-byte encodings lose their zero bytes. */
const latin = (bytes: Uint8Array) =>
  Array.from(bytes.subarray(0, HEAD_BYTES), (byte) => String.fromCharCode(byte)).join('');

/**
 * What a file is, by its content; its name is not asked, since phones rename and mail strips.
 *
 * @param head the first {@link HEAD_BYTES} bytes, or all of a shorter file
 */
export function fileKind(head: Uint8Array): FileKind {
  const raw = latin(head);
  if (PICTURES.some(([at, signature]) => raw.startsWith(signature, at))) return 'picture';
  // A reader of PDF accepts bytes before the mark (ISO 32000-1, annex H, note 13).
  if (raw.slice(0, 1024).includes('%PDF-')) return 'pdf';
  if (raw.slice(0, 32).includes(BINARY_DXF)) return 'dxf-binary';
  if (/^AC10\d\d/.test(raw)) return 'dwg';
  const text = raw.replaceAll('\0', '').replace(/^(?:\xef\xbb\xbf|\xff\xfe|\xfe\xff)/, '');
  if (/^\s*<(?:\?xml|!--|!DOCTYPE svg|svg|[\w-]+:svg)/i.test(text) && /<(?:[\w-]+:)?svg[\s>]/i.test(text))
    return 'svg';
  return DXF_START.test(text) ? 'dxf' : 'unknown';
}
