/**
 * What is believed of the things that nobody can look up, each as an offset in stops from what the gear list and
 * the room say: means and covariance of a normal distribution. 0 everywhere is the gear list itself.
 */
export type Belief = {
  readonly ids: readonly string[];
  /** Offset of each unknown [stops] */
  readonly means: readonly number[];
  /** Row-major, as many rows as ids [stops²] */
  readonly covariance: readonly number[];
};

/** One thing to be found out, and how far off it usually is (one standard deviation) [stops]. */
export type Unknown = { readonly id: string; readonly sdStops: number };

/**
 * How far off things usually are before anything was tried [stops].
 * ASSUMPTION: a head's leaflet is about 0.4 stop off; a loss of umbrella or card that nobody measured, and what
 * a room whose finishes were judged by eye sends back, about 0.6; an ambient reading taken elsewhere in the
 * room about 0.3. Together: within about a stop before the first test frame.
 * @source own-estimate
 */
export const PRIOR_SD_STOPS = { head: 0.4, modifier: 0.6, room: 0.6, ambient: 0.3 } as const;

/** No head, cloth or room is this far from what is written on it; wider spreads would only overflow. */
const WIDEST_SD_STOPS = 20;

/**
 * What is believed before any test frame: every offset 0, each with its own spread, none tied to another.
 *
 * @param unknowns each once; of two with one id the first counts. A spread that is not above zero means: known
 * @returns means [stops] and covariance [stops²]
 * @source own-estimate
 */
export function priorBelief(unknowns: readonly Unknown[]): Belief {
  const first = unknowns.filter(({ id }, at) => unknowns.findIndex((other) => other.id === id) === at);
  const covariance = new Array<number>(first.length ** 2).fill(0);
  for (const [at, { sdStops }] of first.entries()) {
    const sd = sdStops > 0 ? Math.min(sdStops, WIDEST_SD_STOPS) : 0;
    covariance[at * first.length + at] = sd * sd;
  }
  return { ids: first.map(({ id }) => id), means: first.map(() => 0), covariance };
}

/**
 * The offset of one unknown.
 *
 * @returns mean and standard deviation [stops]; null when the belief does not have it
 * @source bayes-normal
 */
export function offsetOf(
  belief: Belief,
  id: string,
): { readonly meanStops: number; readonly sdStops: number } | null {
  const at = belief.ids.indexOf(id);
  const mean = belief.means[at];
  if (mean === undefined) return null;
  const variance = belief.covariance[at * belief.ids.length + at] ?? 0;
  return { meanStops: mean, sdStops: Math.sqrt(Math.max(0, variance)) };
}
