import type { IncomingMessage } from 'node:http';
import type { RequestHandler } from 'express';
import helmet from 'helmet';
import { isLocalHost } from '../network/own-host.ts';

/** The sockets of this very host; older phones do not count them to 'self'. */
const ownSockets = (request: IncomingMessage): string =>
  isLocalHost(request.headers.host) ? `ws://${request.headers.host} wss://${request.headers.host}` : "'self'";

/**
 * What a page of ours may load: only what this server sends. The two headers that would lead a phone to https are
 * off, since on a hotspot there is none to lead it to.
 */
export function securityHeaders(): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        connectSrc: ["'self'", ownSockets],
        imgSrc: ["'self'", 'data:', 'blob:'],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        workerSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: false,
    // These two need https: on plain http a browser ignores them and complains.
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
    referrerPolicy: { policy: 'no-referrer' },
    xFrameOptions: { action: 'deny' },
  });
}
