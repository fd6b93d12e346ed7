// build-client.mjs is plain Node, like start.mjs that calls it; these are its types for those who import it.

/** Is the built client there, and newer than every file it is made of? */
export function isBuilt(root: string): boolean;
/** Builds the client if need be. False when that failed. */
export function ensureBuilt(root: string): boolean;
