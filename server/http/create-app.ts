import express, { type Express } from 'express';
import { API } from '../../shared/messages/http.ts';
import { isSameOrigin } from '../network/own-host.ts';
import type { Asset } from './assets.ts';
import { type PairingDeps, pairingRoutes } from './pairing-routes.ts';
import { errorHandler, refuse } from './refuse.ts';
import { securityHeaders } from './security-headers.ts';
import { staticFiles } from './static-files.ts';
import { type VenueDeps, venueRoutes } from './venue-routes.ts';

/** What anybody may know of the server's health. */
export interface Health {
  readonly ok: boolean;
  /** How many nights it holds. */
  readonly nights: number;
  readonly uptimeS: number;
}

export interface AppDeps extends PairingDeps, VenueDeps {
  readonly assets: ReadonlyMap<string, Asset>;
  readonly health: () => Health;
}

const LARGEST_BODY_BYTES = 4096;
const API_ROOT = '/api';

/** Everything the server says over HTTP. */
export function createApp(deps: AppDeps): Express {
  const app = express();
  app.disable('x-powered-by');
  app.use(securityHeaders());
  app.get(API.health, (_request, response) => {
    const health = deps.health();
    response
      .status(health.ok ? 200 : 503)
      .set('Cache-Control', 'no-store')
      .json(health);
  });
  app.use(API_ROOT, (request, response, next) => {
    if (isSameOrigin(request.headers)) return next();
    deps.log.warn({ reason: 'origin', route: request.path }, 'refused');
    refuse(response, 'not-allowed');
  });
  app.use(venueRoutes(deps));
  app.use(API_ROOT, express.json({ limit: LARGEST_BODY_BYTES }));
  app.use(pairingRoutes(deps));
  app.use(API_ROOT, (_request, response) => refuse(response, 'malformed', 404));
  app.use(staticFiles(deps.assets));
  app.use((_request, response) => void response.status(404).type('text').send('There is nothing here.\n'));
  app.use(errorHandler(deps.log));
  return app;
}
