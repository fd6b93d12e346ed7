import {
  API,
  type HttpRefusal,
  type Membership,
  membershipSchema,
  refusalSchema,
} from '../../shared/messages/http.ts';
import type { Role } from '../../shared/roles.ts';

/** What the server says of this phone; `no-answer` when it could not be asked. */
export type Answer<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly reason: HttpRefusal | 'no-answer' };

/** Memberships have a prefix of their own: other things this app keeps are no JSON. */
const MEMORY = 'hushmark/member/';
const memoryKey = (night: string, role: Role) => `${MEMORY}${role}/${night}`;

/** Asks one of the server's routes; never throws. Without a method, a body makes it a POST and none a GET. */
export async function ask<Value>(
  path: string,
  parse: (body: unknown) => Value | null,
  body?: unknown,
  method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE' = body === undefined ? 'GET' : 'POST',
): Promise<Answer<Value>> {
  try {
    const response = await fetch(path, {
      method,
      headers: body === undefined ? {} : { 'content-type': 'application/json' },
      body: body === undefined ? null : JSON.stringify(body),
      signal: AbortSignal.timeout(8000),
    });
    const answer: unknown = await response.json();
    if (!response.ok) {
      const refusal = refusalSchema.safeParse(answer);
      return { ok: false, reason: refusal.success ? refusal.data.reason : 'failed' };
    }
    const value = parse(answer);
    return value === null ? { ok: false, reason: 'malformed' } : { ok: true, value };
  } catch {
    return { ok: false, reason: 'no-answer' };
  }
}

const parseMembership = (body: unknown): Membership | null => {
  const parsed = membershipSchema.safeParse(body);
  return parsed.success ? parsed.data : null;
};

function remember(membership: Membership): void {
  try {
    localStorage.setItem(memoryKey(membership.night, membership.role), JSON.stringify(membership));
  } catch {
    // A phone that keeps nothing still works while the server answers.
  }
}

/** The memberships this phone remembers, for the start page and for work without the server. */
export function remembered(): Membership[] {
  const found: Membership[] = [];
  try {
    for (let index = 0; index < localStorage.length; index++) {
      const name = localStorage.key(index);
      if (!name?.startsWith(MEMORY)) continue;
      const membership = parseMembership(JSON.parse(localStorage.getItem(name) ?? 'null'));
      if (membership) found.push(membership);
    }
  } catch {
    return found;
  }
  return found;
}

/** Trades the secret of a pairing link for a place in the night. */
export async function pair(secret: string, name: string): Promise<Answer<Membership>> {
  const answer = await ask(API.pair, parseMembership, { secret, name });
  if (answer.ok) remember(answer.value);
  return answer;
}

/** Who this phone is in a night: the server's word, or, when it does not answer, what the phone remembers. */
export async function membershipFor(night: string, role: Role): Promise<Answer<Membership>> {
  const answer = await ask(
    `${API.membership}?night=${encodeURIComponent(night)}&as=${role}`,
    parseMembership,
  );
  if (answer.ok) remember(answer.value);
  if (answer.ok || answer.reason !== 'no-answer') return answer;
  const known = remembered().find((membership) => membership.night === night && membership.role === role);
  return known ? { ok: true, value: known } : answer;
}
