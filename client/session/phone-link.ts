import { type Link, linkFromAge } from '../../shared/presence/link.ts';
import type { NightSession } from './night-session.ts';
import type { Known } from './signals-link.ts';

/** How another phone's link is at a time, and how long ago it was last heard of. A phone that was closed is lost at once. */
export function phoneLink(session: NightSession, phone: Known, nowMs: number): { link: Link; ageMs: number } {
  const ageMs = phone.agoMs + Math.max(0, nowMs - phone.heardAt);
  const isUp = phone.connected && session.signals.up.value;
  return { link: isUp ? linkFromAge(ageMs) : 'lost', ageMs };
}

/** The partner's phones were there and are all lost now. A partner who has never come is not lost. */
export function isPartnerLost(session: NightSession, nowMs: number): boolean {
  const partner = session.me.role === 'lead' ? 'assistant' : 'lead';
  const phones = session.signals.phones.value.filter(({ role }) => role === partner);
  return phones.length > 0 && phones.every((phone) => phoneLink(session, phone, nowMs).link === 'lost');
}
