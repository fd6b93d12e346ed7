import { generateNKeysBetween } from 'fractional-indexing';
import type { MomentId } from '../ids.ts';
import type { Placed } from './moment-order.ts';
import { entrySchemas } from './schema.ts';

export interface NewPlaces {
  /** The places asked for, in order. */
  readonly places: readonly string[];
  /** Moments that had to make room: their new places. */
  readonly moved: readonly { readonly id: MomentId; readonly place: string }[];
}

const isPlace = (place: string): boolean => entrySchemas['moment/place'].safeParse(place).success;

/** So many keys between two others; null where the two are no keys, or the new ones became too long. */
function keysBetween(lower: string | null, upper: string | null, count: number): string[] | null {
  try {
    const keys = generateNKeysBetween(lower, upper, count);
    return keys.every(isPlace) ? keys : null;
  } catch {
    return null;
  }
}

/**
 * So many new places right after a moment. The moments around keep theirs, but where two lie at one place (they were
 * added apart) nothing fits between them: then those that follow at that place get new ones too. If places cannot be used
 * at all (too long, or written by something else), all get new ones, in the same order.
 *
 * Source: D. Greenspan, "Implementing Fractional Indexing" (2020), by way of the fractional-indexing package.
 *
 * @param ordered all moments in their order, without those that are being moved
 * @param after the id of one of them; null: before all of them
 */
export function placesAfter(ordered: readonly Placed[], after: string | null, count: number): NewPlaces {
  const index = ordered.findIndex(({ id }) => id === after);
  const lower = ordered[index]?.place ?? null;
  const following = ordered.slice(index + 1);
  const tied = following.filter(({ place }) => place === lower);
  const upper = following[tied.length]?.place ?? null;
  const keys = keysBetween(lower, upper, count + tied.length);
  if (keys) return { places: keys.slice(0, count), moved: withPlaces(tied, keys.slice(count)) };
  const fresh = generateNKeysBetween(null, null, ordered.length + count);
  const before = ordered.slice(0, index + 1);
  return {
    places: fresh.slice(before.length, before.length + count),
    moved: withPlaces(
      [...before, ...following],
      [...fresh.slice(0, before.length), ...fresh.slice(before.length + count)],
    ),
  };
}

const withPlaces = (moments: readonly Placed[], places: readonly string[]): NewPlaces['moved'] =>
  moments.map(({ id, place }, index) => ({ id, place: places[index] ?? place }));
