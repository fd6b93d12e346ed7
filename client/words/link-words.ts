import type { Link } from '../../shared/presence/link.ts';
import type { Role } from '../../shared/roles.ts';
import type { Keeping } from '../session/keeping.ts';
import type { LinkState } from '../session/sync-link.ts';
import { ageWords } from './ages.ts';
import { CLOSED } from './refusal-words.ts';

export const ROLE_WORDS: Record<Role, string> = {
  lead: 'Lead',
  assistant: 'Assistant',
  'looker-on': 'Looker-on',
};

/** What stands between this phone and the server; null when nothing does. */
export function ownLinkWords(
  link: LinkState,
  unsent: boolean,
  keeping: Keeping,
  nowMs: number,
): { readonly level: 'note' | 'trouble'; readonly text: string } | null {
  if (link.state === 'refused') return { level: 'trouble', text: CLOSED[link.reason] };
  if (link.state !== 'up') {
    const since = ageWords(nowMs - link.since);
    const wait = unsent ? ' Changes wait to be sent.' : '';
    return { level: 'trouble', text: `No link, ${since}. This phone goes on alone.${wait}` };
  }
  if (keeping === 'cannot')
    return { level: 'note', text: 'This phone cannot keep the night: do not close the page.' };
  return null;
}

/** "Assistant live", "Assistant lost, 40 s", "Assistant live, screen off". */
export function otherPhoneWords(phone: {
  readonly role: Role;
  readonly name: string;
  readonly link: Link;
  readonly visible: boolean;
  readonly ageMs: number;
}): string {
  const who = phone.name || ROLE_WORDS[phone.role];
  const age = phone.link === 'live' ? '' : ` ${ageWords(phone.ageMs)}`;
  const dark = phone.link !== 'lost' && !phone.visible ? ', screen off' : '';
  return `${who} ${phone.link}${age}${dark}`;
}
