import express, { type Request, type RequestHandler, type Response, Router } from 'express';
import { asId, ID_PATTERN, type NightId, type VenueId } from '../../shared/ids.ts';
import {
  API,
  type HttpRefusal,
  renameVenueSchema,
  type VenueList,
  type VenueSummary,
  venuePath,
} from '../../shared/messages/http.ts';
import { isRole } from '../../shared/roles.ts';
import { MOST_VENUE_BYTES, parseVenue, type VenueFile } from '../../shared/venue/venue-file.ts';
import type { Log } from '../logging.ts';
import type { Time } from '../time.ts';
import type { VenueLibrary } from '../venues/venue-library.ts';
import { type PairedDeps, pairedPhone } from './paired-phone.ts';
import { refuse } from './refuse.ts';

export interface VenueDeps extends PairedDeps {
  readonly venues: VenueLibrary;
  readonly time: Time;
  readonly log: Log;
}

/** A new name takes no more. */
const LARGEST_RENAME_BYTES = 1024;

/** Lets a paired phone through that says for which night and role it asks; to write, only the lead's. */
function letIn(deps: VenueDeps, may: 'read' | 'write'): RequestHandler {
  return (request, response, next) => {
    const { night, as } = request.query;
    if (typeof night !== 'string' || !ID_PATTERN.test(night) || !isRole(as))
      return refuse(response, 'malformed');
    if (!pairedPhone(deps, request, response, asId<NightId>(night), as)) return;
    if (may === 'write' && as !== 'lead') return refuse(response, 'not-allowed');
    next();
  };
}

function venueIn(request: Request): VenueId | null {
  const { venue } = request.params;
  return typeof venue === 'string' && ID_PATTERN.test(venue) ? asId<VenueId>(venue) : null;
}

/** A route about one venue: answers with what `act` gives, or with the reason. */
const about =
  (act: (id: VenueId, request: Request) => Promise<VenueSummary | VenueFile | HttpRefusal>): RequestHandler =>
  async (request: Request, response: Response) => {
    const id = venueIn(request);
    const answer = id === null ? 'malformed' : await act(id, request);
    if (typeof answer === 'string') return refuse(response, answer);
    response.set('Cache-Control', 'no-store').json(answer);
  };

/** The venue library. Anybody paired reads it; the lead saves, renames, removes and restores. */
export function venueRoutes(deps: VenueDeps): Router {
  const { venues, time, log } = deps;
  const router = Router();
  const one = venuePath(':venue');
  const [reads, writes] = [letIn(deps, 'read'), letIn(deps, 'write')];
  router.get(API.venues, reads, (_request, response) => {
    response.set('Cache-Control', 'no-store').json({ venues: [...venues.list()] } satisfies VenueList);
  });
  router.get(
    one,
    reads,
    about(async (id) => (await venues.read(id)) ?? 'no-such-venue'),
  );
  // Nobody's megabyte is taken in before it is known whose it is: the body is read after the phone.
  router.put(
    one,
    writes,
    express.json({ limit: MOST_VENUE_BYTES }),
    about(async (id, request) => {
      const parsed = parseVenue(request.body);
      if (!parsed.ok) {
        log.warn({ venue: id, why: parsed.reason }, 'a venue was refused');
        return 'malformed';
      }
      return (await venues.save(id, parsed.venue)) ?? 'library-full';
    }),
  );
  router.patch(
    one,
    writes,
    express.json({ limit: LARGEST_RENAME_BYTES }),
    about(async (id, request) => {
      const wish = renameVenueSchema.safeParse(request.body);
      if (!wish.success) return 'malformed';
      return (await venues.rename(id, wish.data.name)) ?? 'no-such-venue';
    }),
  );
  router.delete(
    one,
    writes,
    about(async (id) => (await venues.remove(id, time.now())) ?? 'no-such-venue'),
  );
  router.post(
    `${one}/restore`,
    writes,
    about(async (id) => (await venues.restore(id)) ?? 'no-such-venue'),
  );
  return router;
}
