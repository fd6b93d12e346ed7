import type { NightId } from '../../shared/ids.ts';
import { tokenCookie } from '../../shared/messages/http.ts';
import type { Role } from '../../shared/roles.ts';

const COOKIE_DAYS = 30;

/** The value of one cookie in a `Cookie` header; null if it is not there. */
export function cookieValue(header: string | undefined, name: string): string | null {
  for (const pair of (header ?? '').split(';')) {
    const cut = pair.indexOf('=');
    if (cut > 0 && pair.slice(0, cut).trim() === name) return pair.slice(cut + 1).trim();
  }
  return null;
}

/** The device token that a request carries for a night and role; null if none. */
export const tokenOf = (header: string | undefined, night: NightId, role: Role): string | null =>
  cookieValue(header, tokenCookie(night, role));

/** The `Set-Cookie` that gives a phone its token. Not `Secure`: on a hotspot the app is plain http. */
export const tokenHeader = (night: NightId, role: Role, token: string): string =>
  `${tokenCookie(night, role)}=${token}; Path=/; Max-Age=${COOKIE_DAYS * 24 * 60 * 60}; HttpOnly; SameSite=Strict`;
