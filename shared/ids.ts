declare const brand: unique symbol;
type Branded<Name extends string> = string & { readonly [brand]: Name };

/** Ids are branded strings: a stand's id cannot be passed where a carry's is wanted. */
export type NightId = Branded<'night'>;
export type PersonId = Branded<'person'>;
export type StandId = Branded<'stand'>;
export type FeatureId = Branded<'feature'>;
export type GearId = Branded<'gear'>;
export type MomentId = Branded<'moment'>;
export type AnnouncementId = Branded<'announcement'>;
export type CarryId = Branded<'carry'>;
export type RevisionId = Branded<'revision'>;
export type FrameId = Branded<'frame'>;
export type ReadingId = Branded<'reading'>;
export type VenueId = Branded<'venue'>;

/** What an id may look like: it stands in URLs, file names and flat keys, so no slash and no dot. */
export const ID_PATTERN = /^[A-Za-z0-9_-]{1,64}$/;

const ALPHABET = '0123456789abcdefghijkmnpqrstvwxyz'; // no l, o, u: read aloud and typed by hand without doubt

/**
 * A fresh id of 26 signs drawn from 33, about 131 bits.
 *
 * @param randomBytes gives that many random bytes; passed in because this folder has neither DOM nor Node
 */
export function makeId(randomBytes: (count: number) => Uint8Array): string {
  let id = '';
  while (id.length < 26) {
    for (const byte of randomBytes(40)) {
      // 231 = 7 · 33: bytes above would make the first signs likelier than the last.
      if (byte < 231 && id.length < 26) id += ALPHABET[byte % 33];
    }
  }
  return id;
}

/** Takes a string that is known to be an id (it came from a key or a parser) for one. */
export const asId = <Id extends string>(text: string): Id => text as Id;
