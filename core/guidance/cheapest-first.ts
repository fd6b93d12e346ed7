/** A queue that gives the cheapest entry first; costs in metres, entries are numbers of corners. */
export type CheapestFirst = {
  readonly put: (entry: number, costM: number) => void;
  /** The cheapest entry, taken out; null when there is none */
  readonly take: () => { readonly entry: number; readonly costM: number } | null;
};

/**
 * A binary heap. Entries of one cost come out in any order, but always the same.
 *
 * @source a-star
 */
export function createCheapestFirst(): CheapestFirst {
  const entries: number[] = [];
  const costs: number[] = [];
  const swap = (a: number, b: number) => {
    [entries[a], entries[b]] = [entries[b] as number, entries[a] as number];
    [costs[a], costs[b]] = [costs[b] as number, costs[a] as number];
  };
  const isCheaper = (a: number, b: number) => (costs[a] as number) < (costs[b] as number);
  const sink = () => {
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      let least = at;
      if (left < entries.length && isCheaper(left, least)) least = left;
      if (right < entries.length && isCheaper(right, least)) least = right;
      if (least === at) return;
      swap(at, least);
      at = least;
    }
  };
  return {
    put: (entry, costM) => {
      entries.push(entry);
      costs.push(costM);
      for (let at = entries.length - 1; at > 0; ) {
        const parent = (at - 1) >> 1;
        if (!isCheaper(at, parent)) return;
        swap(at, parent);
        at = parent;
      }
    },
    take: () => {
      const [entry, costM] = [entries[0], costs[0]];
      if (entry === undefined || costM === undefined) return null;
      swap(0, entries.length - 1);
      entries.pop();
      costs.pop();
      sink();
      return { entry, costM };
    },
  };
}
