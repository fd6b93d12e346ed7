import {
  API,
  type VenueSummary,
  venueListSchema,
  venuePath,
  venueSummarySchema,
} from '../../shared/messages/http.ts';
import type { Role } from '../../shared/roles.ts';
import { parseVenue, type VenueFile } from '../../shared/venue/venue-file.ts';
import { type Answer, ask } from './membership.ts';

/** Who asks the library: a phone that is paired for this night in this role. */
export interface Asker {
  readonly night: string;
  readonly role: Role;
}

const at = (path: string, { night, role }: Asker) => `${path}?night=${encodeURIComponent(night)}&as=${role}`;
const venueAt = (venue: string, asker: Asker, part = '') =>
  at(`${venuePath(encodeURIComponent(venue))}${part}`, asker);

const summaryIn = (body: unknown): VenueSummary | null => {
  const parsed = venueSummarySchema.safeParse(body);
  return parsed.success ? parsed.data : null;
};

/** The venues of the library by name; removed ones are among them, with when. */
export const listVenues = (asker: Asker): Promise<Answer<readonly VenueSummary[]>> =>
  ask(at(API.venues, asker), (body) => {
    const parsed = venueListSchema.safeParse(body);
    return parsed.success ? parsed.data.venues : null;
  });

export const readVenue = (asker: Asker, venue: string): Promise<Answer<VenueFile>> =>
  ask(venueAt(venue, asker), (body) => {
    const parsed = parseVenue(body);
    return parsed.ok ? parsed.venue : null;
  });

/** Saves a venue under an id of the caller's (`hand.newId()`): pressing twice, or again after no answer, saves one. */
export const saveVenue = (asker: Asker, venue: string, file: VenueFile): Promise<Answer<VenueSummary>> =>
  ask(venueAt(venue, asker), summaryIn, file, 'PUT');

export const renameVenue = (asker: Asker, venue: string, name: string): Promise<Answer<VenueSummary>> =>
  ask(venueAt(venue, asker), summaryIn, { name }, 'PATCH');

/** The venue leaves the library; `restoreVenue` is the undo. */
export const removeVenue = (asker: Asker, venue: string): Promise<Answer<VenueSummary>> =>
  ask(venueAt(venue, asker), summaryIn, undefined, 'DELETE');

export const restoreVenue = (asker: Asker, venue: string): Promise<Answer<VenueSummary>> =>
  ask(venueAt(venue, asker, '/restore'), summaryIn, undefined, 'POST');
