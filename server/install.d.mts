// install.mjs is plain Node, since it runs before anything is installed; these are its types for those who import it.

/** A reason why this Node cannot run the server; null if it can. */
export function tooOld(version: string): string | null;
/** Is node_modules what package-lock.json asks for? */
export function isInstalled(root: string): boolean;
/** Runs `npm ci` if need be. False when that failed. */
export function ensureInstalled(root: string): boolean;
