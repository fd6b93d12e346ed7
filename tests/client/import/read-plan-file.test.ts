import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileKind } from '../../../client/import/file-kind.ts';
import { fileText } from '../../../client/import/file-text.ts';
import { trouble } from '../../../client/import/plan-file.ts';
import { type ImportTools, MOST_BYTES, readPlanFile } from '../../../client/import/read-plan-file.ts';
import { dxfText, lwpolyline } from './dxf-text.ts';

const bytes = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const HALL = dxfText(
  [
    lwpolyline([
      [0, 0],
      [18, 0],
      [18, 12],
      [0, 12],
    ]),
  ],
  { insunits: 6 },
);

/** Stand-ins for what only a browser has; browser tests use the real ones. */
const TOOLS: ImportTools = {
  readXml: () => null,
  openPicture: () => Promise.reject(new Error('no picture')),
  openPdf: () => Promise.resolve(trouble('There is no PDF reader here.')),
};

describe('the kind of a file', () => {
  it.each([
    ['picture', '\x89PNG\r\n\x1a\n....'],
    ['picture', '\xff\xd8\xff\xe0....'],
    ['picture', 'RIFF....WEBPVP8 '],
    ['picture', '....ftypheic'],
    ['pdf', '%PDF-1.7\n'],
    ['pdf', '\n\n%PDF-1.4\n'],
    ['svg', '<svg xmlns="http://www.w3.org/2000/svg">'],
    ['svg', '\xef\xbb\xbf<?xml version="1.0"?>\n<!-- a plan -->\n<svg>'],
    ['svg', '<!DOCTYPE svg PUBLIC "a" "b"><svg width="1">'],
    ['dxf', HALL],
    ['dxf', `999\r\nmade by hand\r\n${HALL.replaceAll('\n', '\r\n')}`],
    ['dxf', HALL.replaceAll('\n', '\r')],
    ['dxf-binary', 'Some CAD Binary DXF\r\n\x1a\0....'],
    ['dwg', 'AC1032......'],
    ['unknown', '<html><body>svg</body></html>'],
    ['unknown', 'a,b,c\n1,2,3\n'],
    ['unknown', ''],
  ] as const)('%s: %j', (kind, text) => {
    expect(fileKind(bytes(text))).toBe(kind);
  });

  it('is that of its content in two-byte text too', () => {
    const wide = new Uint8Array(Uint16Array.from(`\ufeff${HALL}`, (letter) => letter.charCodeAt(0)).buffer);
    expect(fileKind(wide)).toBe('dxf');
    expect(fileText(wide)).toBe(HALL);
    expect(fileText(bytes('\xe9t\xe9'))).toBe('été');
    expect(fileText(new TextEncoder().encode('été'))).toBe('été');
  });
});

describe('reading a chosen file', () => {
  it('a DXF drawing is read whatever it is called', async () => {
    const read = await readPlanFile(new File([HALL], 'plan.jpg'), TOOLS);
    expect(read).toMatchObject({
      kind: 'shapes',
      unit: 'm',
      boxNative: { left: 0, top: -12, right: 18, bottom: 0 },
    });
  });

  it('what cannot be read gives a reason that says what to do', async () => {
    const reason = async (content: BlobPart, tools = TOOLS) => {
      const read = await readPlanFile(new File([content], 'plan'), tools);
      return read.kind === 'trouble' ? read.reason : 'no trouble';
    };
    expect(await reason('')).toMatch(/empty/);
    expect(await reason(new Uint8Array(MOST_BYTES + 1))).toMatch(/21 MB large; up to 20 MB/);
    expect(await reason('hello')).toMatch(/picture, PDF, DXF or SVG/);
    expect(await reason('AC1032')).toMatch(/Save it as DXF or PDF/);
    expect(await reason(bytes('X Binary DXF\r\n\x1a\0'))).toMatch(/Save it as text/);
    expect(await reason(bytes('\x89PNG\r\n\x1a\n'))).toMatch(/cannot read the picture/);
    expect(await reason('<svg')).toMatch(/picture, PDF, DXF or SVG/);
    expect(await reason('<svg ')).toMatch(/broken/);
    const failing: ImportTools = { ...TOOLS, openPdf: () => Promise.reject(new Error('gone')) };
    expect(await reason('%PDF-1.7', failing)).toMatch(/cannot be read/);
  });

  it('any bytes, behind any beginning: a plan or a reason, never a throw', async () => {
    const start = fc.constantFrom('', '%PDF-1.7\n', '<svg ', '0\nSECTION\n', '\x89PNG\r\n\x1a\n', HALL);
    await fc.assert(
      fc.asyncProperty(start, fc.uint8Array({ maxLength: 300 }), async (head, tail) => {
        const read = await readPlanFile(new File([bytes(head), tail], 'plan'), TOOLS);
        expect(read.kind === 'trouble' ? read.reason.length > 10 : read.kind === 'shapes').toBe(true);
      }),
    );
  });
});
