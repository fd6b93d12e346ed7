// Pages of a PDF are taken apart off the main thread. A file of our own, so that it is built and sent as ours.
import 'pdfjs-dist/legacy/build/pdf.worker.min.mjs';
