import { isIP } from 'node:net';

const LOCAL_NAME = /^[a-z0-9-]+(\.(local|lan|internal|home\.arpa))?$/i;
const HOST = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(:\d{1,5})?$/i;

/** The host name in a `Host` header without its port; null where it is none. */
function hostName(host: string | undefined): string | null {
  const match = HOST.exec(host ?? '');
  return match?.[1]?.replace(/^\[|\]$/g, '') ?? null;
}

/**
 * Could this machine be called so on a local network? Addresses, single words and local endings may; a name of the
 * public internet may not, since with one of those a stranger's page could pose as this server (DNS rebinding).
 */
export function isLocalHost(host: string | undefined): boolean {
  const name = hostName(host);
  return name !== null && (isIP(name) !== 0 || LOCAL_NAME.test(name));
}

/** Only this machine itself reaches such a host. */
export function isLoopback(host: string | undefined): boolean {
  const name = hostName(host);
  return name === 'localhost' || name === '::1' || (name?.startsWith('127.') ?? false);
}

/**
 * May a request with these headers act for the phone that sends it? Browsers name the page's origin on every POST
 * and on every WebSocket, and neither is held back by the rules for reading across sites, so a page from elsewhere
 * is turned away here. A request without an origin comes from no browser, so no stranger's page can be behind it;
 * it still has to show its token.
 */
export function isSameOrigin(headers: { host?: string | undefined; origin?: string | undefined }): boolean {
  if (!isLocalHost(headers.host)) return false;
  if (headers.origin === undefined) return true;
  return URL.canParse(headers.origin) && new URL(headers.origin).host === headers.host?.toLowerCase();
}
