import { readNight } from '../../shared/document/snapshot.ts';
import { asId, type VenueId } from '../../shared/ids.ts';
import { API, venuePath } from '../../shared/messages/http.ts';
import { type VenueFile, venueOf } from '../../shared/venue/venue-file.ts';
import { demoDocument } from './document-night.ts';
import type { PairedPhone } from './server-scene.ts';

/** The hall of the demo night as a venue. */
export function demoVenue(name = 'The old mill', savedAt = 1_780_000_000_000): VenueFile {
  const saved = venueOf(readNight(demoDocument().doc), name, savedAt);
  if (!saved.ok) throw new Error(saved.reason);
  return saved.venue;
}

export const venueId = (text: string) => asId<VenueId>(text);

/** Where a phone asks for the library, for a venue, or for its restoring. */
export const venueUrl = ({ url, night, role }: PairedPhone, venue?: string, part = ''): string =>
  `${url}${venue === undefined ? API.venues : venuePath(venue)}${part}?night=${night}&as=${role}`;

/** Asks a venue route as a phone does; a body goes as JSON. */
export const askVenue = (
  phone: PairedPhone,
  method: string,
  { venue, part = '', body }: { venue?: string; part?: string; body?: unknown } = {},
): Promise<Response> =>
  fetch(venueUrl(phone, venue, part), {
    method,
    headers: { cookie: phone.cookie, ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    body: body === undefined ? null : JSON.stringify(body),
  });
