import type { NightId, VenueId } from '../../shared/ids.ts';
import type { Device, NightRecord, Store, VenueRecord } from './store.ts';

/** A store that is gone with the process: for tests and for trying things out. */
export function createMemoryStore(): Store {
  const nights = new Map<NightId, { record: NightRecord; updates: Uint8Array[] }>();
  const devices = new Map<string, Device>();
  const venues = new Map<VenueId, VenueRecord>();
  const venueTexts = new Map<VenueId, string>();
  return {
    where: 'memory only: nothing is kept',
    listNights: async () => [...nights.values()].map(({ record }) => record),
    createNight: async (record, firstUpdate) => {
      if (nights.has(record.id)) throw new Error(`there is a night ${record.id} already`);
      nights.set(record.id, { record, updates: [firstUpdate] });
    },
    loadNight: async (id) => ({ updates: [...(nights.get(id)?.updates ?? [])], damaged: 0 }),
    append: async (id, update) => {
      const night = nights.get(id);
      if (!night) throw new Error(`there is no night ${id}`);
      night.updates.push(update);
    },
    compact: async (id, merged) => {
      const night = nights.get(id);
      if (!night) throw new Error(`there is no night ${id}`);
      night.updates = [merged];
    },
    listDevices: async () => new Map(devices),
    putDevice: async (tokenHash, device) => void devices.set(tokenHash, device),
    deleteDevice: async (tokenHash) => void devices.delete(tokenHash),
    listVenues: async () => [...venues.values()],
    loadVenue: async (id) => venueTexts.get(id) ?? null,
    putVenue: async (venue, text) => {
      venues.set(venue.id, venue);
      if (text !== undefined) venueTexts.set(venue.id, text);
    },
    close: async () => undefined,
  };
}
