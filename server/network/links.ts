import { pairFragment } from '../../shared/messages/http.ts';
import type { Address } from './addresses.ts';
import { isLoopback } from './own-host.ts';

/** The link that pairs a phone, at `host` (name or address with its port). */
export const pairLink = (host: string, secret: string): string => `http://${host}/${pairFragment(secret)}`;

/**
 * The hosts to offer another phone, the likeliest first: the one this request came by, since it is known to work;
 * then the machine's addresses. A loopback host works on this machine alone and comes last.
 */
export function hostsToOffer(own: string, addresses: readonly Address[], port: number): string[] {
  const others = addresses.map(({ ip }) => `${ip}:${port}`);
  return [...new Set(isLoopback(own) ? [...others, own] : [own, ...others])];
}
