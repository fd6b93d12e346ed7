import type * as Y from 'yjs';
import * as z from 'zod/mini';
import { isSimple } from '../../core/geometry/polygon.ts';
import { checkedFeature } from '../document/check-features.ts';
import { newPlan } from '../document/commands/change-plan.ts';
import { id, instant, name } from '../document/fields.ts';
import type { Outcome } from '../document/outcome.ts';
import { entrySchemas, MOST_FEATURES } from '../document/schema.ts';
import type { Night } from '../document/snapshot.ts';
import type { Hand } from '../document/transact.ts';

const FORMAT = 'hushmark-venue';
const VERSION = 1;

/** A venue's file is no larger than this [bytes]; nor is what the library takes. */
export const MOST_VENUE_BYTES = 1_000_000;

const venueSchema = z.object({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  name,
  savedAt: instant,
  room: entrySchemas['room/shape'],
  roof: entrySchemas['room/roof'],
  finishes: entrySchemas['room/finishes'],
  features: z.record(id, entrySchemas.feature),
});

/** A room with everything on its plan as one JSON value: what the library keeps and a file holds. */
export type VenueFile = z.infer<typeof venueSchema>;

export type VenueOutcome =
  | { readonly ok: true; readonly venue: VenueFile }
  /** Why not, in plain words. */
  | { readonly ok: false; readonly reason: string };

const no = (reason: string): VenueOutcome => ({ ok: false, reason });

/** How long a text is when it is sent or stored as UTF-8 [bytes]. */
function bytesOf(text: string): number {
  let bytes = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}

const TOO_LARGE = 'It is larger than 1 MB: no room saved by Hushmark is.';

/** The value of a JSON text; null where it is none. */
function jsonIn(text: string): { readonly value: unknown } | null {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return null;
  }
}

function headProblem(value: unknown): string | null {
  if (typeof value !== 'object' || value === null || !('format' in value) || value.format !== FORMAT)
    return 'It is not a room saved by Hushmark.';
  const version = 'version' in value ? value.version : undefined;
  if (typeof version === 'number' && version > VERSION)
    return `A newer Hushmark saved it (version ${version}); this one reads version ${VERSION}.`;
  return version === VERSION ? null : 'It does not say which version it is.';
}

/** Counted before every entry is looked at. */
const countOf = (features: unknown): number =>
  typeof features === 'object' && features !== null ? Object.keys(features).length : 0;

function bodyProblem(venue: VenueFile): string | null {
  if (!isSimple(venue.room.outline)) return 'Its walls cross or touch each other.';
  const crossing = Object.values(venue.features).find((feature) => !checkedFeature(feature).ok);
  return crossing ? `The outline of “${crossing.name}” crosses or touches itself.` : null;
}

/**
 * Reads a venue from the text of a file, or from a value that was JSON.
 *
 * @returns the venue with the fields that this version knows; else why not, in plain words: not JSON, too large, another
 *   format, a newer version, or which field does not fit
 */
export function parseVenue(input: unknown): VenueOutcome {
  if (typeof input === 'string' && bytesOf(input) > MOST_VENUE_BYTES) return no(TOO_LARGE);
  const read = typeof input === 'string' ? jsonIn(input) : { value: input };
  if (!read) return no('It is not JSON: perhaps another file, or a part of one.');
  const { value } = read;
  const problem = headProblem(value);
  if (problem !== null) return no(problem);
  const count = countOf((value as { readonly features?: unknown }).features);
  if (count > MOST_FEATURES)
    return no(`It has ${count} things on its plan; ${MOST_FEATURES} is the most that a plan holds.`);
  const checked = venueSchema.safeParse(value);
  if (!checked.success) {
    const path = checked.error.issues[0]?.path ?? [];
    return no(`Its field ${path.map(String).join('.')} is missing or does not fit.`);
  }
  const inside = bodyProblem(checked.data);
  return inside === null ? { ok: true, venue: checked.data } : no(inside);
}

/**
 * The room of a night as a venue.
 *
 * @param name what the venue is called; 1 to 80 signs
 * @param now when it is saved [ms since 1970]
 * @returns the venue; else why there is none, in plain words: no room yet, a name that does not fit, too much on the plan
 */
export function venueOf(night: Night, name: string, now: number): VenueOutcome {
  if (!night.room) return no('This night has no room yet.');
  const features = Object.fromEntries(
    night.features.map(({ id: featureId, ...feature }) => [featureId, feature]),
  );
  const { room, roof, finishes } = night;
  const venue = { format: FORMAT, version: VERSION, name, savedAt: now, room, roof, finishes, features };
  // Through the text, as a file would go: what comes back is what was saved, in its bytes too.
  return parseVenue(JSON.stringify(venue));
}

/** Puts a venue in the place of the night's room: walls, roof, finishes, everything on the plan. One transaction. */
export const useVenue = (doc: Y.Doc, hand: Hand, venue: VenueFile): Outcome =>
  newPlan(doc, hand, venue, venue.name);
