import { type Request, type Response, Router } from 'express';
import { facePath } from '../../shared/messages/http.ts';
import { ROLES } from '../../shared/roles.ts';
import type { Asset } from './assets.ts';

const INDEX = '/index.html';
const YEAR_S = 365 * 24 * 60 * 60;

function send(request: Request, response: Response, asset: Asset): void {
  response.set({
    'Content-Type': asset.type,
    'Cache-Control': asset.immutable ? `public, max-age=${YEAR_S}, immutable` : 'no-cache',
    ETag: asset.etag,
    Vary: 'Accept-Encoding',
  });
  if (request.get('If-None-Match') === asset.etag) return void response.status(304).end();
  if (asset.gzip && request.acceptsEncodings('gzip')) {
    response.set('Content-Encoding', 'gzip').send(asset.gzip);
    return;
  }
  response.send(asset.body);
}

/** The client's files, and its one page under the path of every face. */
export function staticFiles(assets: ReadonlyMap<string, Asset>): Router {
  const router = Router();
  const page = (request: Request, response: Response) => {
    const index = assets.get(INDEX);
    if (index) send(request, response, index);
    else response.status(503).type('text').send('The app has not been built yet: npm run build\n');
  };
  router.get(['/', ...ROLES.map((role) => facePath(role, ':night'))], page);
  router.use((request, response, next) => {
    const asset =
      request.method === 'GET' || request.method === 'HEAD' ? assets.get(request.path) : undefined;
    if (asset) send(request, response, asset);
    else next();
  });
  return router;
}
