import { type Rate, TokenBucket } from './token-bucket.ts';

/** How many addresses are watched before the rested ones are forgotten. */
const SWEEP_ABOVE = 256;

/** Limits how often each address may try something. */
export class Attempts {
  readonly #rate: Rate;
  readonly #now: () => number;
  readonly #buckets = new Map<string, TokenBucket>();

  constructor(rate: Rate, now: () => number) {
    this.#rate = rate;
    this.#now = now;
  }

  /** Counts one attempt; false when this address has had its share. */
  allow(address: string): boolean {
    if (this.#buckets.size > SWEEP_ABOVE) this.#forgetRested();
    let bucket = this.#buckets.get(address);
    if (!bucket) {
      bucket = new TokenBucket(this.#rate, this.#now);
      this.#buckets.set(address, bucket);
    }
    return bucket.take();
  }

  #forgetRested(): void {
    for (const [address, bucket] of this.#buckets) if (bucket.isFull()) this.#buckets.delete(address);
  }
}
