import type { NightId, PersonId, VenueId } from '../../shared/ids.ts';
import type { Role } from '../../shared/roles.ts';

/** A night as the list of nights shows it; the night itself is its updates. */
export interface NightRecord {
  readonly id: NightId;
  readonly title: string;
  readonly madeAt: number;
}

/** A paired phone. Its token is kept only as a hash, which is the key it is stored under. */
export interface Device {
  readonly night: NightId;
  readonly role: Role;
  readonly person: PersonId;
  readonly name: string;
  readonly pairedAt: number;
}

/** A venue as the list of the library shows it; the venue itself is the text beside it. */
export interface VenueRecord {
  readonly id: VenueId;
  readonly name: string;
  readonly savedAt: number;
  readonly featureCount: number;
  /** When it was removed from the library; null while it is there. */
  readonly removedAt: number | null;
}

export interface StoredUpdates {
  /** Oldest first. */
  readonly updates: readonly Uint8Array[];
  /** Updates whose bytes do not match their checksum: left where they are, not given out. */
  readonly damaged: number;
}

/**
 * Where nights, paired phones and venues are kept. Every promise that resolves means: it would be there after the
 * power was cut. A promise that rejects means: it may or may not be there.
 */
export interface Store {
  /** Where it is, for people: a path, or words. */
  readonly where: string;
  listNights(): Promise<readonly NightRecord[]>;
  /**
   * A night and its first update, both or neither.
   *
   * @throws Error if there is a night of this id
   */
  createNight(night: NightRecord, firstUpdate: Uint8Array): Promise<void>;
  /** The updates of a night; none for a night that there is not. */
  loadNight(id: NightId): Promise<StoredUpdates>;
  /** Adds an update behind all others of the night; the bytes must not be changed afterwards. */
  append(id: NightId, update: Uint8Array): Promise<void>;
  /** Puts one update in the place of all those of the night, all at once. Call it while nobody appends. */
  compact(id: NightId, merged: Uint8Array): Promise<void>;
  listDevices(): Promise<ReadonlyMap<string, Device>>;
  putDevice(tokenHash: string, device: Device): Promise<void>;
  deleteDevice(tokenHash: string): Promise<void>;
  listVenues(): Promise<readonly VenueRecord[]>;
  /** The text of a venue as it was put; null where there is none. */
  loadVenue(id: VenueId): Promise<string | null>;
  /** A venue's record, and its text with it, both or neither; without a text the stored one stays. */
  putVenue(venue: VenueRecord, text?: string): Promise<void>;
  /** Waits for what is being written, then lets go of everything. */
  close(): Promise<void>;
}
