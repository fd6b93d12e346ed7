/** A Chromium for tests that need a browser; `why` says in plain words why there is none. */
export function findChromium(): { path: string | null; why: string };
