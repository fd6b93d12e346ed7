export interface Rate {
  readonly perSecond: number;
  /** How much may come at once after a rest. */
  readonly burst: number;
}

/** Counts what someone sends: a bucket that fills steadily and is drawn from. */
export class TokenBucket {
  readonly #rate: Rate;
  readonly #now: () => number;
  #left: number;
  #filledAt: number;

  constructor(rate: Rate, now: () => number) {
    this.#rate = rate;
    this.#now = now;
    this.#left = rate.burst;
    this.#filledAt = now();
  }

  /** Draws `cost`; false, and nothing drawn, when there is not enough. A clock set back fills nothing. */
  take(cost = 1): boolean {
    const now = this.#now();
    const passedS = Math.max(0, now - this.#filledAt) / 1000;
    this.#left = Math.min(this.#rate.burst, this.#left + passedS * this.#rate.perSecond);
    this.#filledAt = now;
    if (cost > this.#left) return false;
    this.#left -= cost;
    return true;
  }

  /** Nothing was drawn for long enough: the bucket is as good as new. */
  isFull(): boolean {
    return this.take(0) && this.#left >= this.#rate.burst;
  }
}
