import { randomBytes } from 'node:crypto';
import { makeId, type NightId } from '../../shared/ids.ts';
import type { Role } from '../../shared/roles.ts';
import { secretHash } from './hash.ts';

/** What a pairing secret lets its bearer become, once. */
export interface Admission {
  readonly night: NightId;
  readonly role: Role;
  /** Minted at the terminal, or asked for by a lead's phone. */
  readonly by: 'terminal' | 'lead';
}

/** A lead's code from the terminal: lasts a long day, for it is minted before the drive to the venue. */
export const LEAD_CODE_MS = 12 * 60 * 60 * 1000;
/** An invitation is scanned across a table at once. */
export const INVITE_MS = 10 * 60 * 1000;

/** So many unused secrets are kept; the oldest fall out. */
const MOST_KEPT = 200;

/**
 * Single-use pairing secrets. Kept in memory only, hashed: a restart voids them all, and a copy of
 * the process's memory does not pair anybody.
 */
export class Secrets {
  readonly #now: () => number;
  readonly #kept = new Map<string, Admission & { readonly expiresAt: number }>();

  constructor(now: () => number) {
    this.#now = now;
  }

  /** A fresh secret of about 131 bits, and when it ends. */
  mint(admission: Admission, lifeMs: number): { secret: string; expiresAt: number } {
    this.#sweep();
    const secret = makeId(randomBytes);
    const expiresAt = this.#now() + lifeMs;
    this.#kept.set(secretHash(secret), { ...admission, expiresAt });
    return { secret, expiresAt };
  }

  /** Uses a secret up; null when it is wrong, used or over, which look the same from outside. */
  take(secret: string): Admission | null {
    const hash = secretHash(secret);
    const found = this.#kept.get(hash);
    if (!found) return null;
    this.#kept.delete(hash);
    if (found.expiresAt <= this.#now()) return null;
    return { night: found.night, role: found.role, by: found.by };
  }

  #sweep(): void {
    for (const [hash, { expiresAt }] of this.#kept) {
      if (expiresAt <= this.#now() || this.#kept.size >= MOST_KEPT) this.#kept.delete(hash);
    }
  }
}
