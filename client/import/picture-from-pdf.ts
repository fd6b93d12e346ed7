import { type FileTrouble, LONGEST_PX, type PicturePlan, trouble } from './plan-file.ts';

/** A page that is not drawn by then will not be, ms; a worker that never answers ends here too. */
const PATIENCE_MS = 30_000;

function troubleFrom(error: unknown): FileTrouble {
  const name = error instanceof Error ? error.name : '';
  if (name === 'PasswordException')
    return trouble('The PDF asks for a password. Save it without one, or take a screenshot of the page.');
  return trouble('The PDF cannot be read. Take a screenshot of the page and choose that instead.');
}

/**
 * Scans packed in one of the ways that need WebAssembly (which the page's headers forbid) are left white: better to say so
 * than to hand over an empty sheet.
 */
function isBlank(canvas: HTMLCanvasElement): boolean {
  const context = canvas.getContext('2d');
  if (!context) return true;
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  return new Uint32Array(data.buffer).every((pixel) => pixel === 0xffffffff);
}

/**
 * The first page of a PDF as a picture. Loaded and done only when a PDF is chosen; the file stays on this phone.
 *
 * @param bytes the file; they are handed to a worker and cannot be used afterwards
 */
export async function pictureFromPdf(bytes: Uint8Array): Promise<PicturePlan | FileTrouble> {
  // The build for older browsers: that of the day wants phones of this year.
  const pdf = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const port = new Worker(new URL('./pdf-worker.ts', import.meta.url), { type: 'module' });
  const worker = pdf.PDFWorker.create({ port });
  const task = pdf.getDocument({
    data: bytes,
    worker,
    // The page may not run texts as programs, and nothing may be fetched from elsewhere.
    isEvalSupported: false,
    useWasm: false,
    useWorkerFetch: false,
    stopAtErrors: false,
    maxImageSize: 64e6,
  });
  const patience = setTimeout(() => void task.destroy(), PATIENCE_MS);
  try {
    const page = await (await task.promise).getPage(1);
    const whole = page.getViewport({ scale: 1 });
    const scale = LONGEST_PX / Math.max(whole.width, whole.height);
    const viewport = page.getViewport({ scale });
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.min(LONGEST_PX, Math.round(viewport.width)));
    canvas.height = Math.max(1, Math.min(LONGEST_PX, Math.round(viewport.height)));
    await page.render({ canvas, viewport }).promise;
    if (isBlank(canvas))
      return trouble(
        'Nothing can be seen on the first page of the PDF. Take a screenshot of the page and choose that instead.',
      );
    return { kind: 'picture', picture: canvas, widthPx: canvas.width, heightPx: canvas.height };
  } catch (error) {
    return troubleFrom(error);
  } finally {
    clearTimeout(patience);
    await task.destroy();
    worker.destroy();
    port.terminate();
  }
}
