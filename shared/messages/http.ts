import * as z from 'zod/mini';
import { ID_PATTERN } from '../ids.ts';
import { ROLES, type Role } from '../roles.ts';

const id = z.string().check(z.regex(ID_PATTERN));

/** What the pairing page posts: the secret from the link's fragment, and the name its person chose. */
export const pairRequestSchema = z.object({
  secret: z.string().check(z.minLength(20), z.maxLength(64)),
  name: z.string().check(z.minLength(1), z.maxLength(40)),
});

/** The answer: which face to open. The device token itself goes into an HttpOnly cookie. */
export const membershipSchema = z.object({
  night: id,
  title: z.string(),
  role: z.enum(ROLES),
  person: id,
  name: z.string(),
});
export type Membership = z.infer<typeof membershipSchema>;

/** The lead asks for a code that pairs one more phone. */
export const inviteRequestSchema = z.object({ night: id, as: z.enum(ROLES), role: z.enum(ROLES) });

export const inviteSchema = z.object({
  links: z.array(z.object({ url: z.string(), qr: z.string() })),
  expiresAt: z.number(),
});
/** Links with their QR codes (an SVG as text), one for each address of the server, the likeliest first. */
export type Invite = z.infer<typeof inviteSchema>;

/** A venue of the library as a list shows it. */
export const venueSummarySchema = z.object({
  id,
  name: z.string(),
  savedAt: z.number(),
  featureCount: z.number(),
  /** When it was removed; null while it is there. A removed one can be restored. */
  removedAt: z.nullable(z.number()),
});
export type VenueSummary = z.infer<typeof venueSummarySchema>;

export const venueListSchema = z.object({ venues: z.array(venueSummarySchema) });
export type VenueList = z.infer<typeof venueListSchema>;

export const renameVenueSchema = z.object({ name: z.string().check(z.minLength(1), z.maxLength(80)) });

/** Every refusal of the HTTP routes: a reason that the screen words. */
const REFUSALS = [
  'malformed',
  'unpaired',
  'not-allowed',
  'bad-secret',
  'no-such-night',
  'no-such-venue',
  'library-full',
  'too-many',
  'failed',
] as const;
export type HttpRefusal = (typeof REFUSALS)[number];
export const refusalSchema = z.object({ reason: z.enum(REFUSALS) });

export const API = {
  pair: '/api/pair',
  membership: '/api/membership',
  invite: '/api/invite',
  health: '/api/health',
  venues: '/api/venues',
} as const;

/** The path of one venue of the library; ids need no escaping. */
export const venuePath = (venue: string): string => `${API.venues}/${venue}`;

/** The name of the cookie that holds a device token: one per night and role, so one browser can be both. */
export const tokenCookie = (night: string, role: Role): string => `hushmark-${role}-${night}`;

/** The page of a face. */
export const facePath = (role: Role, night: string): string => `/${role}/${night}`;
/** The fragment of a pairing link. A fragment never reaches a server's log. */
export const pairFragment = (secret: string): string => `#pair=${secret}`;
