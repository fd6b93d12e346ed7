import { type Request, type Response, Router } from 'express';
import { renderSVG } from 'uqr';
import { asId, ID_PATTERN, type NightId } from '../../shared/ids.ts';
import {
  API,
  type Invite,
  inviteRequestSchema,
  type Membership,
  pairRequestSchema,
} from '../../shared/messages/http.ts';
import { isRole } from '../../shared/roles.ts';
import type { Attempts } from '../access/attempts.ts';
import { tokenHeader, tokenOf } from '../access/cookies.ts';
import { type Admission, INVITE_MS, type Secrets } from '../access/secrets.ts';
import type { Log } from '../logging.ts';
import type { Address } from '../network/addresses.ts';
import { hostsToOffer, pairLink } from '../network/links.ts';
import type { Device, NightRecord } from '../store/store.ts';
import type { Time } from '../time.ts';
import { type PairedDeps, pairedPhone } from './paired-phone.ts';
import { refuse } from './refuse.ts';

export interface PairingDeps extends PairedDeps {
  readonly secrets: Secrets;
  readonly attempts: Attempts;
  readonly time: Time;
  readonly log: Log;
  readonly addresses: () => readonly Address[];
  /** The port the server listens on. */
  readonly port: () => number;
  /** A phone has just been paired. */
  readonly onPaired: (device: Device, admission: Admission) => void;
  /** A wrong secret is answered so late; 0 answers at once. */
  readonly wrongSecretMs: number;
}

const membershipOf = ({ night, role, person, name }: Device, record: NightRecord): Membership => ({
  night,
  title: record.title,
  role,
  person,
  name,
});

const QR_BORDER = 4; // the quiet zone that ISO/IEC 18004 asks for, in modules

function pair(deps: PairingDeps) {
  return async (request: Request, response: Response): Promise<void> => {
    if (!deps.attempts.allow(request.ip ?? '')) {
      deps.log.warn({ reason: 'too-many', route: 'pair' }, 'refused');
      return refuse(response, 'too-many');
    }
    const body = pairRequestSchema.safeParse(request.body);
    const name = body.success ? body.data.name.trim() : '';
    if (!body.success || name === '') return refuse(response, 'malformed');
    const admission = deps.secrets.take(body.data.secret);
    const record = admission && deps.nightOf(admission.night);
    if (!admission || !record) {
      deps.log.warn({ reason: 'bad-secret', route: 'pair' }, 'refused');
      if (deps.wrongSecretMs === 0) return refuse(response, 'bad-secret');
      deps.time.after(deps.wrongSecretMs, () => refuse(response, 'bad-secret'));
      return;
    }
    const { night, role } = admission;
    const before = tokenOf(request.headers.cookie, night, role);
    const { token, device } = await deps.devices.pair({ night, role, name }, before, deps.time.now());
    deps.log.info({ night, role, person: device.person, by: admission.by }, 'paired');
    response.set({ 'Set-Cookie': tokenHeader(night, role, token), 'Cache-Control': 'no-store' });
    response.json(membershipOf(device, record));
    deps.onPaired(device, admission);
  };
}

function membership(deps: PairingDeps) {
  return (request: Request, response: Response) => {
    const { night, as } = request.query;
    if (typeof night !== 'string' || !ID_PATTERN.test(night) || !isRole(as))
      return refuse(response, 'malformed');
    const found = pairedPhone(deps, request, response, asId<NightId>(night), as);
    if (!found) return;
    response.set('Cache-Control', 'no-store').json(membershipOf(found.device, found.record));
  };
}

function invite(deps: PairingDeps) {
  return (request: Request, response: Response) => {
    const body = inviteRequestSchema.safeParse(request.body);
    if (!body.success) return refuse(response, 'malformed');
    const night = asId<NightId>(body.data.night);
    if (!pairedPhone(deps, request, response, night, body.data.as)) return;
    if (body.data.as !== 'lead') return refuse(response, 'not-allowed');
    const { secret, expiresAt } = deps.secrets.mint({ night, role: body.data.role, by: 'lead' }, INVITE_MS);
    const hosts = hostsToOffer(request.get('host') ?? '', deps.addresses(), deps.port());
    const links = hosts.map((host) => {
      const url = pairLink(host, secret);
      return { url, qr: renderSVG(url, { border: QR_BORDER, ecc: 'M' }) };
    });
    deps.log.info({ night, role: body.data.role }, 'invited');
    response.set('Cache-Control', 'no-store').json({ links, expiresAt } satisfies Invite);
  };
}

/** How phones join a night: by a secret once, by the cookie it brings from then on. */
export function pairingRoutes(deps: PairingDeps): Router {
  const router = Router();
  router.post(API.pair, pair(deps));
  router.get(API.membership, membership(deps));
  router.post(API.invite, invite(deps));
  return router;
}
