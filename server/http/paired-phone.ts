import type { Request, Response } from 'express';
import type { NightId } from '../../shared/ids.ts';
import type { Role } from '../../shared/roles.ts';
import { tokenOf } from '../access/cookies.ts';
import type { Devices } from '../access/devices.ts';
import type { Device, NightRecord } from '../store/store.ts';
import { refuse } from './refuse.ts';

/** What it takes to know a paired phone again. */
export interface PairedDeps {
  readonly nightOf: (id: NightId) => NightRecord | null;
  readonly devices: Devices;
}

/** The paired phone behind a request; answers with the reason and gives null where there is none. */
export function pairedPhone(
  deps: PairedDeps,
  request: Request,
  response: Response,
  night: NightId,
  role: Role,
): { readonly record: NightRecord; readonly device: Device } | null {
  const record = deps.nightOf(night);
  const device = deps.devices.find(tokenOf(request.headers.cookie, night, role), night, role);
  if (record && device) return { record, device };
  refuse(response, record ? 'unpaired' : 'no-such-night');
  return null;
}
