import { type NetworkInterfaceInfo, networkInterfaces } from 'node:os';

/** One way to reach this machine: an IPv4 address and the network card it is on. */
export interface Address {
  readonly card: string;
  readonly ip: string;
}

const VIRTUAL = /^(docker|br-|veth|virbr|vmnet|vboxnet|tun|tap|utun|wg|zt|tailscale|lxc|cni|flannel)/;
const WIRELESS = /^(wl|wlan|ap|wifi|wi-fi|en0|bridge100)/i;

/** How likely phones on a hotspot reach this address: smaller is likelier. */
function unlikeliness({ card, ip }: Address): number {
  let points = 0;
  if (VIRTUAL.test(card)) points += 8;
  if (ip.startsWith('169.254.')) points += 4; // nobody gave the card an address
  if (!WIRELESS.test(card)) points += 2;
  if (!ip.startsWith('192.168.') && !ip.startsWith('172.20.10.')) points += 1; // what hotspots hand out
  return points;
}

/** Addresses with the likeliest first; of equals the order stays. */
export const likeliestFirst = (addresses: readonly Address[]): Address[] =>
  [...addresses].sort((a, b) => unlikeliness(a) - unlikeliness(b));

/** The IPv4 addresses of this machine that others may reach, the likeliest for phones first. */
export function machineAddresses(
  cards: Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>> = networkInterfaces(),
): Address[] {
  const found: Address[] = [];
  for (const [card, entries] of Object.entries(cards)) {
    for (const entry of entries ?? []) {
      if (entry.family === 'IPv4' && !entry.internal) found.push({ card, ip: entry.address });
    }
  }
  return likeliestFirst(found);
}
