/** What waits for the disk: an operation and the two ways its promise can end. */
interface Waiting<Operation> {
  readonly operations: readonly Operation[];
  readonly done: () => void;
  readonly failed: (error: unknown) => void;
}

/**
 * Gathers writes: while one batch is on its way to the disk the next collects, so that many small writes
 * cost one flush. A write that finds nothing on its way starts at once. Promises end in the order of the calls.
 */
export class GroupCommit<Operation> {
  readonly #write: (operations: readonly Operation[]) => Promise<void>;
  #collecting: Waiting<Operation>[] = [];
  #writing: Promise<void> | null = null;

  /** @param write takes a batch to the disk, all or nothing, and resolves when it is durable */
  constructor(write: (operations: readonly Operation[]) => Promise<void>) {
    this.#write = write;
  }

  /** Resolves when the operations are durable; they are written together or not at all. */
  add(operations: readonly Operation[]): Promise<void> {
    return new Promise((done, failed) => {
      this.#collecting.push({ operations, done, failed });
      if (!this.#writing) this.#begin();
    });
  }

  /** Resolves when everything added so far has ended, well or badly. */
  async settled(): Promise<void> {
    while (this.#writing) await this.#writing;
  }

  #begin(): void {
    const batch = this.#collecting;
    this.#collecting = [];
    const operations = batch.length === 1 ? (batch[0]?.operations ?? []) : batch.flatMap((w) => w.operations);
    this.#writing = this.#write(operations).then(
      () => this.#end(() => batch.forEach((waiting) => void waiting.done())),
      (error: unknown) => this.#end(() => batch.forEach((waiting) => void waiting.failed(error))),
    );
  }

  #end(tell: () => void): void {
    this.#writing = null;
    // The next batch starts before anybody hears of this one: the disk never waits for the network.
    if (this.#collecting.length > 0) this.#begin();
    tell();
  }
}
