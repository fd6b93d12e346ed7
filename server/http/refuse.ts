import type { ErrorRequestHandler, Response } from 'express';
import type { HttpRefusal } from '../../shared/messages/http.ts';
import type { Log } from '../logging.ts';

const STATUS: Readonly<Record<HttpRefusal, number>> = {
  malformed: 400,
  unpaired: 401,
  'bad-secret': 403,
  'not-allowed': 403,
  'no-such-night': 404,
  'no-such-venue': 404,
  'library-full': 409,
  'too-many': 429,
  failed: 500,
};

/** Answers with a reason that the screen words; the status follows from it unless a closer one is given. */
export function refuse(response: Response, reason: HttpRefusal, status = STATUS[reason]): void {
  response.status(status).set('Cache-Control', 'no-store').json({ reason });
}

/** The last handler: what the body parser threw is the phone's fault and says so, anything else is ours and is logged. */
export function errorHandler(log: Log): ErrorRequestHandler {
  return (error, _request, response, next) => {
    if (response.headersSent) return next(error);
    const status = error instanceof Error && 'status' in error ? Number(error.status) : 500;
    if (status >= 400 && status < 500) return refuse(response, 'malformed', status);
    log.error({ error }, 'a request failed');
    refuse(response, 'failed');
  };
}
