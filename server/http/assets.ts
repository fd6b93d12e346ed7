import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { gzipSync } from 'node:zlib';

/** A file of the built client, ready to be sent. */
export interface Asset {
  readonly type: string;
  readonly body: Buffer;
  /** Null where squeezing gains nothing. */
  readonly gzip: Buffer | null;
  readonly etag: string;
  /** Its name holds a hash of its content, so a phone may keep it for ever. */
  readonly immutable: boolean;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};
const SQUEEZED = new Set(['.html', '.js', '.css', '.svg', '.json', '.webmanifest', '.txt']);
/** Vite puts files named by their content into this folder. */
const HASHED_FOLDER = '/assets/';

function readAsset(path: string, webPath: string): Asset {
  const body = readFileSync(path);
  const ending = extname(path);
  const gzip = SQUEEZED.has(ending) ? gzipSync(body, { level: 9 }) : null;
  return {
    type: TYPES[ending] ?? 'application/octet-stream',
    body,
    gzip: gzip && gzip.length < body.length ? gzip : null,
    etag: `"${createHash('sha256').update(body).digest('base64url').slice(0, 22)}"`,
    immutable: webPath.startsWith(HASHED_FOLDER),
  };
}

/**
 * The built client, read and squeezed once into memory (it is a few hundred kilobytes), by its path on the web.
 * Empty when it has not been built.
 */
export function loadAssets(directory: string): ReadonlyMap<string, Asset> {
  const assets = new Map<string, Asset>();
  let entries: string[];
  try {
    entries = readdirSync(directory, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));
  } catch {
    return assets;
  }
  for (const path of entries) {
    const webPath = `/${relative(directory, path).split(sep).join('/')}`;
    assets.set(webPath, readAsset(path, webPath));
  }
  return assets;
}
