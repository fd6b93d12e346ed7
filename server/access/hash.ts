import { createHash } from 'node:crypto';

/**
 * SHA-256 of a secret, as hex: what is kept in its place. Secrets and tokens are random with 128 bits and more, so
 * no salt and no slow hash is needed, and finding one by its hash gives nothing away in time: what the lookup's
 * duration could tell is about the hash, from which the secret cannot be worked back.
 */
export const secretHash = (secret: string): string => createHash('sha256').update(secret).digest('hex');
