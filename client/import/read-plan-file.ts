import { fileKind, HEAD_BYTES } from './file-kind.ts';
import { fileText } from './file-text.ts';
import { openBitmap } from './open-bitmap.ts';
import { type FileTrouble, type PicturePlan, type PlanFile, trouble } from './plan-file.ts';
import { browserXml, svgRoot, type XmlReader } from './svg-root.ts';

/** Larger files are no plan of a room, and would fill a phone's memory. */
export const MOST_BYTES = 20 * 1024 * 1024;

/** What only a browser can do: tests put their own in its place. */
export interface ImportTools {
  readonly readXml: XmlReader;
  readonly openPicture: (file: Blob) => Promise<ImageBitmap>;
  readonly openPdf: (bytes: Uint8Array) => Promise<PicturePlan | FileTrouble>;
}

const BROWSER: ImportTools = {
  readXml: browserXml,
  openPicture: openBitmap,
  openPdf: async (bytes) => (await import('./picture-from-pdf.ts')).pictureFromPdf(bytes),
};

async function picture(file: Blob, tools: ImportTools): Promise<PlanFile> {
  try {
    const bitmap = await tools.openPicture(file);
    return { kind: 'picture', picture: bitmap, widthPx: bitmap.width, heightPx: bitmap.height };
  } catch {
    return trouble('This phone cannot read the picture. A JPEG or PNG can be read; a screenshot is one.');
  }
}

async function vector(kind: 'svg' | 'dxf', text: string, tools: ImportTools): Promise<PlanFile> {
  if (kind === 'dxf') return (await import('./shapes-from-dxf.ts')).shapesFromDxf(text);
  const root = svgRoot(text, tools.readXml);
  return 'kind' in root ? root : (await import('./shapes-from-svg.ts')).shapesFromSvg(root);
}

async function readBytes(file: Blob, tools: ImportTools): Promise<PlanFile> {
  const kind = fileKind(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));
  switch (kind) {
    case 'picture':
      return picture(file, tools);
    case 'pdf':
      return tools.openPdf(new Uint8Array(await file.arrayBuffer()));
    case 'svg':
    case 'dxf':
      return vector(kind, fileText(new Uint8Array(await file.arrayBuffer())), tools);
    case 'dxf-binary':
      return trouble('This DXF file is in its binary form. Save it as text (ASCII) DXF.');
    case 'dwg':
      return trouble('A DWG drawing cannot be read. Save it as DXF or PDF.');
    case 'unknown':
      return trouble('This is no plan that can be read. A picture, PDF, DXF or SVG can.');
  }
}

/**
 * Reads a plan from a file that a person has chosen: by its content, not by its name. Nothing leaves this phone, and
 * whatever is in the file, the answer is a plan or a reason: it never throws.
 *
 * @returns a picture to trace, shapes to build a room from (`roomFromShapes`), or a trouble in plain words
 */
export async function readPlanFile(file: Blob, tools: ImportTools = BROWSER): Promise<PlanFile> {
  if (file.size === 0) return trouble('The file is empty.');
  if (file.size > MOST_BYTES)
    return trouble(
      `The file is ${Math.ceil(file.size / 1024 / 1024)} MB large; up to ${MOST_BYTES / 1024 / 1024} MB can be read.`,
    );
  try {
    return await readBytes(file, tools);
  } catch {
    return trouble('The file cannot be read. Choose it again, or trace a picture of the plan instead.');
  }
}
