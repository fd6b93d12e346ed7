import { defineConfig } from 'vite';

/** The phones' app: one page, each face loaded when it is opened. Output goes where the server serves it from. */
export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  publicDir: 'public',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  resolve: { dedupe: ['yjs', 'lib0', 'y-protocols', 'preact'] },
  build: {
    outDir: '../.build/client',
    emptyOutDir: true,
    // Phones of the last years; also what the browser tests run in.
    target: ['chrome109', 'safari16.4', 'firefox115'],
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
});
